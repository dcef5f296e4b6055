import type { Axle } from "#vehicle";
import { onSide, type Projection } from "../projection.ts";
import type { Mark } from "../scene.ts";
import { drawBush } from "../symbols/bush.ts";
import type { Look } from "../symbols/look.ts";
import { drawTube } from "../symbols/tube.ts";

/** The anti-roll bar from end to end, so that no seam shows in the middle of the car. */
export function drawWholeBar(view: Projection, axle: Axle, look: Look): readonly Mark[] {
  const { bar } = axle;
  if (bar === undefined) return [];
  const left = bar.path;
  const right = left.map((p) => onSide("right", p));
  const ends = [left.at(-1), right.at(-1)].filter((end) => end !== undefined);
  const tube = drawTube(
    view,
    {
      runs: [[...right.toReversed(), ...left]],
      width: bar.diameter,
      eyes: ends.map((at) => ({ at, radius: 0.018 })),
    },
    look,
  );
  const bushes = (["left", "right"] as const).flatMap((side) =>
    drawBush(
      view,
      { at: onSide(side, bar.bodyBush), axis: [0, 1, 0], length: 0.042, diameter: bar.diameter + 0.022 },
      { ...look, unseen: false },
    ),
  );
  return [...tube, ...bushes];
}
