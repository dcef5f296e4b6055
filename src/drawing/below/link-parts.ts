import type { Axle, Joint, Link, Side } from "#vehicle";
import { polygon } from "../path.ts";
import { between, type CarPoint, onSide, type Projection } from "../projection.ts";
import type { Mark } from "../scene.ts";
import { drawBallJoint, drawBush } from "../symbols/bush.ts";
import { farLook, type Look, strokeOf } from "../symbols/look.ts";
import { drawTube, type Eye } from "../symbols/tube.ts";
import { type CornerPart, meanHeight } from "./corner-part.ts";

/** Housing round a joint's rubber or ball, metres. */
const HOUSING = 0.004;
const BALL_RADIUS = 0.019;
const KNUCKLE_WIDTH = 0.042;
const HUB_BOSS = 0.052;
/** The knuckle's arms start this far inboard of the wheel centre. */
const BOSS_INBOARD = 0.064;
const DEFAULT_BUSH = { diameter: 0.048, length: 0.052 } as const;

const eyeRadius = (joint: Joint): number =>
  joint.kind === "ball-joint" ? BALL_RADIUS + HOUSING : (joint.outerDiameter ?? DEFAULT_BUSH.diameter) / 2 + HOUSING;

function drawJoint(view: Projection, at: CarPoint, joint: Joint, side: Side, look: Look): readonly Mark[] {
  if (joint.kind === "ball-joint") return drawBallJoint(view, at, BALL_RADIUS, look);
  if (joint.axis === undefined) return [];
  const [x, y, z] = joint.axis;
  return drawBush(
    view,
    {
      at,
      axis: onSide(side, [x, y, z]),
      length: joint.length ?? DEFAULT_BUSH.length,
      diameter: joint.outerDiameter ?? DEFAULT_BUSH.diameter,
      hydraulic: joint.kind === "hydraulic-bush",
    },
    look,
  );
}

/** A single link, with the pan of the spring where it carries one. */
function linkPart(axle: Axle, link: Link, side: Side): CornerPart {
  const inner = onSide(side, link.inner.at);
  const outer = onSide(side, link.outer.at);
  const { seat, coilDiameter } = axle.spring;
  const pan: readonly Eye[] =
    seat.on === "link" && seat.link === link.name
      ? [{ at: between(inner, outer, seat.fraction), radius: coilDiameter / 2 + 0.018 }]
      : [];
  const eyes = [
    { at: inner, radius: eyeRadius(link.innerJoint) },
    { at: outer, radius: eyeRadius(link.outerJoint) },
    ...pan,
  ];
  return {
    name: link.name,
    sheet: link.sheet,
    height: meanHeight([inner, outer]),
    lines: [[inner, outer]],
    draw: (view, lookOf) => {
      const look = lookOf(link.name);
      const plain = { ...look, unseen: false };
      return [
        ...drawTube(view, { runs: [[inner, outer]], width: link.section.width, eyes }, look),
        ...drawJoint(view, inner, link.innerJoint, side, plain),
        ...drawJoint(view, outer, link.outerJoint, side, plain),
      ];
    },
  };
}

/** Links that are one rigid arm, drawn as one: legs, a web between them where the arm is a heavy one, the seat of spring or damper. */
function armPart(axle: Axle, arm: string, links: readonly Link[], side: Side): CornerPart {
  const legs = links.map((link) => [onSide(side, link.inner.at), onSide(side, link.outer.at)] as const);
  const outer = legs[0]?.[1] ?? [0, 0, 0];
  const [first] = links;
  const width = Math.max(...links.map((link) => link.section.width));
  const seat = axle.spring.seat;
  const carries = seat.on === "arm" && links.some((link) => seat.links.includes(link.name)) ? seat.moving.at : null;
  const web = width > 0.03 ? [legs.map(([inner, end]) => between(inner, end, 0.38))] : [];
  const seatAt = carries === null ? null : onSide(side, carries);
  const runs = [...legs, ...web, ...(seatAt === null ? [] : [[seatAt, outer]])];
  const eyes: readonly Eye[] = [
    ...links.map((link) => ({ at: onSide(side, link.inner.at), radius: eyeRadius(link.innerJoint) })),
    { at: outer, radius: first === undefined ? BALL_RADIUS : eyeRadius(first.outerJoint) + 0.006 },
    ...(seatAt === null ? [] : [{ at: seatAt, radius: HUB_BOSS }]),
  ];
  return {
    name: arm,
    sheet: first?.sheet ?? "lower",
    height: meanHeight(legs.flat()),
    lines: legs,
    draw: (view, lookOf) => {
      const look = lookOf(arm);
      const plain = { ...look, unseen: false };
      return [
        ...drawTube(view, { runs, width, eyes }, look),
        ...links.flatMap((link) => drawJoint(view, onSide(side, link.inner.at), link.innerJoint, side, plain)),
        ...(first === undefined ? [] : drawJoint(view, outer, first.outerJoint, side, plain)),
      ];
    },
  };
}

