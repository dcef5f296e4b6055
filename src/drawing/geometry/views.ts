import type { Axle, Side } from "#vehicle";
import type { Spot } from "../path.ts";
import { type CarPoint, onSide, type Projection } from "../projection.ts";

export type ViewName = "behind" | "side" | "above";

/** One of three aligned views; `depth` grows toward the eye. */
export interface GeometryView extends Projection {
  readonly name: ViewName;
  readonly title: string;
  readonly depth: (point: CarPoint) => number;
  /** Upper left corner of the view, page units. */
  readonly corner: Spot;
  /** Direction of the car that lies across the page, for a view that is turned; absent: as the view's name says. */
  readonly across?: readonly [number, number, number];
}

/** How far a corner reaches along the three axes, metres. */
export interface CornerReach {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  readonly z: readonly [number, number];
}

/** Where a wheel stands: its centre and the unit vector along its spin axis. */
interface StandingWheel {
  readonly centre: CarPoint;
  readonly spin: CarPoint;
}

/** Room a corner needs in the views: joints, spring, damper, the wheel at its travels, and turned as the given ones stand. */
export function cornerReach(axle: Axle, side: Side, standing: readonly StandingWheel[] = []): CornerReach {
  // A ring round a joint at the edge keeps inside.
  const margin = 0.056;
  const { centre, freeRadius, tyreWidth } = axle.wheel;
  const points: readonly CarPoint[] = [
    ...axle.links.flatMap((link) => [link.inner.at, link.outer.at]),
    ...(axle.trailingArm === undefined ? [] : [axle.trailingArm.bush.at]),
    axle.spring.body.at,
    axle.strut?.top.at ?? axle.damper.body.at,
  ].map((p) => onSide(side, p));
  const wheel = onSide(side, centre);
  const [inner, outer] = [-1, 1].map(
    (sign) => (along: 0 | 1) =>
      standing.map(({ centre: at, spin }) => {
        const lean = spin[along];
        const half = freeRadius * Math.sqrt(1 - lean * lean) + (tyreWidth / 2) * Math.abs(lean);
        return at[along] + sign * (half + 0.01);
      }),
  ) as [(along: 0 | 1) => number[], (along: 0 | 1) => number[]];
  const reach = (values: readonly number[], extra: readonly number[]): readonly [number, number] => [
    Math.min(...values.map((v) => v - margin), ...extra),
    Math.max(...values.map((v) => v + margin), ...extra),
  ];
  return {
    x: reach(
      points.map(([x]) => x),
      [wheel[0] - freeRadius - 0.02, wheel[0] + freeRadius + 0.02, ...inner(0), ...outer(0)],
    ),
    y: reach(
      points.map(([, y]) => y),
      [wheel[1] - tyreWidth / 2 - 0.02, wheel[1] + tyreWidth / 2 + 0.02, ...inner(1), ...outer(1)],
    ),
    z: reach(
      points.map(([, , z]) => z ?? 0),
      [-0.07, 2 * freeRadius + 0.06],
    ),
  };
}

export interface ViewArea {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const TITLE_ROOM = 22;
const VIEW_GAP = 34;

/** Views in an angle (the plan under the view from behind, one quarter free), or all in a row. */
export type Arrangement = "angle" | "row";

/** Page width the toe's words take beside the plan in a row. */
export const TOE_WORDS = 124;

/** Room under the views for the words of the ring. */
const RING_WORDS = 22;

interface Placing {
  readonly scale: number;
  /** Page x of the view from the side, and upper left corner of the plan. */
  readonly sideX: number;
  readonly planX: number;
  readonly planTop: number;
}

function placeViews(reach: CornerReach, area: ViewArea, arrangement: Arrangement): Placing {
  const [wide, long, high] = (["y", "x", "z"] as const).map((axis) => reach[axis][1] - reach[axis][0]) as [
    number,
    number,
    number,
  ];
  const top = area.y + TITLE_ROOM;
  if (arrangement === "row") {
    const scale = Math.min(
      (area.width - 2 * VIEW_GAP - TOE_WORDS) / (2 * wide + long),
      (area.height - TITLE_ROOM - RING_WORDS) / Math.max(high, long),
    );
    const used = (2 * wide + long) * scale + TOE_WORDS;
    const gap = Math.min((area.width - used) / 2, 3 * VIEW_GAP);
    const sideX = area.x + wide * scale + gap;
    return { scale, sideX, planX: sideX + long * scale + gap, planTop: top };
  }
  const scale = Math.min(
    (area.width - VIEW_GAP) / (wide + long),
    (area.height - 2 * TITLE_ROOM - VIEW_GAP) / (high + long),
  );
  return {
    scale,
    sideX: area.x + wide * scale + VIEW_GAP,
    planX: area.x,
    planTop: top + high * scale + VIEW_GAP + TITLE_ROOM,
  };
}

/**
 * Three views aligned like a drawing: from behind, from the side of the wheel beside it at the same heights, and from
 * above, under the first at the same distance from the middle of the car or at the end of the row.
 */
export function alignViews(
  reach: CornerReach,
  side: Side,
  area: ViewArea,
  arrangement: Arrangement,
): Readonly<Record<ViewName, GeometryView>> {
  const { scale, sideX, planX, planTop } = placeViews(reach, area, arrangement);
  const top = area.y + TITLE_ROOM;
  const fromLeft = side === "left";
  const acrossX = (from: number, y: number) => from + (reach.y[1] - y) * scale;
  const upY = (z: number) => top + (reach.z[1] - z) * scale;
  const alongX = (x: number) => sideX + (fromLeft ? reach.x[1] - x : x - reach.x[0]) * scale;
  return {
    behind: {
      name: "behind",
      title: "From behind",
      scale,
      corner: [area.x, area.y],
      spot: ([, y, z = 0]) => [acrossX(area.x, y), upY(z)],
      depth: ([x]) => -x,
    },
    side: {
      name: "side",
      title: fromLeft ? "From the left, front at left" : "From the right, front at right",
      scale,
      corner: [sideX, area.y],
      spot: ([x, , z = 0]) => [alongX(x), upY(z)],
      depth: ([, y]) => (fromLeft ? y : -y),
    },
    above: {
      name: "above",
      title: "From above, front up",
      scale,
      corner: [planX, planTop - TITLE_ROOM],
      spot: ([x, y]) => [acrossX(planX, y), planTop + (reach.x[1] - x) * scale],
      depth: ([, , z = 0]) => z,
    },
  };
}
