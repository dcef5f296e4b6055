/** A unit as people write it behind a number. */
export interface WrittenUnit {
  /** As a page writes it. */
  readonly name: string;
  readonly spelled: RegExp;
  /** From this unit into that of the field. */
  readonly convert: (value: number) => number;
}

const times = (name: string, spelled: RegExp, factor: number): WrittenUnit => ({
  name,
  spelled,
  convert: (value) => (factor === 1 ? value : value * factor),
});

const INCH = /(?:inch(?:es)?|in\.?|["″”]|'')/;
const PSI = /(?:psi|lbs?\.?\/(?:sq\.? ?)?in[²2]?)/;

/** What may stand behind a number, by the unit of its field; factors exact by definition (inch, pound, mile of 1959). */
const units: Readonly<Record<string, readonly WrittenUnit[]>> = {
  mm: [times("mm", /mm/, 1), times("cm", /cm/, 10), times("in", INCH, 25.4), times("m", /m/, 1000)],
  kg: [times("kg", /kgs?/, 1), times("t", /t/, 1000), times("lb", /lbs?\.?/, 0.453_592_37)],
  "%": [times("%", /%/, 1)],
  "°": [times("°", /(?:[°º]|deg(?:rees?)?\.?)/, 1)],
  bar: [times("bar", /bars?/, 1), times("psi", PSI, 0.068_947_572_931_683_6), times("kPa", /kpa/, 0.01)],
  "°C": [
    times("°C", /[°º]? ?c/, 1),
    { name: "°F", spelled: /[°º]? ?f/, convert: (fahrenheit) => (fahrenheit - 32) / 1.8 },
  ],
  N: [times("N", /n/, 1), times("kg", /kgf?/, 9.806_65), times("lbf", /lbs?f?/, 4.448_221_615_260_5)],
  N·m: [times("N·m", /n ?[·.]? ?m/, 1), times("lb·ft", /(?:lb|ft)s?f? ?[·.\-/]? ?(?:ft|lb)s?f?/, 1.355_817_948_331_4)],
  "Shore A": [times("Shore A", /[°º]? ?sh(?:ore)?\.?[ -]?a/, 1)],
  km: [times("km", /kms?/, 1), times("mi", /mi(?:les?)?\.?/, 1.609_344)],
  mi: [times("mi", /mi(?:les?)?\.?/, 1), times("km", /kms?/, 1 / 1.609_344)],
  "km/h": [times("km/h", /km ?\/? ?h|kph/, 1), times("mph", /mph|mi ?\/ ?h/, 1.609_344)],
};

/** Signs a thumb can put behind a number of a field beside its own unit: "psi"; for an angle degrees and minutes. */
export const unitKeys = (fieldUnit: string): readonly string[] =>
  fieldUnit === "°"
    ? ["°", "'"]
    : (units[fieldUnit] ?? []).flatMap(({ name }) => (name === fieldUnit || name === "m" ? [] : [name]));

/** The number of a text and the unit written behind it; null where none is, or none that is known of this field. */
export const splitUnit = (
  text: string,
  fieldUnit: string,
): { readonly number: string; readonly unit: WrittenUnit } | null => {
  for (const unit of units[fieldUnit] ?? []) {
    const match = new RegExp(`^(.*\\d[.,]?)\\s*(?:${unit.spelled.source})$`, "iu").exec(text.trim());
    if (match?.[1] !== undefined) return { number: match[1], unit };
  }
  return null;
};