/** Links and arms of a corner. */
export function linkParts(axle: Axle, side: Side): readonly CornerPart[] {
  const arms = [...new Set(axle.links.flatMap((link) => (link.arm === undefined ? [] : [link.arm])))];
  return [
    ...axle.links.filter((link) => link.arm === undefined).map((link) => linkPart(axle, link, side)),
    ...arms.map((arm) =>
      armPart(
        axle,
        arm,
        axle.links.filter((link) => link.arm === arm),
        side,
      ),
    ),
  ];
}

/** The trailing arm of a corner that has one. */
export function trailingArmParts(axle: Axle, side: Side): readonly CornerPart[] {
  const arm = axle.trailingArm;
  if (arm === undefined) return [];
  const bush = onSide(side, arm.bush.at);
  const [wx, wy, wz] = axle.wheel.centre;
  const hub = onSide(side, [wx, wy - BOSS_INBOARD, wz]);
  const bend = onSide(side, [wx + (arm.bush.at[0] - wx) * 0.4, wy - BOSS_INBOARD - 0.01, wz]);
  const eyes = [{ at: bush, radius: eyeRadius(arm.bushJoint) + HOUSING }];
  return [
    {
      name: "trailing-arm",
      sheet: "lower",
      height: meanHeight([bush, hub]),
      lines: [[bush, bend, hub]],
      draw: (view, lookOf) => {
        const look = lookOf("trailing-arm");
        return [
          ...drawTube(view, { runs: [[bush, bend, hub]], width: arm.section.width, eyes }, look),
          ...drawJoint(view, bush, arm.bushJoint, side, { ...look, unseen: false }),
        ];
      },
    },
  ];
}

interface KnuckleEnd {
  readonly at: CarPoint;
  readonly radius: number;
}

/** Where members meet the knuckle: their outer ends, or of several bodies every place on the one that carries the wheel. */
function knuckleEnds({ links, bodies }: Axle): readonly KnuckleEnd[] {
  if (bodies === undefined)
    return links.map(({ outer, outerJoint }) => ({ at: outer.at, radius: eyeRadius(outerJoint) }));
  const { layout, points, places } = bodies;
  const end = (part: string, which: "from" | "to" | null, name: string): readonly KnuckleEnd[] => {
    const joint = places.find((place) => place.part === part && place.end === which)?.joint;
    const at = points[name]?.at;
    return joint && at ? [{ at, radius: eyeRadius(joint) }] : [];
  };
  const { on } = layout.wheel;
  return [
    ...layout.links.flatMap(({ name, from, to }) => [
      ...(from.on === on ? end(name, "from", from.at) : []),
      ...(to.on === on ? end(name, "to", to.at) : []),
    ]),
    ...layout.joints.flatMap((joint) => {
      if (joint.kind !== "slider") return joint.between.includes(on) ? end(joint.name, null, joint.at) : [];
      return joint.line.on === on ? end(joint.name, null, joint.line.from) : [];
    }),
  ];
}

/** The knuckle's arms from the hub to the joints above or below it, and its extra metal. */
export function knuckleParts(axle: Axle, side: Side): readonly CornerPart[] {
  const [wx, wy, wz] = axle.wheel.centre;
  const boss = onSide(side, [wx, wy - BOSS_INBOARD, wz]);
  const ends: readonly KnuckleEnd[] = [
    ...knuckleEnds(axle),
    ...(axle.strut === undefined ? [] : [{ at: axle.strut.axisPoint.at, radius: 0.034 }]),
    ...(axle.damper.seat.on === "knuckle" ? [{ at: axle.damper.seat.moving.at, radius: 0.024 }] : []),
  ];
  return (["upper", "lower"] as const).map((sheet): CornerPart => {
    const own = ends.filter(({ at: [, , z] }) => (sheet === "upper" ? z !== undefined && z > wz : (z ?? 0) <= wz));
    const eyes = own.map(({ at, radius }) => ({ at: onSide(side, at), radius }));
    const boss0 = sheet === "lower" ? [{ at: boss, radius: HUB_BOSS }] : [];
    return {
      name: "knuckle",
      sheet: "both",
      height: wz + (sheet === "upper" ? 0.12 : 0.01),
      lines: [],
      draw: (view, lookOf) => {
        const look = sheet === "upper" ? farLook : lookOf("knuckle");
        const extra = sheet === "lower" ? axle.knuckle : [];
        return [
          ...extra.map(
            (outline): Mark => ({
              kind: "path",
              d: polygon(outline.map(([x, y]) => view.spot(onSide(side, [x, y])))),
              stroke: strokeOf(look),
              fill: "paper",
            }),
          ),
          ...drawTube(
            view,
            { runs: eyes.map(({ at }) => [boss, at]), width: KNUCKLE_WIDTH, eyes: [...eyes, ...boss0] },
            look,
          ),
        ];
      },
    };
  });
}
