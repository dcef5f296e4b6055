import type { Axle, Joint, Link, Position, Side } from "#vehicle";
import { seatAtRideHeight } from "#vehicle";
import { polygon, polyline } from "../path.ts";
import { between, type CarPoint, onSide, type Projection } from "../projection.ts";
import type { Mark } from "../scene.ts";
import { drawBrake } from "../symbols/brake.ts";
import { drawBallJoint, drawBush } from "../symbols/bush.ts";
import { drawCoilFromBelow } from "../symbols/coil.ts";
import { drawDamper } from "../symbols/damper.ts";
import { farLook, type Look, strokeOf } from "../symbols/look.ts";
import { drawTube, type Eye } from "../symbols/tube.ts";
import { drawWheel } from "../symbols/wheel.ts";
import type { PartName } from "./part-of.ts";

/** One drawn part of a corner. */
export interface CornerPart {
  readonly name: PartName;
  readonly sheet: "lower" | "upper" | "both";
  /** Metres above ground: what lies lower is nearer to the eye and drawn later. */
  readonly height: number;
  /** Centre lines, for the sheet on which the part is only hinted at. */
  readonly lines: readonly (readonly CarPoint[])[];
  readonly draw: (view: Projection, look: (part: PartName) => Look) => readonly Mark[];
}

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

const meanHeight = (points: readonly CarPoint[]): number =>
  points.reduce((sum, [, , z = 0]) => sum + z, 0) / Math.max(points.length, 1);

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

