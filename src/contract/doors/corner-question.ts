import { degreesFromRadians } from "#quantity";
import { assembleCorner, axleAndSide, type Corner, type CornerSeat, type Family, type Side } from "#vehicle";

type Point = readonly [number, number, number];
const mm = (p: Point): Point => [p[0] * 1000, p[1] * 1000, p[2] * 1000];
type Assembly = ReturnType<typeof assembleCorner>;

/** The geometry of a corner on its own side as the linkage doors take it. */
export function formatCorner(a: Assembly, side: Side): Record<string, unknown> {
  return {
    side,
    links: a.links.map((l) => ({
      name: l.name,
      inner_mm: mm(l.inner.at),
      outer_mm: mm(l.outer.at),
      steered: l.steered,
    })),
    ...(a.strut ? { strut: { top_mm: mm(a.strut.top.at), axis_point_mm: mm(a.strut.axisPoint.at) } } : {}),
    ...(a.trailingArm
      ? { trailing_arm: { bush_mm: mm(a.trailingArm.bush.at), free_axis: a.trailingArm.freeAxis } }
      : {}),
    wheel: {
      centre_mm: mm(a.wheel.centre),
      camber_deg: degreesFromRadians(a.wheel.camber),
      toe_deg: degreesFromRadians(a.wheel.toe),
      loaded_radius_mm: a.wheel.loadedRadius * 1000,
    },
  };
}

/** Both ends of a spring or damper as the linkage doors take them. */
export function formatSeat(
  a: Assembly,
  { body, seat }: { readonly body: Point; readonly seat: CornerSeat },
): Record<string, unknown> {
  const name = (i: number): string => a.links[i]?.name ?? "";
  const body_mm = mm(body);
  switch (seat.on) {
    case "knuckle":
      return { body_mm, on: "knuckle", moving_mm: mm(seat.moving) };
    case "link":
      return { body_mm, on: name(seat.link), fraction: seat.fraction };
    case "arm":
      return { body_mm, on: [name(seat.links[0]), name(seat.links[1])], moving_mm: mm(seat.moving) };
  }
}

/**
 * The question of a page as the JSON that `linkage.travel` takes: one corner of a family on its own side.
 * @param travels wheel travel from ride height in mm, up positive
 */
export function formatTravelQuestion(
  family: Family,
  corner: Corner,
  travels: readonly number[],
): Record<string, unknown> {
  return {
    ...formatCorner(assembleCorner(family, corner), axleAndSide(corner).side),
    steps: travels.map((travel) => ({ wheel_travel_mm: travel })),
  };
}
