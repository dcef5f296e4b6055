import { axlePositionsOf, cornerPositions, type PlaceGroup } from "#drawing";
import type { Family, Position } from "../../car.ts";

/** Places of a corner, or those that belong to an axle as a whole. */
export const placesOf = (family: Family, group: PlaceGroup): readonly Position[] =>
  group === "front" || group === "rear" ? axlePositionsOf(family, group) : cornerPositions(family, group);
