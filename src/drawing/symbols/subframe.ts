import { roundedPolygon } from "../path.ts";
import type { CarPoint, Projection } from "../projection.ts";
import type { Mark } from "../scene.ts";
import type { Look } from "./look.ts";

const CORNER_RADIUS = 0.036;
const MOUNT_RADII = [0.024, 0.009] as const;

/** Subframe outlines (the first outside, the others openings) and its mounts; far from the eye, so thin and unfilled. */
export function drawSubframe(
  view: Projection,
  outlines: readonly (readonly (readonly [x: number, y: number])[])[],
  mounts: readonly CarPoint[],
  look: Look,
): readonly Mark[] {
  const stroke = { colour: look.colour, width: look.weight };
  const frames = outlines.map(
    (outline): Mark => ({
      kind: "path",
      d: roundedPolygon(
        outline.map((p) => view.spot(p)),
        CORNER_RADIUS * view.scale,
      ),
      stroke,
    }),
  );
  const eyes = mounts.flatMap((mount) =>
    MOUNT_RADII.map((radius): Mark => {
      const [cx, cy] = view.spot(mount);
      return { kind: "circle", cx, cy, r: radius * view.scale, stroke };
    }),
  );
  return [...frames, ...eyes];
}
