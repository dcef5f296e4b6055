import type { Finding } from "#numeric";
import { isObject, type Loose, type Point, pointOf } from "./loose-corner.ts";

/** Two axes whose directions are nearer than this are one (sine of the angle: a twentieth of a degree, invented). */
const SAME_AXIS = 1e-3;

const crossed = ([a, b, c]: Point, [x, y, z]: Point): number => Math.hypot(b * z - c * y, c * x - a * z, a * y - b * x);

/** The rubber of a trailing arm that slides along one axis has that axis, not another; `where` is the path of its entry. */
export function checkArmAxis(entry: Loose, where: string, geometry: Loose): Finding[] {
  if (entry.link !== "trailing_arm" || !isObject(geometry.trailing_arm)) return [];
  const [free, axis] = [pointOf(geometry.trailing_arm.free_axis), pointOf(entry.axis)];
  if (!free || !axis) return [];
  const lengths = Math.hypot(...free) * Math.hypot(...axis);
  if (lengths === 0 || crossed(free, axis) <= SAME_AXIS * lengths) return [];
  return [
    {
      code: "axis-apart",
      path: `${where}.axis`,
      got: `[${axis.join(", ")}]`,
      needed: "the direction of trailing_arm.free_axis: a bush has one axis",
      hint: `The arm slides along [${free.join(", ")}]; give the rubber that direction, or leave free_axis out and hold the arm by two links.`,
    },
  ];
}
