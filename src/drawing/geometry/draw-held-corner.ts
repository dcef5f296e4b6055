import type { HeldJoint, HeldState } from "#casework";
import { axleAndSide, type Corner, type Family, type Position, positionsOf } from "#vehicle";
import { polygon, polyline, type Spot } from "../path.ts";
import { scaleWords } from "../scale-words.ts";
import type { Mark, Scene, TypeScale } from "../scene.ts";
import { hairline, thinLine } from "../symbols/look.ts";
import { drawSeenMark, seenNames } from "../symbols/seen-mark.ts";
import { computeStyleWidth, shortenText, wrapText } from "../text-width.ts";
import { faces } from "../tokens.ts";
import { cornerShape, drawCornerView } from "./draw-corner-view.ts";
import { type MovedCorner, moveCorner } from "./moved-corner.ts";
import { type Arrangement, alignViews, cornerReach, type GeometryView } from "./views.ts";

export interface HeldCornerOptions {
  readonly width: number;
  readonly height: number;
  readonly type?: TypeScale;
  /** Id of the joint that is looked at. */
  readonly selected: string | null;
  /** Writes a load. */
  readonly format: (newtons: number) => string;
  /** The largest load of all states: arrows keep their scale from state to state. */
  readonly most: number;
  /** Absent = "angle", with the way it is held in the free quarter. */
  readonly arrangement?: Arrangement;
}

const EDGE = 24;
/** Length of the arrow of the largest load, page units. */
const LONGEST = 74;
/** Shorter than this an arrow is not drawn. */
const SHORTEST = 6;
const MARK = 8;
/** Room over the highest joint for its arrow, metres. */
const ARROW_ROOM = 0.12;

interface Placed {
  readonly joint: HeldJoint;
  readonly position: Position;
  readonly at: readonly [number, number, number];
}

/**
 * A corner as it is held, in three aligned views: every joint with its mark of what opens its play there and an arrow of the
 * load that presses it together, the support where one stands, the joint looked at in the accent with its load in words.
 */
export function drawHeldCorner(family: Family, corner: Corner, state: HeldState, options: HeldCornerOptions): Scene {
  const { width, height, type = "desk", selected } = options;
  const { axle: axleName, side } = axleAndSide(corner);
  const axle = family[axleName];
  const arrangement = options.arrangement ?? "angle";
  const moved = moveCorner(axle, side, state.pose, 0);
  const reach = cornerReach(axle, side, [moved]);
  const low = Math.min(reach.z[0], -axle.droopStop - 0.06);
  const area = { x: EDGE, y: 8, width: width - 2 * EDGE, height: height - (arrangement === "row" ? 16 : 30) };
  const views = alignViews({ ...reach, z: [low, reach.z[1] + ARROW_ROOM] }, side, area, arrangement);
  const all = [views.behind, views.side, views.above];
  const shape = cornerShape(axle, moved, "");
  const placed = placeJoints(family, state, moved);
  const marks: Mark[] = [];
  for (const view of all) {
    marks.push(...drawCornerView(view, shape));
    if (view.name !== "above") marks.push(...drawUnderWheel(view, state, moved, reach));
    const ringed = view.name === "above" ? [] : placed;
    marks.push(...ringed.flatMap((one) => drawLoad(view, one, options)));
    marks.push(...placed.flatMap((one) => drawJoint(view, one, selected)));
    marks.push({
      kind: "text",
      x: view.corner[0],
      y: view.corner[1] + 12,
      text: titleFor(view, arrangement === "angle" && view.name === "above" ? views.side.corner[0] : width - 4, type),
      style: "label-bold",
      halo: true,
    });
  }
  const chosen = placed.find(({ position }) => position.id === selected);
  if (chosen) marks.push(...drawSaid(views.behind, views.behind.spot([0, 0, low])[1], chosen, options));
  if (arrangement === "angle") marks.push(...drawWords(views.side, views.above, state, options));
  return {
    width,
    height,
    type,
    title: `The corner as it is held: ${state.title.toLowerCase()}`,
    description: `${state.how} ${placed.map(({ joint, position }) => `${position.label}: ${options.format(joint.load)}, ${seenNames[joint.by]}`).join("; ")}.`,
    scale: scaleWords(views.behind.scale),
    marks,
    targets: [],
  };
}

/** Name of a view; only from where it is seen, where the rest has no room before `end`. */
function titleFor(view: GeometryView, end: number, type: TypeScale): string {
  const [from = view.title] = view.title.split(",");
  return view.corner[0] + computeStyleWidth(view.title, "label-bold", type) <= end ? view.title : from;
}

/** Joints with the place they have gone to: outer ones with the knuckle, inner ones as they are on the body. */
function placeJoints(family: Family, state: HeldState, moved: MovedCorner): readonly Placed[] {
  const positions = positionsOf(family);
  return state.joints.flatMap((joint) => {
    const position = positions.find(({ id }) => id === joint.position);
    if (!position?.joint) return [];
    const link = moved.links.find(({ name }) => name === position.joint?.link);
    const at = link === undefined ? position.at : position.joint.end === "outer" ? link.outer : link.inner;
    return at === null ? [] : [{ joint, position, at: [at[0], at[1], at[2] ?? 0] as const }];
  });
}

