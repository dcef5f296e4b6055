import type { DirectionIn, PointIn } from "#quantity";
import { assembleBodies } from "./axle-bodies.ts";
import { directionOfClocking } from "./clocking.ts";
import type {
  CornerAssembly,
  CornerDamper,
  CornerEnd,
  CornerJoint,
  CornerPoint,
  CornerSeat,
  CornerSpring,
  CornerStrut,
  CornerTrailingArm,
  CornerWheel,
} from "./corner.ts";
import type { Axle, AxleName, Corner, Damper, Family, HardPoint, Joint, Seat, Side, Spring } from "./family.ts";
import { directionOnSide, pointOnSide } from "./mirror.ts";
import { correlationAmong } from "./point-correlation.ts";
import { seatAtRideHeight } from "./seat.ts";

/** Standard acceleration of free fall in m/s2; exact by definition of 1901, from memory. */
export const STANDARD_GRAVITY = 9.80665;

/** Axle and side of a corner. */
export function axleAndSide(corner: Corner): { readonly axle: AxleName; readonly side: Side } {
  const [axle, side] = corner.split("-") as [AxleName, Side];
  return { axle, side };
}

/**
 * One corner of a family in the form the linkage computes with.
 * @param family a family that checkFamily finds nothing wrong with; link names that a seat uses exist
 * @param corner which wheel; the right side is the mirror image of the left
 * @returns a deeply frozen assembly, SI, vehicle frame
 */
export function assembleCorner(family: Family, corner: Corner): CornerAssembly {
  const { axle: axleName, side } = axleAndSide(corner);
  const axle = family[axleName];
  const points = new PointRegister(side);
  // The members of several bodies are drawn as links; what is computed with stands in `bodies`.
  const links = (axle.bodies ? [] : axle.links).map((link) => ({
    name: link.name,
    label: link.label,
    inner: points.end(`${link.name}.inner`, link.inner),
    outer: points.end(`${link.name}.outer`, link.outer),
    steered: link.steered,
    innerJoint: cornerJoint(link.innerJoint, side),
    outerJoint: cornerJoint(link.outerJoint, side),
    memberRate: link.memberRate ?? null,
    arm: link.arm ?? null,
  }));
  const strut: CornerStrut | null = axle.strut
    ? {
        top: points.end("strut.top", axle.strut.top),
        axisPoint: points.end("strut.axis-point", axle.strut.axisPoint),
        topMount: cornerJoint(axle.strut.topMount, side, strutLine(axle.strut)),
      }
    : null;
  const trailingArm: CornerTrailingArm | null = axle.trailingArm
    ? {
        bush: points.end("trailing-arm.bush", axle.trailingArm.bush),
        freeAxis: axle.trailingArm.freeAxis ? unit(directionOnSide(axle.trailingArm.freeAxis, side)) : null,
        bushJoint: cornerJoint(axle.trailingArm.bushJoint, side),
      }
    : null;
  for (const [name, point] of Object.entries(axle.bodies?.points ?? {})) points.end(name, point);
  const axleShare = axleName === "front" ? family.frontWeightShare : 1 - family.frontWeightShare;
  return deepFreeze({
    corner,
    axle: axleName,
    side,
    layout: axle.layout,
    rung: axle.rung,
    assumed: [...(family.assumed ?? [])],
    wheel: cornerWheel(axle, side),
    links,
    strut,
    trailingArm,
    bodies: axle.bodies ? assembleBodies(axle.bodies, (joint) => cornerJoint(joint, "left")) : null,
    spring: cornerSpring(axle, axle.spring, side),
    damper: cornerDamper(axle, axle.damper, side),
    points: points.all(),
    correlation: axle.correlation
      ? correlationAmong(
          axle.correlation,
          points.all().map(({ name }) => name),
          side === "right",
        )
      : null,
    wheelLoad: (family.kerbMass * axleShare * STANDARD_GRAVITY) / 2,
    unsprungMass: axle.unsprungMass,
    bumpStop: axle.bumpStop,
    droopStop: axle.droopStop,
    rackTravel: axle.rackTravel ?? null,
    car: {
      wheelbase: family.wheelbase,
      cgHeight: family.cgHeight,
      brakeShare: axle.brakeShare,
      driveShare: axle.driveShare,
    },
  });
}

/** Gives every distinct place one number; the larger standard deviation counts where two entries of one place differ. */
class PointRegister {
  readonly #points: CornerPoint[] = [];
  readonly #side: Side;

  constructor(side: Side) {
    this.#side = side;
  }

