import {
  type BodyLayout,
  CAR_BODY,
  type LayoutAxis,
  type LayoutEnd,
  type LayoutJoint,
  type LayoutStrut,
} from "#vehicle";
import { computeSpinAxis, type WheelLinkage } from "./corner-linkage.ts";
import { type Anchor, type Direction, GROUND, type Measure, PointTable } from "./mechanism.ts";

/** A layout given as data, as a mechanism whose first body carries the wheel. */
export interface LayoutLinkage extends WheelLinkage {
  readonly layout: BodyLayout;
  /** Names of the moving bodies in the order of the mechanism. */
  readonly bodies: readonly string[];
  readonly spring: Measure | null;
  readonly damper: Measure | null;
}

/**
 * Turns a layout into bodies held by scalar constraints: one per link, three per ball, three or two per bush, two per
 * slider. The layout must have been checked (names that exist, one freedom); metres, vehicle frame, left side.
 */
export function buildLayoutLinkage(layout: BodyLayout): LayoutLinkage {
  const { wheel } = layout;
  const bodies = [wheel.on, ...layout.bodies.filter((name) => name !== wheel.on)];
  const table = new PointTable();
  const point = (name: string): number => {
    const at = layout.points[name];
    if (!at) throw new Error(`no point named ${name}: the layout was not checked`);
    return table.index(at, name);
  };
  const body = (name: string): number => {
    const index = bodies.indexOf(name);
    if (index < 0 && name !== CAR_BODY) throw new Error(`no body named ${name}: the layout was not checked`);
    return name === CAR_BODY ? GROUND : index;
  };
  const anchor = (end: LayoutEnd, onRack = false): Anchor => ({
    body: body(end.on),
    point: point(end.at),
    onRack: onRack && end.on === CAR_BODY,
  });
  const direction = (axis: LayoutAxis): Direction =>
    axis.kind === "given" ? axis : { kind: "between", from: point(axis.from), to: point(axis.to) };
  const distance = (joint: string, from: LayoutEnd, to: LayoutEnd, steered: boolean): Measure => ({
    kind: "distance",
    joint,
    a: anchor(from, steered),
    b: anchor(to, steered),
  });
  const offsets = (joint: LayoutJoint): Measure[] => {
    const measure = (a: LayoutEnd, b: LayoutEnd, along: Direction, carrier: number, which: 0 | 1 | 2): Measure => ({
      kind: "offset",
      joint: joint.name,
      a: anchor(a),
      b: anchor(b),
      direction: along,
      carrier,
      which,
    });
    if (joint.kind === "slider") {
      const { on, from, to } = joint.line;
      const along: Direction = { kind: "between", from: point(from), to: point(to) };
      return ([0, 1] as const).map((which) => measure({ on, at: from }, joint.through, along, body(on), which));
    }
    const [first, second] = joint.between;
    const along: Direction = joint.kind === "ball" ? { kind: "given", vector: [0, 0, 1] } : direction(joint.axis);
    const held = joint.kind === "bush" && joint.slides ? ([0, 1] as const) : ([0, 1, 2] as const);
    return held.map((which) =>
      measure({ on: first, at: joint.at }, { on: second, at: joint.at }, along, body(first), which),
    );
  };
  const constraints = [
    ...layout.links.map((link) => distance(link.name, link.from, link.to, link.steered)),
    ...layout.joints.flatMap(offsets),
  ];
  const lengthOf = (name: string, strut: LayoutStrut | undefined): Measure | null =>
    strut ? distance(name, strut.from, strut.to, false) : null;
  const spring = lengthOf("spring", layout.spring);
  const damper = lengthOf("damper", layout.damper);
  return {
    layout,
    bodies,
    wheel,
    mechanism: {
      points: table.points,
      pointNames: table.names,
      // Any fixed place will do as the origin of a body; the wheel centre is close to all of them.
      origins: bodies.map(() => wheel.centre),
      constraints,
    },
    spinAxis: computeSpinAxis(wheel.camber, wheel.toe),
    spring,
    damper,
  };
}
