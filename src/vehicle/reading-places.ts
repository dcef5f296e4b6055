import type { AxleName, Side } from "./corners.ts";
import type { Position, PositionKind } from "./position.ts";

/** What kind of thing is read at a place that is no position of the drawing. */
export type ReadingKind = "ride-height" | "tyre-pressure" | "alignment";

/** Whatever a finding can be about: a position of the drawing, or a reading of wheel or axle as a whole. */
export type FindingKind = PositionKind | ReadingKind;

/** A place that is only read, never looked at: "front-left/ride-height"; side null: "rear/alignment", both wheels together. */
export interface ReadingPlace extends Pick<Position, "id" | "axle" | "side" | "item" | "detail" | "label"> {
  readonly kind: ReadingKind;
}

const kinds = [
  { item: "ride-height", detail: null, kind: "ride-height", label: "Ride height" },
  { item: "tyre", detail: "pressure", kind: "tyre-pressure", label: "Tyre pressure" },
  { item: "alignment", detail: null, kind: "alignment", label: "Alignment" },
] as const satisfies readonly Pick<ReadingPlace, "item" | "detail" | "kind" | "label">[];

const axles: readonly AxleName[] = ["front", "rear"];
const sides: readonly Side[] = ["left", "right"];

const tail = ({ item, detail }: Pick<ReadingPlace, "item" | "detail">): string =>
  detail === null ? item : `${item}/${detail}`;

/** Names of the places that are only read, without their corner; limits and remedies may name them like positions. */
export const readingPlaceNames: readonly string[] = kinds.map(tail);

/** Every place of a car that is only read: each kind at its four wheels, then the alignment of each axle. */
export const readingPlaces: readonly ReadingPlace[] = [
  ...kinds.flatMap((kind) =>
    axles.flatMap((axle) => sides.map((side) => ({ ...kind, axle, side, id: `${axle}-${side}/${tail(kind)}` }))),
  ),
  ...axles.map(
    (axle): ReadingPlace => ({
      id: `${axle}/alignment`,
      axle,
      side: null,
      item: "alignment",
      detail: null,
      kind: "alignment",
      label: "Alignment of both wheels",
    }),
  ),
];

/** The place with this id that is only read; null where there is none. */
export const findReadingPlace = (id: string): ReadingPlace | null =>
  readingPlaces.find((place) => place.id === id) ?? null;