  end(name: string, hardPoint: HardPoint): CornerEnd {
    const at = pointOnSide(hardPoint.at, this.#side);
    const found = this.#points.findIndex((known) => samePlace(known.at, at));
    if (found < 0) {
      this.#points.push({ name, at, sd: [...hardPoint.sd], origin: hardPoint.origin });
      return { at, point: this.#points.length - 1 };
    }
    const known = this.#points[found] as CornerPoint;
    const [sx, sy, sz] = known.sd;
    const [tx, ty, tz] = hardPoint.sd;
    const origin = Math.hypot(tx, ty, tz) > Math.hypot(sx, sy, sz) ? hardPoint.origin : known.origin;
    this.#points[found] = { ...known, sd: [Math.max(sx, tx), Math.max(sy, ty), Math.max(sz, tz)], origin };
    return { at, point: found };
  }

  all(): readonly CornerPoint[] {
    return this.#points;
  }
}

function samePlace(a: PointIn<"vehicle">, b: PointIn<"vehicle">): boolean {
  return a[0] === b[0] && a[1] === b[1] && a[2] === b[2];
}

function cornerWheel(axle: Axle, side: Side): CornerWheel {
  const { centre, camber, toe, loadedRadius } = axle.wheel;
  const outboard: DirectionIn<"vehicle"> = [
    Math.sin(toe) * Math.cos(camber),
    Math.cos(toe) * Math.cos(camber),
    -Math.sin(camber),
  ];
  return { centre: pointOnSide(centre, side), camber, toe, spinAxis: directionOnSide(outboard, side), loadedRadius };
}

/** From its axis point up to its top: the axis of its top mount. */
function strutLine({ top, axisPoint }: NonNullable<Axle["strut"]>): DirectionIn<"vehicle"> {
  return [top.at[0] - axisPoint.at[0], top.at[1] - axisPoint.at[1], top.at[2] - axisPoint.at[2]];
}

/** `line`: the axis of a mount, whatever its sheet says. */
function cornerJoint(joint: Joint, side: Side, line?: DirectionIn<"vehicle">): CornerJoint {
  const axis = line ?? joint.axis;
  const { voided } = joint;
  return {
    kind: joint.kind,
    radial: joint.radial ?? null,
    axial: joint.axial ?? null,
    axis: joint.axis ? unit(directionOnSide(joint.axis, side)) : null,
    voided:
      voided && axis
        ? { rate: voided.rate, through: directionOnSide(directionOfClocking(axis, voided.clocking), side) }
        : null,
    conical: joint.conical ?? null,
    torsional: joint.torsional ?? null,
    hardness: joint.hardness ?? null,
    rateSdShare: joint.rateSdShare,
    rateOrigin: joint.rateOrigin,
    tornShare: copiedTornShare(joint),
    fluid: joint.fluid ? { ...joint.fluid } : null,
  };
}

function copiedTornShare(joint: Joint): CornerJoint["tornShare"] {
  const shares = joint.tornShare ?? {};
  return {
    ...(shares[1] && { 1: { ...shares[1] } }),
    ...(shares[2] && { 2: { ...shares[2] } }),
    ...(shares[3] && { 3: { ...shares[3] } }),
  };
}

function cornerSeat(axle: Axle, seat: Seat, side: Side): CornerSeat {
  switch (seat.on) {
    case "knuckle":
      return { on: "knuckle", moving: pointOnSide(seat.moving.at, side) };
    case "link":
      return { on: "link", link: linkIndex(axle, seat.link), fraction: seat.fraction };
    case "arm":
      return {
        on: "arm",
        links: [linkIndex(axle, seat.links[0]), linkIndex(axle, seat.links[1])],
        moving: pointOnSide(seat.moving.at, side),
      };
    // What carries a seat of several bodies stands in `bodies`; here only its place counts.
    case "body":
      return { on: "knuckle", moving: pointOnSide(seat.moving.at, side) };
  }
}

function cornerSpring(axle: Axle, spring: Spring, side: Side): CornerSpring {
  return {
    body: pointOnSide(spring.body.at, side),
    seat: cornerSeat(axle, spring.seat, side),
    seatAt: pointOnSide(seatAtRideHeight(axle.links, spring.seat), side),
    rate: spring.rate,
  };
}

function cornerDamper(axle: Axle, damper: Damper, side: Side): CornerDamper {
  return {
    body: pointOnSide(damper.body.at, side),
    seat: cornerSeat(axle, damper.seat, side),
    seatAt: pointOnSide(seatAtRideHeight(axle.links, damper.seat), side),
  };
}

function linkIndex(axle: Axle, name: string): number {
  const index = axle.links.findIndex((link) => link.name === name);
  if (index < 0) throw new Error(`no link named ${name} on the ${axle.name} axle: the family was not checked`);
  return index;
}

function unit(direction: DirectionIn<"vehicle">): DirectionIn<"vehicle"> {
  const length = Math.hypot(...direction);
  return [direction[0] / length, direction[1] / length, direction[2] / length];
}

function deepFreeze<T>(value: T): T {
  if (typeof value === "object" && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const inner of Object.values(value)) deepFreeze(inner);
  }
  return value;
}
