import { type LooseAxle, placeOf } from "./loose-axle.ts";

/** Where the moving end of a spring or damper lies, mm, or undefined where the sheet does not say it clearly. */
export function seatPlace(axle: LooseAxle, part: "spring" | "damper"): readonly [number, number, number] | undefined {
  const { seat } = axle[part];
  if (!seat) return undefined;
  if (seat.on !== "link") return placeOf(seat.moving_mm);
  const link = axle.links.find((one) => one.name === seat.link);
  if (!link?.inner || !link.outer) return undefined;
  const { inner, outer } = link;
  const along = (axis: 0 | 1 | 2): number => inner[axis] + seat.fraction * (outer[axis] - inner[axis]);
  return [along(0), along(1), along(2)];
}
