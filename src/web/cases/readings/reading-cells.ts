import {
  type CountedReading,
  countingLooks,
  formatReading,
  groupByPlace,
  quantityForms,
  type ReadingGroup,
  type StandardReading,
  type StoredLook,
  standardReadings,
  twinPlace,
} from "#casework";
import { readingUnits } from "#contract";
import type { NumberBounds } from "../../number/parse-typed-number.ts";
import { parseTypedQuantity, typedQuantityTrouble } from "../../number/parse-typed-quantity.ts";

/** One field of the page: a quantity at a place, at one of its points. */
export interface Cell {
  /** Place, quantity and point as one text. */
  readonly key: string;
  readonly reading: StandardReading;
  readonly point: string | null;
}

/** Groups in the order they are taken: heights first, before the car is lifted. */
export const GROUPS: readonly ReadingGroup[] = ["heights", "pressures", "tread", "pads", "discs", "alignment"];

export const READINGS: readonly StandardReading[] = standardReadings();

/** Key of the field of a quantity at a place, at one of its points. */
export const keyOf = (place: string, quantity: string, point: string | null): string =>
  `${place}|${quantity}|${point ?? ""}`;

/** Every field of a group, corner by corner. */
export const cellsOf = (group: ReadingGroup): readonly Cell[] =>
  READINGS.filter((reading) => reading.group === group).flatMap((reading) =>
    reading.points.map((point) => ({ key: keyOf(reading.place, reading.quantity, point), reading, point })),
  );

/** Every field of the page in its order. */
export const ALL_CELLS: readonly Cell[] = GROUPS.flatMap(cellsOf);

/** What is on record in the fields of this page. */
export interface TakenReadings {
  /** By the key of a field. */
  readonly taken: ReadonlyMap<string, CountedReading>;
  /** Looks that say a reading was not taken, by place and quantity; a reading taken later counts before them. */
  readonly notTaken: ReadonlyMap<string, readonly string[]>;
}

/** Place and quantity as one text, as notTaken has them. */
export const askedKey = ({ place, quantity }: Pick<StandardReading, "place" | "quantity">): string =>
  `${place}|${quantity}`;

/** Reads the looks of a visit as fields. */
export const readTaken = (looks: readonly StoredLook[]): TakenReadings => {
  const taken = new Map<string, CountedReading>();
  for (const [place, { readings }] of groupByPlace(looks)) {
    for (const reading of readings) taken.set(keyOf(place, reading.quantity, reading.point), reading);
  }
  const notTaken = new Map<string, string[]>();
  for (const { id, place, content } of countingLooks(looks)) {
    if (content.kind !== "not-taken" || content.quantity === null) continue;
    const key = askedKey({ place, quantity: content.quantity });
    notTaken.set(key, [...(notTaken.get(key) ?? []), id]);
  }
  return { taken, notTaken };
};

/** A reading as it is written in its field, without its unit: "382", "−1.25". */
export const cellText = ({ quantity, value }: Pick<CountedReading, "quantity" | "value">): string =>
  formatReading(quantity, value).replace("-", "−");

/** Between what a reading makes sense, in the unit it is typed in. */
const boundsOf = ({ quantity }: StandardReading): NumberBounds => {
  const { plausible, factor } = quantityForms[quantity];
  return { low: plausible[0] * factor, high: plausible[1] * factor };
};

const readCell = (text: string, reading: StandardReading) =>
  parseTypedQuantity(text, quantityForms[reading.quantity].unit, boundsOf(reading));

/** How a text in another unit is read, in that of the field: "32 psi is 2.206 bar"; null where it came in the field's own. */
export const readAs = (text: string, reading: StandardReading): string | null => {
  const read = readCell(text, reading);
  if (read.kind !== "number" || read.as === null) return null;
  const { unit } = quantityForms[reading.quantity];
  const value = String(Number(read.value.toPrecision(4))).replace("-", "−");
  return `${read.as} is ${value}${unit === "°" ? "°" : ` ${unit}`}`;
};

/** A figure from its text, SI; null for an empty text, undefined where it is none or may be two. */
export const parseCell = (text: string, reading: StandardReading): number | null | undefined => {
  const read = readCell(text, reading);
  if (read.kind === "empty") return null;
  return read.kind === "number" ? readingUnits[reading.quantity].toInside(read.value) : undefined;
};

/** What keeps a text from being a reading, in plain words; null where nothing does. */
export const cellTrouble = (text: string, reading: StandardReading): string | null =>
  typedQuantityTrouble(text, boundsOf(reading), quantityForms[reading.quantity].unit);

/** A field by its name: "Front left, disc, point 3". */
export const cellName = ({ reading, point }: Cell): string =>
  point === null ? reading.label : `${reading.label}, ${/^\d+$/.test(point) ? `point ${point}` : point}`;

/** Between what a reading makes sense, in words: "200 to 600 mm". */
export const rangeWords = ({ quantity }: StandardReading): string => {
  const { plausible, factor, unit } = quantityForms[quantity];
  const [low, high] = plausible.map((value) => value * factor);
  const shown = (value: number | undefined) => String(Number((value ?? 0).toPrecision(6)));
  return `${shown(low)} to ${shown(high)} ${unit}`;
};

/** The field of the other side; null where there is none. */
export const twinCell = ({ reading, point }: Cell): string | null => {
  const place = twinPlace(reading.place);
  return place === null ? null : keyOf(place, reading.quantity, point);
};

/** Fields of a group that still ask for something: no reading, and nobody said it was not taken. */
export const openAsked = (group: ReadingGroup, { taken, notTaken }: TakenReadings): readonly StandardReading[] =>
  READINGS.filter(
    (reading) =>
      reading.group === group &&
      !notTaken.has(askedKey(reading)) &&
      !reading.points.some((point) => taken.has(keyOf(reading.place, reading.quantity, point))),
  );
