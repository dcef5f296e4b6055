import type { WheelPose } from "#casework";
import { axleAndSide, type Corner, type Family } from "#vehicle";
import { polygon, polyline, type Spot } from "../path.ts";
import type { CarPoint } from "../projection.ts";
import { scaleWords } from "../scale-words.ts";
import type { Mark, Scene, TypeScale } from "../scene.ts";
import { hairline, thinLine } from "../symbols/look.ts";
import { cornerShape, drawCornerView, drawGhost, drawWheelOutline, type StandingWheel } from "./draw-corner-view.ts";
import { moveCorner } from "./moved-corner.ts";
import { type CornerReach, cornerReach, type GeometryView } from "./views.ts";

/** From where a corner is looked at, degrees. */
export interface EyePlace {
  /** From straight behind (0) toward the left of the car (90) and the front (180). */
  readonly turn: number;
  /** Above the ground. */
  readonly tilt: number;
}

export interface TurnedCornerOptions {
  readonly width: number;
  readonly height: number;
  readonly type?: TypeScale;
  readonly eye: EyePlace;
  /** The same corner in another state, or that of another car line set over it by the wheel centre: thin lines. */
  readonly beside?: readonly BesideCorner[];
}

/** A corner that is drawn thin over the one looked at. */
export interface BesideCorner {
  readonly family: Family;
  readonly pose: WheelPose;
  readonly rack: number;
}

/** A corner as it stands, with others drawn thin over it. */
export interface StandingCorner {
  readonly family: Family;
  readonly corner: Corner;
  readonly pose: WheelPose;
  readonly rack: number;
  readonly beside: readonly BesideCorner[];
  /** The part that is looked at, in the accent; absent: none. */
  readonly part?: string;
}

const EDGE = 24;
const TITLE_ROOM = 26;
const radians = (degrees: number): number => (degrees * Math.PI) / 180;

type Axis = readonly [number, number, number];

/** Directions on the page and toward the eye for an eye place, vehicle frame; parallel projection. */
function axesOf({ turn, tilt }: EyePlace): { readonly across: Axis; readonly up: Axis; readonly toward: Axis } {
  const [t, e] = [radians(turn), radians(tilt)];
  const level: Axis = [-Math.cos(t), Math.sin(t), 0];
  return {
    across: [-Math.sin(t), -Math.cos(t), 0],
    up: [-level[0] * Math.sin(e), -level[1] * Math.sin(e), Math.cos(e)],
    toward: [level[0] * Math.cos(e), level[1] * Math.cos(e), Math.sin(e)],
  };
}

const along = ([x, y, z = 0]: CarPoint, axis: Axis): number => x * axis[0] + y * axis[1] + z * axis[2];

/** Something in space seen from an eye place in parallel projection; the scale stays while it is walked round. */
export function turnedView(
  reach: CornerReach,
  { width, height, eye }: Pick<TurnedCornerOptions, "width" | "height" | "eye">,
): GeometryView {
  const middle: CarPoint = [mean(reach.x), mean(reach.y), mean(reach.z)];
  // The room it needs from any side: its plan turns, its height is foreshortened by the tilt.
  const plan = Math.hypot(span(reach.x), span(reach.y));
  const tall = span(reach.z) * Math.cos(radians(eye.tilt)) + plan * Math.abs(Math.sin(radians(eye.tilt)));
  const scale = Math.min((width - 2 * EDGE) / plan, (height - TITLE_ROOM - EDGE) / tall);
  const { across, up, toward } = axesOf(eye);
  const [cx, cy] = [width / 2, TITLE_ROOM + (height - TITLE_ROOM) / 2];
  return {
    name: "side",
    title: "",
    corner: [EDGE, 8],
    scale,
    across,
    spot: (p) => [
      cx + (along(p, across) - along(middle, across)) * scale,
      cy - (along(p, up) - along(middle, up)) * scale,
    ],
    depth: (p) => along(p, toward),
  };
}

/** One corner in one pose with others thin over it, in space on its ground: the ground is a grid of 200 mm. */
export function drawCornerInSpace(
  view: GeometryView,
  { family, corner, pose, rack, beside, part = "" }: StandingCorner,
): readonly Mark[] {
  const { axle: axleName, side } = axleAndSide(corner);
  const axle = family[axleName];
  const moved = moveCorner(axle, side, pose, rack);
  const shape = cornerShape(axle, moved, part);
  const { size } = shape;
  return [
    ...drawGround(view, cornerReach(axle, side), moved.groundZ),
    ...beside.flatMap((other) => drawBeside(view, other, corner, axle.wheel.centre)),
    ...rims(moved, size.width).flatMap((rim) => drawWheelOutline(view, rim, size, hairline)),
    ...drawCornerView(view, shape),
  ];
}

