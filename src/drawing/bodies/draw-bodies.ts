import type { PlacedBodies, RubberPlace } from "#casework";
import { drawSpring, drawWheelOutline } from "../geometry/draw-corner-view.ts";
import { drawGround, type EyePlace, eyeWords, rims, turnedView } from "../geometry/draw-turned-corner.ts";
import type { CornerReach, GeometryView } from "../geometry/views.ts";
import { polyline } from "../path.ts";
import { between, type CarPoint } from "../projection.ts";
import { scaleWords } from "../scale-words.ts";
import type { Mark, Scene, TypeScale } from "../scene.ts";
import { farLook, hairline, soundLook, thinLine } from "../symbols/look.ts";
import { drawTube } from "../symbols/tube.ts";
import { strokes } from "../tokens.ts";

export interface BodiesOptions {
  readonly width: number;
  readonly height: number;
  readonly type?: TypeScale;
  readonly eye: EyePlace;
  /** The same in another state, drawn thin. */
  readonly beside: PlacedBodies | null;
  /** The place ringed in the accent: a joint, an end of a link, or (end null) a whole link; null: none. */
  readonly at: RubberPlace | null;
  /** Where a support stands; absent: none. */
  readonly support?: CarPoint | null;
}

/** What a file does not say is drawn so, metres (invented, drawing only). */
const DRAWN = {
  link: 0.03,
  body: 0.036,
  eye: 0.024,
  coil: 0.11,
  wire: 0.012,
  tube: 0.045,
  rod: 0.014,
  tyre: 0.22,
  rim: 0.68,
} as const;
/** How far inboard of the wheel's middle its carrier is drawn. */
const HUB_INBOARD = 0.066;
const EDGE = 24;
const ROOM = 0.06;

/** A suspension of any number of bodies in space: links as tubes, bodies as tubes from their middle to what they carry. */
export function drawBodies(placed: PlacedBodies, options: BodiesOptions): Scene {
  const { width, height, type = "desk", eye, beside, at, support = null } = options;
  const { wheel } = placed;
  const reach = reachOf(placed);
  const view = turnedView(reach, options);
  const size = { radius: wheel.radius, rimRadius: wheel.radius * DRAWN.rim, width: DRAWN.tyre };
  return {
    width,
    height,
    type,
    title: "The suspension in space",
    description: `Seen from ${eye.turn}° round from behind, ${eye.tilt}° above the ground.`,
    scale: scaleWords(view.scale),
    marks: [
      { kind: "text", x: EDGE, y: 18, text: eyeWords(eye), style: "label-bold" },
      ...drawGround(view, reach, wheel.groundZ),
      ...(beside === null ? [] : drawThin(view, beside, size)),
      ...rims(wheel, size.width).flatMap((rim) => drawWheelOutline(view, rim, size, hairline)),
      ...drawWheelOutline(view, wheel, size, thinLine),
      ...partsOf(view, placed)
        .toSorted((a, b) => a.depth - b.depth)
        .flatMap(({ marks }) => marks),
      // Over all parts: it is what is looked at, whatever stands before it.
      ...(at === null ? [] : drawRing(view, placed, at)),
      ...(support === null ? [] : drawSupport(view, support, wheel.groundZ)),
    ],
    targets: [],
  };
}

interface Part {
  readonly depth: number;
  readonly marks: readonly Mark[];
}

function partsOf(view: GeometryView, placed: PlacedBodies): readonly Part[] {
  const part = (points: readonly CarPoint[], marks: readonly Mark[]): Part => ({
    depth: points.reduce((sum, p) => sum + view.depth(p), 0) / Math.max(points.length, 1),
    marks,
  });
  const [carrier, ...bodies] = placed.bodies;
  const hub = along(placed.wheel.centre, placed.wheel.spin, -HUB_INBOARD);
  const star = (points: readonly CarPoint[], middle: CarPoint): Part =>
    part(
      [...points, middle],
      drawTube(view, { runs: points.map((point) => [middle, point]), width: DRAWN.body }, farLook),
    );
  const ring = (at: CarPoint): readonly Mark[] =>
    drawTube(view, { runs: [], width: DRAWN.link, eyes: [{ at, radius: DRAWN.eye }] }, soundLook);
  const { spring, damper } = placed;
  return [
    ...(carrier ? [star(carrier.points, hub)] : []),
    ...bodies.map(({ points }) => star(points, middleOf(points))),
    ...placed.links.map(({ from, to }) =>
      part(
        [from, to],
        drawTube(
          view,
          { runs: [[from, to]], width: DRAWN.link, eyes: [from, to].map((at) => ({ at, radius: DRAWN.eye })) },
          soundLook,
        ),
      ),
    ),
    ...placed.joints.map(({ at }) => part([at], ring(at))),
    ...(spring
      ? [
          part(
            [spring.from, spring.to],
            drawSpring(view, { seat: spring.to, top: spring.from }, DRAWN.coil, DRAWN.wire),
          ),
        ]
      : []),
    ...(damper ? [part([damper.from, damper.to], drawDamperTube(view, damper))] : []),
  ];
}

