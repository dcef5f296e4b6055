import { degreesFromRadians, metresFromMm, mmFromMetres, radiansFromDegrees } from "#quantity";
import type { QuantityName } from "#vehicle";
import { exactFigure } from "../family/exact-figure.ts";

/** How a quantity stands in JSON: the unit at the end of its keys, and the way in and out. */
export interface ReadingUnit {
  /** Suffix of the keys value_mm and u_mm; "" where there is no unit. */
  readonly suffix: "mm" | "deg" | "bar" | "c" | "n" | "nm" | "";
  readonly toInside: (outside: number) => number;
  /** Reads back to the same double wherever it came from this unit. */
  readonly toOutside: (inside: number) => number;
}

const unit = (
  suffix: ReadingUnit["suffix"],
  toInside: (outside: number) => number,
  estimate: (inside: number) => number,
): ReadingUnit => ({
  suffix,
  toInside,
  toOutside: (inside) => exactFigure(inside, estimate(inside), toInside),
});

const pascalsPerBar = 1e5;
const mm = unit("mm", metresFromMm, mmFromMetres);
const degrees = unit("deg", radiansFromDegrees, degreesFromRadians);
const bar = unit(
  "bar",
  (outside) => outside * pascalsPerBar,
  (pascals) => pascals / pascalsPerBar,
);
const asItIs = (suffix: ReadingUnit["suffix"]): ReadingUnit => ({
  suffix,
  toInside: (value) => value,
  toOutside: (value) => value,
});

/** The unit of every quantity that can be read. */
export const readingUnits: Readonly<Record<QuantityName, ReadingUnit>> = {
  play: mm,
  "lost-travel": mm,
  "crack-depth": mm,
  "sleeve-offset": mm,
  thickness: mm,
  "thickness-variation": mm,
  "run-out": mm,
  "pad-thickness": mm,
  tread: mm,
  pressure: bar,
  "ride-height": mm,
  camber: degrees,
  toe: degrees,
  caster: degrees,
  "boiling-point": asItIs("c"),
  "slide-force": asItIs("n"),
  "drag-torque": asItIs("nm"),
  "leak-grade": asItIs(""),
  rebounds: asItIs(""),
  gap: mm,
  "free-height": mm,
};

/** Every quantity that can be read. */
export const quantityNames = Object.keys(readingUnits) as readonly QuantityName[];

/** Key of a reading's value: value_mm, or value where there is no unit. */
export const valueKey = (quantity: QuantityName): `value${string}` => withUnit("value", quantity);
/** Key of its standard uncertainty: u_mm, or u. */
export const uncertaintyKey = (quantity: QuantityName): `u${string}` => withUnit("u", quantity);

const withUnit = <Stem extends string>(stem: Stem, quantity: QuantityName): `${Stem}${string}` => {
  const { suffix } = readingUnits[quantity];
  return `${stem}${suffix === "" ? "" : `_${suffix}`}`;
};
