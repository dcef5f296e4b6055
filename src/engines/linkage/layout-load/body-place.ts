import { add, cross, rotate, scale, subtract, type Vector } from "#numeric";
import { type BodyLayout, CAR_BODY, type LayoutJoint } from "#vehicle";
import type { LayoutLinkage } from "../layout-linkage.ts";
import type { Pose } from "../pose.ts";

/** Where a design point that a moving body carries stands; a point of the car body (index -1) stays. */
export function placeOnBody({ wheel }: LayoutLinkage, pose: Pose, body: number, point: Vector): Vector {
  if (body < 0) return point;
  const t: Vector = [0, 1, 2].map((c) => pose.t[3 * body + c] as number) as [number, number, number];
  const turned = rotate(pose.r.subarray(9 * body, 9 * body + 9), subtract(point, wheel.centre));
  return add(add(wheel.centre, t), turned);
}

/** A force at a place of a body as a row over the steps of all bodies; none on the car body. */
export function forceRow(linkage: LayoutLinkage, pose: Pose, body: number, at: Vector, force: Vector): Float64Array {
  const row = new Float64Array(6 * linkage.bodies.length);
  if (body < 0) return row;
  const origin = placeOnBody(linkage, pose, body, linkage.wheel.centre);
  row.set([...force, ...cross(subtract(at, origin), force)], 6 * body);
  return row;
}

/** What joins a body to its neighbours: which neighbour, at which point of the design, and whether by a link alone. */
interface Attached {
  readonly other: string;
  readonly at: string;
  readonly isLink: boolean;
}

function attachedTo(layout: BodyLayout, body: string): readonly Attached[] {
  const ofJoint = (joint: LayoutJoint): readonly Attached[] => {
    if (joint.kind === "slider") {
      const { line, through } = joint;
      if (line.on === body) return [{ other: through.on, at: line.to, isLink: false }];
      return through.on === body ? [{ other: line.on, at: through.at, isLink: false }] : [];
    }
    const [first, second] = joint.between;
    if (first === body) return [{ other: second, at: joint.at, isLink: false }];
    return second === body ? [{ other: first, at: joint.at, isLink: false }] : [];
  };
  return [
    ...layout.joints.flatMap(ofJoint),
    ...layout.links.flatMap(({ from, to }): readonly Attached[] => [
      ...(from.on === body ? [{ other: to.on, at: from.at, isLink: true }] : []),
      ...(to.on === body ? [{ other: from.on, at: to.at, isLink: true }] : []),
    ]),
  ];
}

/**
 * A design point of a moving body at a share of the way from the middle of what holds it to the car body to the middle of what
 * it holds (of the body with the wheel, the wheel centre); joints count before links. A body without a joint to the car body
 * begins at its own middle.
 */
export function pointAlongBody(layout: BodyLayout, body: string, share: number): Vector {
  const places = attachedTo(layout, body);
  const middleOf = (list: readonly Attached[]): Vector | null => {
    const joints = list.filter(({ isLink }) => !isLink);
    const points = (joints.length > 0 ? joints : list).map(({ at }) => layout.points[at] ?? layout.wheel.centre);
    return points.length === 0 ? null : scale(points.reduce<Vector>(add, [0, 0, 0]), 1 / points.length);
  };
  const inner = middleOf(places.filter(({ other }) => other === CAR_BODY)) ?? middleOf(places);
  const outer =
    body === layout.wheel.on ? layout.wheel.centre : middleOf(places.filter(({ other }) => other !== CAR_BODY));
  const from = inner ?? layout.wheel.centre;
  return add(from, scale(subtract(outer ?? from, from), share));
}
