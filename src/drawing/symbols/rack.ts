import { polygon, roundedPolygon } from "../path.ts";
import type { CarPoint, Projection } from "../projection.ts";
import type { Mark } from "../scene.ts";
import { type Look, strokeOf } from "./look.ts";
import { drawTube } from "./tube.ts";

export interface RackShape {
  /** Inner joint of the left tie rod. */
  readonly joint: CarPoint;
  /** Drawn alone: one side, from this far off the middle of the car; absent = the whole rack. */
  readonly half?: { readonly side: "left" | "right"; readonly from: number };
}

const BOOT_LENGTH = 0.108;
const BOOT_FOLDS = 13;
const HOUSING_DIAMETER = 0.052;

/** Steering rack: housing, pinion case, and a folded boot at each end, as seen from below. */
export function drawRack(view: Projection, rack: RackShape, look: Look): readonly Mark[] {
  const x = rack.joint[0];
  const reach = Math.abs(rack.joint[1]) - 0.016;
  const half = reach - BOOT_LENGTH;
  const stroke = strokeOf(look);
  const pinion = [
    [x + 0.054, 0.1],
    [x + 0.054, 0.034],
    [x - 0.05, 0.034],
    [x - 0.05, 0.1],
  ] as const;
  const ends = rack.half === undefined ? [1, -1] : [rack.half.side === "left" ? 1 : -1];
  const boots = ends.map((side): Mark => {
    const edge = Array.from({ length: BOOT_FOLDS }, (_, i) => {
      const radius = 0.025 - (0.008 * i) / (BOOT_FOLDS - 1) + (i % 2 === 1 ? 0.004 : -0.004);
      return { radius, y: side * (half + (BOOT_LENGTH * i) / (BOOT_FOLDS - 1)) };
    });
    const outline = [
      ...edge.map(({ radius, y }) => view.spot([x + radius, y])),
      ...edge.toReversed().map(({ radius, y }) => view.spot([x - radius, y])),
    ];
    return { kind: "path", d: polygon(outline), stroke, fill: "paper" };
  });
  const sign = ends[0] ?? 1;
  const start = rack.half === undefined ? -half : sign * Math.min(rack.half.from, half);
  const housing = drawTube(
    view,
    {
      runs: [
        [
          [x, start],
          [x, sign * half],
        ],
      ],
      width: HOUSING_DIAMETER,
    },
    look,
  );
  if (rack.half !== undefined) return [...housing, ...boots];
  return [
    ...housing,
    {
      kind: "path",
      d: roundedPolygon(
        pinion.map((p) => view.spot(p)),
        0.016 * view.scale,
      ),
      stroke,
      fill: "paper",
    },
    ...boots,
  ];
}
