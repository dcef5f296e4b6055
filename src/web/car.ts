import type { Figure } from "#casework";
import { axlePositionsOf, cornerPositions, type Family, type groupOf, type PositionState } from "#drawing";

/** The words of a car as the pages have them through casework and drawing; the pages themselves reach no deeper. */
export type { Family } from "#drawing";
export type Position = Parameters<typeof groupOf>[0];
export type Corner = Parameters<typeof cornerPositions>[1];
export type AxleName = Parameters<typeof axlePositionsOf>[1];
export type Axle = Family[AxleName];
export type LayoutName = Axle["layout"];
export type Joint = Axle["links"][number]["innerJoint"];
export type PracticeLife = Family["life"][number];
export type KnownFault = NonNullable<Family["work"]>["knownFaults"][number];
export type Rung = Figure["rung"];
export type Grade = PositionState["grade"];

const PLACES = [
  { axle: "front", corners: ["front-left", "front-right"] },
  { axle: "rear", corners: ["rear-left", "rear-right"] },
] as const;

/** Every place of a family: by axle its left corner, its right corner, then what belongs to it as a whole. */
export const positionsOf = (family: Family): readonly Position[] =>
  PLACES.flatMap(({ axle, corners }) => [
    ...corners.flatMap((corner) => cornerPositions(family, corner)),
    ...axlePositionsOf(family, axle),
  ]);

/** The corner a place lies on; null where it belongs to an axle as a whole. */
export const cornerOf = ({ axle, side }: Position): Corner | null => (side === null ? null : `${axle}-${side}`);

/** A place's id without its side, as the wear calendar names it: "front/lower-arm/rear-bush". */
export const idWithoutSide = ({ axle, item, detail }: Position): string =>
  [axle, item, detail].filter((part) => part !== null).join("/");