/**
 * One corner in space, seen from any side in parallel projection, its wheel in one pose; the ground under it as a grid of
 * 200 mm. The scale stays while it is walked round.
 */
export function drawTurnedCorner(
  family: Family,
  corner: Corner,
  pose: WheelPose,
  rack: number,
  options: TurnedCornerOptions,
): Scene {
  const { width, height, type = "desk", eye, beside = [] } = options;
  const { axle, side } = axleAndSide(corner);
  const view = turnedView(cornerReach(family[axle], side), options);
  return {
    width,
    height,
    type,
    title: "The corner in space",
    description: `Seen from ${eye.turn}° round from behind, ${eye.tilt}° above the ground.`,
    scale: scaleWords(view.scale),
    marks: [
      { kind: "text", x: EDGE, y: 18, text: eyeWords(eye), style: "label-bold" },
      ...drawCornerInSpace(view, { family, corner, pose, rack, beside }),
    ],
    targets: [],
  };
}

/** Wheel and links of another corner as thin lines, its wheel centre at design where that of this one is. */
export function drawBeside(
  view: GeometryView,
  { family, pose, rack }: BesideCorner,
  corner: Corner,
  centre: readonly [number, number, number],
): readonly Mark[] {
  const { axle: axleName, side } = axleAndSide(corner);
  const axle = family[axleName];
  const own = axle.wheel.centre;
  const across = side === "left" ? 1 : -1;
  const [dx, dy] = [centre[0] - own[0], across * (centre[1] - own[1])];
  const moved = moveCorner(axle, side, pose, rack);
  const shifted: GeometryView = { ...view, spot: ([x, y, z = 0]) => view.spot([x + dx, y + dy, z]) };
  return drawGhost(shifted, moved, cornerShape(axle, moved, "").size);
}

const mean = ([a, b]: readonly [number, number]): number => (a + b) / 2;
const span = ([a, b]: readonly [number, number]): number => b - a;

const SIDES = ["behind", "the left", "the front", "the right"] as const;

/** From where something is seen, in words. */
export function eyeWords({ turn, tilt }: EyePlace): string {
  const round = ((turn % 360) + 360) % 360;
  const side = SIDES[Math.round(round / 90) % 4] ?? SIDES[0];
  const height =
    tilt < -5 ? ", from below" : tilt > 60 ? ", nearly from above" : tilt > 5 ? ", a little from above" : "";
  return `From ${side}${height}`;
}

/** Both faces of the tyre: the wheel moved along its spin axis by half its width each way. */
export function rims<Wheel extends StandingWheel>(moved: Wheel, width: number): readonly Wheel[] {
  return [-0.5, 0.5].map((share) => ({
    ...moved,
    centre: [
      moved.centre[0] + moved.spin[0] * share * width,
      moved.centre[1] + moved.spin[1] * share * width,
      (moved.centre[2] ?? 0) + moved.spin[2] * share * width,
    ],
  }));
}

const GRID = 0.2;

/** The ground under it as a grid of 200 mm. */
export function drawGround(
  view: GeometryView,
  reach: { readonly x: readonly [number, number]; readonly y: readonly [number, number] },
  z: number,
): readonly Mark[] {
  const lines = (range: readonly [number, number]): readonly number[] => {
    const first = Math.ceil(range[0] / GRID);
    return Array.from({ length: Math.max(0, Math.floor(range[1] / GRID) - first + 1) }, (_, i) => (first + i) * GRID);
  };
  const at = (x: number, y: number): Spot => view.spot([x, y, z]);
  const corners = [
    at(reach.x[0], reach.y[0]),
    at(reach.x[1], reach.y[0]),
    at(reach.x[1], reach.y[1]),
    at(reach.x[0], reach.y[1]),
  ];
  return [
    ...lines(reach.x).map(
      (x): Mark => ({ kind: "path", d: polyline([at(x, reach.y[0]), at(x, reach.y[1])]), stroke: hairline }),
    ),
    ...lines(reach.y).map(
      (y): Mark => ({ kind: "path", d: polyline([at(reach.x[0], y), at(reach.x[1], y)]), stroke: hairline }),
    ),
    { kind: "path", d: polygon(corners), stroke: thinLine },
  ];
}