function linkParts(axle: Axle, side: Side): readonly CornerPart[] {
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

function trailingArmParts(axle: Axle, side: Side): readonly CornerPart[] {
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

/** The knuckle's arms from the hub to the joints above or below it, and its extra metal. */
function knuckleParts(axle: Axle, side: Side): readonly CornerPart[] {
  const [wx, wy, wz] = axle.wheel.centre;
  const boss = onSide(side, [wx, wy - BOSS_INBOARD, wz]);
  const ends: readonly { readonly at: CarPoint; readonly radius: number }[] = [
    ...axle.links.map((link) => ({ at: link.outer.at, radius: eyeRadius(link.outerJoint) })),
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

function springParts(axle: Axle, side: Side): readonly CornerPart[] {
  const { spring, damper } = axle;
  const seat = onSide(side, seatAtRideHeight(axle.links, spring.seat));
  const top = onSide(side, spring.body.at);
  const foot = onSide(side, axle.strut?.axisPoint.at ?? seatAtRideHeight(axle.links, damper.seat));
  const damperTop = onSide(side, axle.strut?.top.at ?? damper.body.at);
  const onLink = spring.seat.on === "link" ? spring.seat.link : null;
  const carrier = axle.links.find((link) => link.name === onLink);
  return [
    {
      name: "spring",
      sheet: "lower",
      height:
        carrier === undefined ? meanHeight([seat, top]) : meanHeight([carrier.inner.at, carrier.outer.at]) - 0.001,
      lines: [],
      draw: (view, lookOf) =>
        drawCoilFromBelow(
          view,
          { seat, top, diameter: spring.coilDiameter, wire: spring.wireDiameter },
          lookOf("spring"),
        ),
    },
    {
      name: "damper",
      sheet: "upper",
      height: meanHeight([foot, damperTop]),
      lines: [[foot, damperTop]],
      draw: (view, lookOf) =>
        drawDamper(
          view,
          { foot, top: damperTop, tubeDiameter: damper.tubeDiameter, eye: axle.strut === undefined ? 0.027 : 0 },
          lookOf("damper"),
        ),
    },
  ];
}

function wheelPart(axle: Axle, side: Side): CornerPart {
  const { wheel, brake } = axle;
  const centre = onSide(side, wheel.centre);
  return {
    name: "tyre",
    sheet: "both",
    height: wheel.centre[2],
    lines: [],
    draw: (view, lookOf) => [
      ...drawWheel(
        view,
        {
          centre,
          side,
          tyreRadius: wheel.freeRadius,
          tyreWidth: wheel.tyreWidth,
          rimRadius: wheel.rimDiameter / 2,
          rimWidth: wheel.rimWidth,
          offset: wheel.rimOffset,
        },
        lookOf("tyre"),
      ),
      ...drawBrake(
        view,
        {
          centre,
          side,
          discRadius: brake.discDiameter / 2,
          discThickness: brake.discThickness,
          vented: brake.vented,
          flange: wheel.rimOffset,
          ringOuter: wheel.rimOffset - brake.hatDepth,
          padThickness: brake.padThickness,
          caliperAt: brake.caliperAt,
        },
        { disc: lookOf("disc"), pads: lookOf("pads"), caliper: lookOf("caliper"), hub: lookOf("hub") },
      ),
    ],
  };
}

/** A run of points from the middle of the car outward, begun no nearer to it than `from`. */
function clipRun(run: readonly CarPoint[], from: number): readonly CarPoint[] {
  const first = run.findIndex(([, y]) => y >= from);
  const [before, after] = [run[first - 1], run[first]];
  if (before === undefined || after === undefined) return run;
  const share = (from - before[1]) / (after[1] - before[1] || 1);
  return [between(before, after, share), ...run.slice(first)];
}

function barParts(axle: Axle, side: Side, from: number): readonly CornerPart[] {
  const { bar } = axle;
  if (bar === undefined) return [];
  const path = clipRun(bar.path, from).map((p) => onSide(side, p));
  const bodyBush = onSide(side, bar.bodyBush);
  const ends = [onSide(side, bar.linkUpper), onSide(side, bar.linkLower)];
  return [
    {
      name: "bar",
      sheet: "lower",
      height: meanHeight(path),
      lines: [path],
      draw: (view, lookOf) => {
        const look = lookOf("bar");
        const end = path.at(-1);
        return [
          ...drawTube(
            view,
            { runs: [path], width: bar.diameter, eyes: end === undefined ? [] : [{ at: end, radius: 0.018 }] },
            look,
          ),
          ...drawBush(
            view,
            { at: bodyBush, axis: [0, 1, 0], length: 0.042, diameter: bar.diameter + 0.022 },
            { ...look, unseen: false },
          ),
        ];
      },
    },
    {
      name: "bar-link",
      sheet: "lower",
      height: meanHeight(path) - 0.002,
      lines: [],
      draw: (view, lookOf) =>
        drawTube(
          view,
          { runs: [ends], width: 0.012, eyes: ends.map((at) => ({ at, radius: 0.016 })) },
          lookOf("bar-link"),
        ),
    },
  ];
}

function driveParts(axle: Axle, side: Side, from: number): readonly CornerPart[] {
  if (!axle.driven) return [];
  const [wx, wy, wz] = axle.wheel.centre;
  const at = (y: number) => onSide(side, [wx, y, wz]);
  const start = Math.max(0.128, from);
  const eyes = [
    { at: at(start + 0.05), radius: 0.04 },
    { at: at(wy - 0.14), radius: 0.038 },
  ];
  return [
    {
      name: "drive-shaft",
      sheet: "upper",
      height: wz + 0.05,
      lines: [[at(start + 0.05), at(wy - 0.14)]],
      draw: (view, lookOf) =>
        drawTube(
          view,
          { runs: [[at(start), at(wy - 0.08)]], width: 0.026, eyes },
          { ...lookOf("drive-shaft"), colour: "ink2" },
        ),
    },
  ];
}

/** Hose and level sensor stand where their positions lie. */
function smallParts(axle: Axle, side: Side, positions: readonly Position[]): readonly CornerPart[] {
  const own = positions.filter(
    (position) => position.axle === axle.name && position.side === side && position.at !== null,
  );
  const inward = side === "left" ? -1 : 1;
  const toward = axle.brake.caliperAt === "front" ? 1 : -1;
  return own.flatMap(({ kind, at }): CornerPart[] => {
    if (at === null) return [];
    const [x, y, z] = at;
    if (kind === "hose") {
      const run = [
        [x + toward * 0.02, y - inward * 0.06, z],
        [x + toward * 0.012, y - inward * 0.02, z],
        [x, y + inward * 0.02, z],
        [x + toward * 0.03, y + inward * 0.08, z],
      ] as const;
      return [
        {
          name: "hose",
          sheet: "upper",
          height: z,
          lines: [],
          draw: (view, lookOf) => [
            {
              kind: "path",
              d: polyline(run.map((p) => view.spot(p))),
              stroke: { ...strokeOf(lookOf("hose")), cap: "round" },
            },
          ],
        },
      ];
    }
    if (kind !== "level-sensor") return [];
    const box = [
      [x + 0.018, y - 0.02],
      [x + 0.018, y + 0.02],
      [x - 0.018, y + 0.02],
      [x - 0.018, y - 0.02],
    ] as const;
    return [
      {
        name: "level-sensor",
        sheet: "upper",
        height: z - 0.02,
        lines: [],
        draw: (view, lookOf) => [
          {
            kind: "path",
            d: polygon(box.map((p) => view.spot(p))),
            stroke: strokeOf(lookOf("level-sensor")),
            fill: "paper",
          },
        ],
      },
    ];
  });
}

/**
 * All drawn parts of one corner, what lies highest (farthest from the eye) first.
 * @param from parts that reach to the middle of the car begin this far from it, metres
 */
export function cornerParts(axle: Axle, side: Side, positions: readonly Position[], from = 0): readonly CornerPart[] {
  return [
    ...linkParts(axle, side),
    ...trailingArmParts(axle, side),
    ...knuckleParts(axle, side),
    ...springParts(axle, side),
    wheelPart(axle, side),
    ...barParts(axle, side, from),
    ...driveParts(axle, side, from),
    ...smallParts(axle, side, positions),
  ].toSorted((a, b) => b.height - a.height);
}
