import type { PointIn } from "#quantity";
import type { Link, Seat } from "./family.ts";

/**
 * Where the moving end of a spring or damper lies at ride height.
 * @param links the links of the axle, left side
 * @returns the point, vehicle frame, metres, left side; on a link: the point at the same fraction of its line from its inner end
 */
export function seatAtRideHeight(links: readonly Link[], seat: Seat): PointIn<"vehicle"> {
  if (seat.on !== "link") return seat.moving.at;
  const link = links.find((candidate) => candidate.name === seat.link);
  if (!link) throw new Error(`no link named ${seat.link}: the family was not checked`);
  const along = (inner: number, outer: number): number => inner + seat.fraction * (outer - inner);
  const { at: a } = link.inner;
  const { at: b } = link.outer;
  return [along(a[0], b[0]), along(a[1], b[1]), along(a[2], b[2])];
}
