import type { Axle } from "#vehicle";

/** Nearer than this to the wheel centre a tie rod does not tell which way the wheel turns, m (invented). */
const LEAST_ARM = 0.02;

/**
 * Which way the car turns while the rack moves to the left: left where the tie rod holds the wheel ahead of its centre,
 * right behind it; null where it cannot be told.
 */
export function turnOfRackLeft({ links, wheel }: Axle): "left" | "right" | null {
  const rod = links.find(({ steered }) => steered);
  const arm = rod === undefined ? 0 : rod.outer.at[0] - wheel.centre[0];
  return Math.abs(arm) < LEAST_ARM ? null : arm > 0 ? "left" : "right";
}

/** The rack of another axle that turns its car the same way by as many millimetres; 0 where it is not steered. */
export function rackTheSameWay(rack: number, from: Axle, to: Axle): number {
  if (to.rackTravel === undefined) return 0;
  const [one, other] = [turnOfRackLeft(from), turnOfRackLeft(to)];
  return one !== null && other !== null && one !== other && rack !== 0 ? -rack : rack;
}