function drawJoint(view: GeometryView, { joint, position, at }: Placed, selected: string | null): readonly Mark[] {
  const [cx, cy] = view.spot(at);
  const ring: Mark[] =
    position.id === selected ? [{ kind: "circle", cx, cy, r: MARK + 5, stroke: { colour: "accent", width: 3 } }] : [];
  return [...drawSeenMark(joint.by, cx, cy, MARK), ...ring];
}

/** The load as an arrow that ends at the joint. */
function drawLoad(view: GeometryView, { joint, position, at }: Placed, options: HeldCornerOptions): readonly Mark[] {
  const tip = view.spot(at);
  const size = Math.hypot(...joint.force);
  if (size === 0) return [];
  const from = view.spot([
    at[0] - joint.force[0] / size / 100,
    at[1] - joint.force[1] / size / 100,
    at[2] - joint.force[2] / size / 100,
  ]);
  const flat = Math.hypot(tip[0] - from[0], tip[1] - from[1]) / (view.scale / 100);
  const length = (LONGEST * size * flat) / options.most;
  if (length < SHORTEST) return [];
  const angle = Math.atan2(tip[1] - from[1], tip[0] - from[0]);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const end: Spot = [tip[0] - (MARK + 2) * c, tip[1] - (MARK + 2) * s];
  const start: Spot = [end[0] - length * c, end[1] - length * s];
  const head = Math.min(9, length);
  const colour = position.id === options.selected ? "accent" : "ink2";
  return [
    { kind: "path", d: polyline([start, end]), stroke: { colour: "paper", width: 5 } },
    { kind: "path", d: polyline([start, end]), stroke: { colour, width: 2 } },
    {
      kind: "path",
      d: polygon([
        end,
        [end[0] - head * c + 4 * s, end[1] - head * s - 4 * c],
        [end[0] - head * c - 4 * s, end[1] - head * s + 4 * c],
      ]),
      fill: colour,
    },
  ];
}

/** Ground under a standing wheel; under a held one the support where there is one. */
function drawUnderWheel(
  view: GeometryView,
  state: HeldState,
  moved: MovedCorner,
  reach: { readonly x: readonly [number, number]; readonly y: readonly [number, number] },
): readonly Mark[] {
  if (state.held.kind === "ride") {
    const ends =
      view.name === "behind"
        ? reach.y.map((y): Spot => view.spot([0, y, moved.groundZ]))
        : reach.x.map((x): Spot => view.spot([x, 0, moved.groundZ]));
    return [{ kind: "path", d: polyline(ends), stroke: thinLine }];
  }
  if (state.supportAt === null) return [];
  const [x, y] = view.spot(state.supportAt);
  const top = y + 14;
  return [
    {
      kind: "path",
      d: polygon([
        [x, y + 4],
        [x + 9, top],
        [x - 9, top],
      ]),
      fill: "accent",
    },
    {
      kind: "path",
      d: `M${x - 5} ${top}V${top + 44}M${x + 5} ${top}V${top + 44}M${x - 16} ${top + 44}H${x + 16}`,
      stroke: { colour: "accent", width: 2 },
    },
  ];
}

/** Name and load of the joint looked at, under the view from behind with a leader to the joint. */
function drawSaid(
  view: GeometryView,
  lowest: number,
  { joint, position, at }: Placed,
  options: HeldCornerOptions,
): readonly Mark[] {
  const { type = "desk", width, format } = options;
  const [cx, cy] = view.spot(at);
  const x = view.corner[0];
  const y = lowest + 16;
  const words = `${position.label}: ${format(joint.load)}, ${seenNames[joint.by]}`;
  const text = shortenText(words, width - EDGE - x, "label-accent", type);
  const under = Math.min(Math.max(cx, x + 4), x + computeStyleWidth(text, "label-accent", type) - 4);
  const d = polyline([
    [cx, cy + MARK + 7],
    [under, y - faces[type].label.size * 0.85],
  ]);
  return [
    { kind: "path", d, stroke: { colour: "accent", width: 1.2 } },
    { kind: "text", x, y, text, style: "label-accent", halo: true },
  ];
}

/** In the free quarter: how it is held, and the scale of the arrows. */
function drawWords(
  side: GeometryView,
  above: GeometryView,
  state: HeldState,
  options: HeldCornerOptions,
): readonly Mark[] {
  const { width, height, type = "desk" } = options;
  const x = side.corner[0] + 12;
  const wide = width - EDGE - x;
  const pitch = faces[type].label.size * 1.3;
  const lines = wrapText(state.how, wide, "label", type);
  let y = above.corner[1] + 12;
  const marks: Mark[] = [{ kind: "text", x, y, text: state.title, style: "label-bold" }];
  for (const text of lines) {
    y += pitch;
    marks.push({ kind: "text", x, y, text, style: "label" });
  }
  y += pitch * 1.2;
  if (y <= height - 4) {
    const d = `M${x} ${y - 4}H${x + LONGEST / 2}`;
    marks.push(
      { kind: "path", d, stroke: { colour: "ink2", width: 2 } },
      { kind: "path", d: `M${x} ${y - 8}V${y}M${x + LONGEST / 2} ${y - 8}V${y}`, stroke: hairline },
      { kind: "text", x: x + LONGEST / 2 + 8, y, text: `${options.format(options.most / 2)} of load`, style: "note" },
    );
  }
  return marks;
}
