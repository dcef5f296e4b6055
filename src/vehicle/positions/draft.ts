import type { Metres, PointIn } from "#quantity";
import type { AxleName, Side } from "../family.ts";
import { pointOnSide } from "../mirror.ts";
import type { Position } from "../position.ts";

/** A position before it is put on a side: `at` lies on the left, the id is still missing. */
export type PositionDraft = Omit<Position, "id" | "axle" | "side">;

/**
 * A draft put on its corner or, with side null, on the axle as a whole.
 * @returns the position; its id reads "front-left/item/detail", or "front/item/detail" for the axle as a whole
 */
export function placedPosition(draft: PositionDraft, axle: AxleName, side: Side | null): Position {
  const where = side === null ? axle : `${axle}-${side}`;
  const parts = draft.detail === null ? [where, draft.item] : [where, draft.item, draft.detail];
  return {
    id: parts.join("/"),
    axle,
    side,
    ...draft,
    at: draft.at && side !== null ? pointOnSide(draft.at, side) : draft.at,
  };
}

/** The point at `share` of the way from a to b. */
export function between(a: PointIn<"vehicle">, b: PointIn<"vehicle">, share: number): PointIn<"vehicle"> {
  return [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1]), a[2] + share * (b[2] - a[2])];
}

/** The point moved by the given lengths along x, y and z. */
export function moved(point: PointIn<"vehicle">, x: Metres, y: Metres, z: Metres): PointIn<"vehicle"> {
  return [point[0] + x, point[1] + y, point[2] + z];
}
