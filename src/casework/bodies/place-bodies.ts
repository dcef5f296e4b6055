import type { LayoutLinkage, Pose, WheelAttitude } from "#engines/linkage";
import { add, subtract, type Vector } from "#numeric";
import { CAR_BODY, type LayoutEnd } from "#vehicle";
import type { PlacedBodies } from "../bodies.ts";
import { STAND_IN_SPRING } from "./stand-in-spring.ts";

/** A pose of all bodies, how the wheel stands in it, and where the rack is (absent: in its middle). */
interface Posed {
  readonly pose: Pose;
  readonly attitude: WheelAttitude;
  readonly load?: { readonly rack: number };
}

/** Where every part of a layout stands in a pose. */
export function placeBodies({ layout, bodies }: LayoutLinkage, { pose, attitude, load }: Posed): PlacedBodies {
  const rack = load?.rack ?? 0;
  const origin = layout.wheel.centre;
  const design = (name: string): Vector => layout.points[name] ?? origin;
  const at = ({ on, at: name }: LayoutEnd, steered = false): Vector => {
    const k = bodies.indexOf(on);
    if (k < 0) return steered ? add(design(name), [0, rack, 0]) : design(name);
    const arm = subtract(design(name), origin);
    const turned = [0, 1, 2].map((i) =>
      arm.reduce((sum, x, j) => sum + (pose.r[9 * k + 3 * i + j] as number) * x, pose.t[3 * k + i] as number),
    ) as [number, number, number];
    return add(origin, turned);
  };
  const ends = (strut: { readonly from: LayoutEnd; readonly to: LayoutEnd } | undefined) =>
    strut === undefined ? null : { from: at(strut.from), to: at(strut.to) };
  const carried = carriedPoints(layout);
  return {
    wheel: {
      centre: attitude.centre,
      spin: attitude.axis,
      radius: layout.wheel.loadedRadius,
      groundZ: attitude.contact[2],
    },
    bodies: bodies.map((name) => ({
      name,
      points: carried.filter(({ on }) => on === name).map((end) => at(end)),
    })),
    links: layout.links.map(({ name, from, to, steered }) => ({ name, from: at(from, steered), to: at(to, steered) })),
    joints: layout.joints.map((joint) => ({
      name: joint.name,
      at: joint.kind === "slider" ? at(joint.through) : at({ on: joint.between[1], at: joint.at }),
    })),
    spring: layout.spring?.from.at === STAND_IN_SPRING.from ? null : ends(layout.spring),
    damper: ends(layout.damper),
  };
}

/** Every point a moving body carries, once. */
function carriedPoints(layout: LayoutLinkage["layout"]): readonly LayoutEnd[] {
  const ends = [
    ...layout.links.flatMap(({ from, to }) => [from, to]),
    ...layout.joints.flatMap((joint): readonly LayoutEnd[] =>
      joint.kind === "slider"
        ? [joint.through, { on: joint.line.on, at: joint.line.from }, { on: joint.line.on, at: joint.line.to }]
        : joint.between.map((on) => ({ on, at: joint.at })),
    ),
    ...[layout.spring, layout.damper].flatMap((strut) => (strut ? [strut.from, strut.to] : [])),
  ];
  return ends.filter(
    ({ on, at }, i) =>
      at !== STAND_IN_SPRING.to && on !== CAR_BODY && ends.findIndex((one) => one.on === on && one.at === at) === i,
  );
}
