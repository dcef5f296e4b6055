import type { Axle, AxleName, Family } from "#vehicle";
import { type BelowView, belowView } from "../below/below-view.ts";
import { cornerParts } from "../below/corner-parts.ts";
import { drawCornerFrame } from "../corner/corner-frame.ts";
import { drawCornerView } from "../geometry/draw-corner-view.ts";
import { moveCorner } from "../geometry/moved-corner.ts";
import { type CornerReach, cornerReach, type GeometryView } from "../geometry/views.ts";
import { polyline } from "../path.ts";
import type { CarPoint } from "../projection.ts";
import { scaleWords } from "../scale-words.ts";
import type { Mark, PressPoint, Scene, TypeScale } from "../scene.ts";
import { hairline, soundLook } from "../symbols/look.ts";
import { strokes } from "../tokens.ts";

/** A point of the left side as it is drawn over the corner. */
export interface DrawnPoint {
  readonly id: string;
  /** Metres, vehicle frame. */
  readonly at: CarPoint;
  /** Where it lay before it was changed; null where it was not. */
  readonly before: CarPoint | null;
  readonly selected: boolean;
}

export interface HardPointOptions {
  readonly width: number;
  readonly height: number;
  readonly type?: TypeScale;
  readonly points: readonly DrawnPoint[];
}

const EDGE = 20;
const TITLE = 26;
const GAP = 18;

interface Views {
  readonly front: GeometryView;
  readonly below: BelowView;
  readonly scale: number;
  readonly titles: readonly Mark[];
}

/** From the front above the view from below at one scale, left and right in line; beside each other where there is width. */
function placeViews(reach: CornerReach, { width, height, type = "desk" }: HardPointOptions): Views {
  const [wide, long, high] = [reach.y[1] - reach.y[0], reach.x[1] - reach.x[0], reach.z[1] - reach.z[0]];
  const beside = width > 1.15 * height;
  const scale = Math.max(
    beside
      ? Math.min((width - 2 * EDGE - GAP) / (2 * wide), (height - TITLE - GAP) / Math.max(high, long))
      : Math.min((width - 2 * EDGE) / wide, (height - 2 * TITLE - 2 * GAP) / (high + long)),
    1,
  );
  const used = (beside ? 2 * wide : wide) * scale + (beside ? GAP : 0);
  const left = Math.max((width - used) / 2, 0);
  const second = beside ? left + wide * scale + GAP : left;
  const belowTop = beside ? TITLE : TITLE + high * scale + GAP + TITLE;
  const across = (y: number): number => left + (y - reach.y[0]) * scale;
  const front: GeometryView = {
    name: "behind",
    title: "From the front",
    scale,
    corner: [left, 0],
    spot: ([, y, z = 0]) => [across(y), TITLE + (reach.z[1] - z) * scale],
    depth: ([x]) => x,
  };
  const below = belowView(second - reach.y[0] * scale, belowTop, reach.x[1], scale, null);
  const title = (x: number, y: number, text: string): Mark => ({ kind: "text", x, y, text, style: "label-second" });
  const titles = [
    title(left, TITLE - 9, "From the front"),
    title(second, belowTop - 9, type === "touch" ? "From below" : "From below, front up"),
  ];
  return { front, below, scale, titles };
}

/** The corner at ride height from the front, drawn like every view of a corner. */
function drawFront(view: GeometryView, axle: Axle, reach: CornerReach): readonly Mark[] {
  const { centre, camber, toe, loadedRadius } = axle.wheel;
  const rotation = [1, 0, 0, 0, 1, 0, 0, 0, 1];
  const contact = [centre[0], centre[1], centre[2] - loadedRadius] as const;
  const moved = moveCorner(axle, "left", { centre, rotation, camber, toe, spin: 0, contact }, 0);
  const size = {
    radius: axle.wheel.freeRadius,
    rimRadius: axle.wheel.rimDiameter / 2,
    width: axle.wheel.tyreWidth,
  };
  const ground = polyline([view.spot([0, reach.y[0], moved.groundZ]), view.spot([0, reach.y[1], moved.groundZ])]);
  return [
    { kind: "path", d: ground, stroke: hairline },
    ...drawCornerView(view, {
      moved,
      size,
      coilDiameter: axle.spring.coilDiameter,
      wireDiameter: axle.spring.wireDiameter,
      damperDiameter: axle.damper.tubeDiameter,
      isStrut: axle.strut !== undefined,
      footOnKnuckle: axle.damper.seat.on === "knuckle",
      faultyPart: "",
    }),
  ];
}

function drawPoint(spot: (point: CarPoint) => readonly [number, number], point: DrawnPoint): readonly Mark[] {
  const [cx, cy] = spot(point.at);
  const marks: Mark[] = [];
  if (point.before !== null) {
    const [bx, by] = spot(point.before);
    marks.push(
      { kind: "circle", cx: bx, cy: by, r: 4, stroke: { colour: "ink3", width: 1, dash: [2.4, 2] }, fill: "paper" },
      {
        kind: "path",
        d: polyline([
          [bx, by],
          [cx, cy],
        ]),
        stroke: { colour: "accent", width: strokes.finding },
      },
    );
  }
  const moved = point.before !== null;
  marks.push({
    kind: "circle",
    cx,
    cy,
    r: point.selected ? 5 : 3.6,
    stroke: { colour: moved || point.selected ? "accent" : "ink", width: 1.4 },
    fill: moved || point.selected ? "accent" : "paper",
  });
  if (point.selected)
    marks.push({ kind: "circle", cx, cy, r: 13, stroke: { colour: "accent", width: strokes.selected } });
  return marks;
}

/** Selected and moved points last, so that nothing covers them. */
const inOrder = (points: readonly DrawnPoint[]): readonly DrawnPoint[] =>
  points.toSorted(
    (a, b) => Number(a.selected) - Number(b.selected) || Number(a.before !== null) - Number(b.before !== null),
  );

/**
 * The left corner of an axle at ride height from the front and from below, at one scale, with its hard points over it:
 * the selected one ringed, a changed one joined to where it was.
 * @returns a scene whose drawn points can be pressed where they lie; it has no targets, since the rows of the entry are these
 */
export function drawHardPoints(family: Family, axleName: AxleName, options: HardPointOptions): Scene {
  const axle = family[axleName];
  const reach = cornerReach(axle, "left");
  const views = placeViews(reach, options);
  const { front, below } = views;
  const corner = cornerParts(axle, "left", [], reach.y[0]).flatMap((part) => part.draw(below, () => soundLook));
  const points = inOrder(options.points);
  const spots = [front.spot, below.spot];
  const moved = points.filter(({ before }) => before !== null).length;
  return {
    width: options.width,
    height: options.height,
    type: options.type ?? "desk",
    title: `${family.name}: hard points of the ${axleName} axle, left side`,
    description: `From the front and from below. ${points.length} points, ${moved} of them moved.`,
    marks: [
      ...views.titles,
      ...drawFront(front, axle, reach),
      ...drawCornerFrame(below, axle, "left", reach.y[0], reach.y[1]),
      ...corner,
      ...spots.flatMap((spot) => points.flatMap((point) => drawPoint(spot, point))),
    ],
    targets: [],
    points: spots.flatMap((spot) =>
      points.map(({ id, at }): PressPoint => {
        const [x, y] = spot(at);
        return { id, x, y };
      }),
    ),
    scale: scaleWords(views.scale),
  };
}