/** A damper: its rod from the body, its tube from half the way down. */
function drawDamperTube(view: GeometryView, { from, to }: NonNullable<PlacedBodies["damper"]>): readonly Mark[] {
  const half = between(from, to, 0.5);
  return [
    ...drawTube(view, { runs: [[from, half]], width: DRAWN.rod }, farLook),
    ...drawTube(view, { runs: [[half, to]], width: DRAWN.tube }, farLook),
  ];
}

/** A ring round a joint or an end of a link, both ends where the whole link is meant. */
function drawRing(view: GeometryView, { links, joints }: PlacedBodies, { part, end }: RubberPlace): readonly Mark[] {
  const link = links.find(({ name }) => name === part);
  const joint = joints.find(({ name }) => name === part);
  const places = joint ? [joint.at] : link ? (end === null ? [link.from, link.to] : [link[end]]) : [];
  const stroke = { colour: "accent", width: strokes.selected } as const;
  return places.map((at): Mark => {
    const [cx, cy] = view.spot(at);
    return { kind: "circle", cx, cy, r: 1.4 * DRAWN.eye * view.scale, stroke };
  });
}

/** A support: from the ground up to where it stands under a part. */
function drawSupport(view: GeometryView, at: CarPoint, groundZ: number): readonly Mark[] {
  const stroke = { colour: "accent", width: strokes.selected } as const;
  const [x, y] = at;
  const under: CarPoint = [x, y, groundZ];
  const foot = ([-1, 1] as const).map((way): CarPoint => [x, y + way * DRAWN.tube, groundZ]);
  return [
    { kind: "path", d: polyline([view.spot(under), view.spot(at)]), stroke },
    { kind: "path", d: polyline(foot.map((p) => view.spot(p))), stroke },
  ];
}

function drawThin(
  view: GeometryView,
  { wheel, links }: PlacedBodies,
  size: { readonly radius: number; readonly rimRadius: number; readonly width: number },
): readonly Mark[] {
  return [
    ...drawWheelOutline(view, wheel, size, thinLine),
    ...links.map(
      ({ from, to }): Mark => ({ kind: "path", d: polyline([view.spot(from), view.spot(to)]), stroke: thinLine }),
    ),
  ];
}

const along = (p: CarPoint, direction: readonly [number, number, number], by: number): CarPoint => [
  p[0] + direction[0] * by,
  p[1] + direction[1] * by,
  (p[2] ?? 0) + direction[2] * by,
];

function middleOf(points: readonly CarPoint[]): CarPoint {
  const mean = (axis: 0 | 1 | 2): number =>
    points.reduce((sum, p) => sum + (p[axis] ?? 0), 0) / Math.max(points.length, 1);
  return [mean(0), mean(1), mean(2)];
}

function reachOf({ wheel, links, joints, spring, damper }: PlacedBodies): CornerReach {
  const [x, y, z] = wheel.centre;
  const points: readonly CarPoint[] = [
    ...links.flatMap(({ from, to }) => [from, to]),
    ...joints.map(({ at }) => at),
    ...[spring, damper].flatMap((one) => (one ? [one.from, one.to] : [])),
    [x - wheel.radius, y - DRAWN.tyre / 2, z - wheel.radius],
    [x + wheel.radius, y + DRAWN.tyre / 2, z + wheel.radius],
  ];
  const range = (axis: 0 | 1 | 2): readonly [number, number] => {
    const values = points.map((p) => p[axis] ?? 0);
    return [Math.min(...values) - ROOM, Math.max(...values) + ROOM];
  };
  return { x: range(0), y: range(1), z: range(2) };
}
