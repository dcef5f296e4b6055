import type { Axle, Corner, Family } from "../family.ts";
import type { Position } from "../position.ts";
import { axlePositions, axleResults } from "./axle-positions.ts";
import { brakePositions, wheelAndTyrePositions } from "./brake-and-wheel-positions.ts";
import { placedPosition } from "./draft.ts";
import { jointPositions } from "./joint-positions.ts";
import { springAndHubPositions } from "./spring-and-hub-positions.ts";

/**
 * Every place on one axle where something is judged, generated from its layout.
 * Which points belong to which layout: from memory (trade practice); their number per layout is checked in the tests.
 * @param axle any axle whose seats name links that exist
 * @returns left side, right side, then what belongs to the axle; ids are unique; places in the vehicle frame, metres
 */
export function positionsOfAxle(axle: Axle): Position[] {
  const perSide = [
    ...jointPositions(axle),
    ...springAndHubPositions(axle),
    ...brakePositions(axle),
    ...wheelAndTyrePositions(axle),
  ];
  return [
    ...perSide.map((draft) => placedPosition(draft, axle.name, "left")),
    ...perSide.map((draft) => placedPosition(draft, axle.name, "right")),
    ...axlePositions(axle),
    ...axleResults(axle),
  ];
}

/** Every position of a family: the front axle, then the rear. */
export function positionsOf(family: Family): Position[] {
  return [...positionsOfAxle(family.front), ...positionsOfAxle(family.rear)];
}

/** The corner a position lies on, or null where it belongs to the axle as a whole. */
export function cornerOf(position: Position): Corner | null {
  return position.side === null ? null : `${position.axle}-${position.side}`;
}

/** A position's id without its side: "front-left/lower-arm/rear-bush" and its right twin both read "front/lower-arm/rear-bush". */
export function idWithoutSide(position: Position): string {
  const parts =
    position.detail === null ? [position.axle, position.item] : [position.axle, position.item, position.detail];
  return parts.join("/");
}
