import type { RubberFault } from "#casework";
import type { Position } from "#vehicle";
import { polyline, type Spot } from "../path.ts";
import type { Mark, TypeScale } from "../scene.ts";
import { drawBallSection, drawBushSection } from "../symbols/bush-section.ts";
import { faces, strokes } from "../tokens.ts";
import type { UndersideLayout } from "./underside-layout.ts";

/** What the circle beside the selected place shows. */
export interface Detail {
  /** null: nothing is wrong with it, or nobody has looked. */
  readonly fault: RubberFault["kind"] | null;
  /** One short line under the section: "4.6 mm", "not looked at". */
  readonly words?: string;
}

const SHOWN: readonly Position["kind"][] = ["bush", "hydraulic-bush", "ball-joint", "strut-mount"];

/** True where a position has a section to show. */
export const hasDetail = ({ kind, at }: Position): boolean => at !== null && SHOWN.includes(kind);

/**
 * The selected place grown into a circle in the middle of the car, where the stretch between the axles is left out: a ring
 * on the part, a section beside it, and the two tangents between them.
 * @returns null where the place lies under the circle itself
 */
export function drawDetail(
  position: Position,
  spot: Spot,
  { view, top, bottom }: UndersideLayout,
  detail: Detail,
  type: TypeScale,
): { readonly marks: readonly Mark[]; readonly radius: number } | null {
  const length = bottom - top;
  const radius = Math.max(54, Math.min(112, length * 0.16));
  const y = view.break === null ? (top + bottom) / 2 : (view.y(view.break.front) + view.y(view.break.rear)) / 2;
  const centre: Spot = [view.centreX, y + radius * 0.1];
  const small = 18;
  const accent = { colour: "accent", width: strokes.selected } as const;
  const distance = Math.hypot(spot[0] - centre[0], spot[1] - centre[1]);
  if (distance < radius + small) return null;
  const angle = Math.atan2(spot[1] - centre[1], spot[0] - centre[0]);
  const open = Math.acos((radius - small) / distance);
  const tangents = [angle + open, angle - open].map((a): Mark => {
    const at = (from: Spot, r: number): Spot => [from[0] + r * Math.cos(a), from[1] + r * Math.sin(a)];
    return {
      kind: "path",
      d: polyline([at(spot, small), at(centre, radius)]),
      stroke: { colour: "accent", width: 1.2 },
    };
  });
  const state = detail.fault ?? "sound";
  const middle: Spot = detail.words === undefined ? centre : [centre[0], centre[1] - radius * 0.17];
  const r = radius * 0.6;
  const section =
    position.kind === "ball-joint" ? drawBallSection(middle, r, state) : drawBushSection(middle, r, state);
  const { size } = faces[type]["label-bold"];
  const words: readonly Mark[] =
    detail.words === undefined
      ? []
      : [
          {
            kind: "text",
            x: centre[0],
            y: centre[1] + radius * 0.72 + size * 0.3,
            text: detail.words,
            style: "label-bold",
            anchor: "middle",
          },
        ];
  const marks: readonly Mark[] = [
    ...tangents,
    { kind: "circle", cx: centre[0], cy: centre[1], r: radius, stroke: accent, fill: "paper" },
    ...section,
    ...words,
  ];
  return { marks, radius };
}
