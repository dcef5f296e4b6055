/** A unit as it stands at the end of a key. */
export interface WireUnit {
  readonly suffix: string;
  readonly words: string;
  readonly dimension: string;
  /** One of this unit in the dimension's base unit; null where the scale has another zero. */
  readonly factor: number | null;
}

const unit = (suffix: string, words: string, dimension: string, factor: number | null): WireUnit => ({
  suffix,
  words,
  dimension,
  factor,
});

const poundForce = 4.448_221_615_260_5;
const inch = 0.0254;

/** Every unit this program knows at the end of a key; factors are exact by definition (SI; inch, pound and pound-force after the 1959 agreement). */
export const wireUnits: readonly WireUnit[] = [
  unit("um", "micrometres", "length", 1e-6),
  unit("mm", "millimetres", "length", 1e-3),
  unit("cm", "centimetres", "length", 1e-2),
  unit("m", "metres", "length", 1),
  unit("km", "kilometres", "length", 1e3),
  unit("in", "inches", "length", inch),
  unit("ft", "feet", "length", 12 * inch),
  unit("miles", "miles", "length", 5280 * 12 * inch),
  unit("mm2", "square millimetres", "area", 1e-6),
  unit("cm2", "square centimetres", "area", 1e-4),
  unit("m2", "square metres", "area", 1),
  unit("m3", "cubic metres", "volume", 1),
  unit("deg", "degrees", "angle", Math.PI / 180),
  unit("rad", "radians", "angle", 1),
  unit("arcmin", "minutes of arc", "angle", Math.PI / 10_800),
  unit("deg_per_m", "degrees per metre", "angle per length", Math.PI / 180),
  unit("deg_per_mm", "degrees per millimetre", "angle per length", (1000 * Math.PI) / 180),
  unit("n", "newtons", "force", 1),
  unit("kn", "kilonewtons", "force", 1e3),
  unit("lbf", "pounds force", "force", poundForce),
  unit("n_per_mm", "newtons per millimetre", "force per length", 1e3),
  unit("n_per_m", "newtons per metre", "force per length", 1),
  unit("kn_per_m", "kilonewtons per metre", "force per length", 1e3),
  unit("kn_per_mm", "kilonewtons per millimetre", "force per length", 1e6),
  unit("lb_per_in", "pounds per inch", "force per length", poundForce / inch),
  unit("nm", "newton metres", "moment", 1),
  unit("n_m", "newton metres", "moment", 1),
  unit("nmm", "newton millimetres", "moment", 1e-3),
  unit("lb_ft", "pound feet", "moment", poundForce * 12 * inch),
  unit("nm_per_deg", "newton metres per degree", "moment per angle", 180 / Math.PI),
  unit("nm_per_rad", "newton metres per radian", "moment per angle", 1),
  unit("ns_per_m", "newton seconds per metre", "damping", 1),
  unit("ns_per_mm", "newton seconds per millimetre", "damping", 1e3),
  unit("n_s_per_mm", "newton seconds per millimetre", "damping", 1e3),
  unit("g", "grams", "mass", 1e-3),
  unit("kg", "kilograms", "mass", 1),
  unit("t", "tonnes", "mass", 1e3),
  unit("lb", "pounds", "mass", 0.453_592_37),
  unit("kg_per_m3", "kilograms per cubic metre", "density", 1),
  unit("ms", "milliseconds", "time", 1e-3),
  unit("s", "seconds", "time", 1),
  unit("min", "minutes", "time", 60),
  unit("h", "hours", "time", 3600),
  unit("hz", "hertz", "frequency", 1),
  unit("m_per_s", "metres per second", "speed", 1),
  unit("kph", "kilometres per hour", "speed", 1 / 3.6),
  unit("km_per_h", "kilometres per hour", "speed", 1 / 3.6),
  unit("mph", "miles per hour", "speed", (5280 * 12 * inch) / 3600),
  unit("m_per_s2", "metres per second squared", "acceleration", 1),
  unit("n_per_mm2", "newtons per square millimetre", "pressure", 1e6),
  unit("pa", "pascals", "pressure", 1),
  unit("kpa", "kilopascals", "pressure", 1e3),
  unit("mpa", "megapascals", "pressure", 1e6),
  unit("bar", "bar", "pressure", 1e5),
  unit("psi", "pounds per square inch", "pressure", poundForce / (inch * inch)),
  unit("c", "degrees Celsius", "temperature", null),
  unit("k", "kelvin", "temperature", null),
  unit("f", "degrees Fahrenheit", "temperature", null),
  unit("w", "watts", "power", 1),
  unit("kw", "kilowatts", "power", 1e3),
  unit("w_per_m2", "watts per square metre", "heat flux", 1),
  unit("w_per_mk", "watts per metre and kelvin", "conductivity", 1),
  unit("j_per_kgk", "joules per kilogram and kelvin", "specific heat", 1),
  unit("share", "a share, 0 to 1", "ratio", 1),
  unit("percent", "per cent", "ratio", 1e-2),
];

/** A key taken apart: what it names and the unit at its end, if it ends in one. */
export const splitUnit = (key: string): { readonly stem: string; readonly unit: WireUnit | null } => {
  let longest: WireUnit | null = null;
  for (const candidate of wireUnits) {
    // A key that is a rate and nothing else ("n_per_mm") names its unit too; "bar" or "t" alone may be a word.
    const ends = key.endsWith(`_${candidate.suffix}`) || (key === candidate.suffix && key.includes("_per_"));
    if (ends && candidate.suffix.length > (longest?.suffix.length ?? 0)) longest = candidate;
  }
  return longest === null
    ? { stem: key, unit: null }
    : { stem: key.slice(0, -longest.suffix.length - 1), unit: longest };
};

/** How a figure in one unit becomes a figure in the other, in words; null where they do not measure the same. */
export const formatConversion = (from: WireUnit, to: WireUnit): string | null => {
  if (from.dimension !== to.dimension) return null;
  if (from.factor === null || to.factor === null) return `convert ${from.words} to ${to.words}`;
  const ratio = Number((from.factor / to.factor).toPrecision(12));
  return ratio === 1 ? "the figure stays the same" : `multiply by ${ratio} (${from.words} to ${to.words})`;
};
