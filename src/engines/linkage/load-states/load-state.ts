import {
  add,
  cross,
  dot,
  factorise,
  makeFactorisation,
  norm,
  scale,
  solveFactorised,
  subtract,
  unitVector,
  type Vector,
} from "#numeric";
import type { Kilograms, Metres, Newtons, NewtonsPerMetre } from "#quantity";
import type { CornerGeometry, LinkGeometry, SpringGeometry } from "../geometry.ts";
import type { Pose } from "../pose.ts";
import { computeSeatLength } from "../seat.ts";
import { TravelSweep } from "../solve-travel.ts";
import {
  type MovingPart,
  movingParts,
  type PartForce,
  partOfSeat,
  passedOn,
  placeOf,
  pointOnPart,
} from "./moving-part.ts";

/** A corner with what stands on it, left side. */
export interface LoadedCorner {
  readonly geometry: CornerGeometry;
  readonly springRate: NewtonsPerMetre;
  /** At the contact patch at ride height, unsprung weight included. */
  readonly wheelLoad: Newtons;
  readonly unsprungMass: Kilograms;
  /** Wheel-centre travel from ride height down to the stop, positive; the stop is in the damper. */
  readonly droop: Metres;
  /** In m/s2. */
  readonly gravity: number;
}

/** How the car is held. A support stands under a part at a share of the way from its inner to its outer joint. */
export type Support =
  | { readonly kind: "ride" }
  | { readonly kind: "hanging" }
  | { readonly kind: "under"; readonly part: string; readonly share: number; readonly raised: Metres };

/** Force in a joint: of an outer joint what its part does to the knuckle, of an inner one what the body does to the part. */
export interface JointLoad {
  readonly link: string;
  readonly end: "inner" | "outer";
  readonly force: Vector;
}

/** Forces of a corner held in one way; newtons, vehicle frame, left side. */
export interface LoadState {
  readonly support: Support;
  /** Wheel-centre travel from ride height, metres. */
  readonly travel: Metres;
  readonly pose: Pose;
  /** Push of the spring. */
  readonly spring: Newtons;
  /** Pull of the droop stop in the damper, 0 where it is not reached; null where there is no damper. */
  readonly stop: Newtons | null;
  /** Force of the support under a part, upward; 0 in the other states. */
  readonly under: Newtons;
  readonly wheelLoad: Newtons;
  /** Outer joints once per part, then inner joints of every link; mounts ("strut_top", "trailing_arm") as outer ones. */
  readonly joints: readonly JointLoad[];
  /** How the joints answer a unit force or moment of a hand on the wheel. */
  readonly answerTo: (force: Vector, moment: Vector) => readonly JointLoad[];
  /** Pull in one link for a unit force and moment of a hand, tension positive; null where there is no such link. */
  readonly pullIn: (link: string, force: Vector, moment: Vector) => Newtons | null;
  /** What carries the wheel, as force and moment on the knuckle for a unit of it; null at ride height (the spring does). */
  readonly carrierRow: readonly number[] | null;
}

type Found = { readonly state: LoadState } | { readonly foldAt: Metres } | { readonly unsolved: "cannot-carry" };

/**
 * Static forces of a rigid corner in one way of holding it. Joints, and what carries the wheel (spring, stop or support),
 * balance the weight of what moves with the wheel and, at ride height, the ground: six equations, six unknowns. Weight of
 * the links is left out; it is part of the unsprung mass, taken at the wheel centre.
 */
export function computeLoadState(corner: LoadedCorner, support: Support): Found {
  const { geometry } = corner;
  const sweep = new TravelSweep(geometry);
  const travel = support.kind === "ride" ? 0 : -corner.droop + (support.kind === "under" ? support.raised : 0);
  const position = sweep.solve({ travel, rack: 0 });
  if ("foldAt" in position) return { foldAt: position.foldAt };
  const design = sweep.solve({ travel: 0, rack: 0 });
  if ("foldAt" in design || !geometry.spring) return { unsolved: "cannot-carry" };
  const weight = corner.unsprungMass * corner.gravity;
  const parts = movingParts(geometry);

  const ride = new Balance(geometry, parts, design.pose);
  const atGround: Vector = [0, 0, corner.wheelLoad];
  const standing = ride.solve(
    [wrenchAt(geometry, design.pose, atGround, design.attitude.contact), ride.weight(weight)],
    ride.push(geometry.spring),
  );
  if (!standing) return { unsolved: "cannot-carry" };
  const springAtRide = standing.carrier;
  const build = (balance: Balance, loads: readonly PartForce[], carrier: readonly PartForce[], outer: Vector[]) => {
    const wrenches = outer.length > 0 ? [wrenchAt(geometry, balance.pose, atGround, outer[0] as Vector)] : [];
    const solved = balance.solve([...wrenches, balance.weight(weight), ...loads.map(balance.asWrench)], carrier);
    return solved && { solved, forces: [...loads, ...carrier.map((c) => scaled(c, solved.carrier))] };
  };
  const describe = (
    balance: Balance,
    built: ReturnType<typeof build>,
    carrier: readonly PartForce[],
    own: {
      readonly spring: number;
      readonly stop: number | null;
      readonly under: number;
      readonly wheelLoad: number;
    },
  ): Found => {
    if (!built) return { unsolved: "cannot-carry" };
    return {
      state: {
        support,
        travel,
        pose: balance.pose,
        ...own,
        joints: balance.joints(built.solved.multipliers, built.forces),
        carrierRow: support.kind === "ride" ? null : carrier.map(balance.asWrench).reduce(addRows),
        pullIn: (link, force, moment) => {
          const hand = balance.solve([[...force, ...moment]], carrier);
          return hand && balance.pullOf(link, hand.multipliers);
        },
        answerTo: (force, moment) => {
          const hand = balance.solve([[...force, ...moment]], carrier);
          return hand
            ? balance.joints(
                hand.multipliers,
                carrier.map((c) => scaled(c, hand.carrier)),
              )
            : [];
        },
      },
    };
  };

  const damper = geometry.damper;
  if (support.kind === "ride") {
    const carrier = ride.push(geometry.spring);
    const built = build(ride, [], carrier, [design.attitude.contact]);
    return describe(ride, built, carrier, {
      spring: springAtRide,
      stop: damper ? 0 : null,
      under: 0,
      wheelLoad: corner.wheelLoad,
    });
  }
  const balance = new Balance(geometry, parts, position.pose);
  const longer = (position.springLength ?? 0) - (design.springLength ?? 0);
  const spring = Math.max(0, springAtRide - corner.springRate * longer);
  const pushed = balance.push(geometry.spring).map((p) => scaled(p, spring));
  if (support.kind === "hanging") {
    if (!damper) return { unsolved: "cannot-carry" };
    const carrier = balance.push(damper).map((p) => scaled(p, -1));
    const built = build(balance, pushed, carrier, []);
    return describe(balance, built, carrier, { spring, stop: built?.solved.carrier ?? 0, under: 0, wheelLoad: 0 });
  }
  const part = parts.find(({ legs }) => legs.some(({ name }) => name === support.part));
  if (!part) return { unsolved: "cannot-carry" };
  const at = pointOnPart(geometry, part, position.pose, support.share);
  const carrier: readonly PartForce[] = [{ part: part.name, at, force: [0, 0, 1] }];
  const built = build(balance, pushed, carrier, []);
  return describe(balance, built, carrier, {
    spring,
    stop: damper ? 0 : null,
    under: built?.solved.carrier ?? 0,
    wheelLoad: 0,
  });
}

const addRows = (a: readonly number[], b: readonly number[]): readonly number[] =>
  a.map((x, i) => x + (b[i] as number));
const scaled = (f: PartForce, by: number): PartForce => ({ ...f, force: scale(f.force, by) });

/** Force and moment about the wheel centre of a force at a place. */
function wrenchAt(geometry: CornerGeometry, pose: Pose, force: Vector, at: Vector): readonly number[] {
  const centre = placeOf(geometry, pose, geometry.wheel.centre);
  return [...force, ...cross(subtract(at, centre), force)];
}

/** Balance of the knuckle at one pose: multipliers of the joints' measures, and one force that carries the wheel. */
class Balance {
  private readonly sweep: TravelSweep;
  private readonly rows: Float64Array;

  constructor(
    private readonly geometry: CornerGeometry,
    private readonly parts: readonly MovingPart[],
    readonly pose: Pose,
  ) {
    this.sweep = new TravelSweep(geometry);
    this.rows = this.sweep.solver.jacobian(pose, 0);
  }

  /** Weight at the wheel centre as a wrench. */
  weight(newtons: number): readonly number[] {
    return [0, 0, -newtons, 0, 0, 0];
  }

  /** Unit push of a spring or damper on the part its seat is on. */
  push(spring: SpringGeometry): readonly PartForce[] {
    const { seat } = computeSeatLength(this.geometry, spring, this.pose);
    const force = unitVector(subtract(seat, spring.body));
    return [{ part: partOfSeat(this.parts, spring), at: seat, force }];
  }

  /** What a force on a part does to the knuckle, as a wrench. */
  readonly asWrench = (f: PartForce): readonly number[] => {
    const part = this.parts.find(({ name }) => name === f.part);
    if (!part) return wrenchAt(this.geometry, this.pose, f.force, f.at);
    const outer = placeOf(this.geometry, this.pose, (part.legs[0] as LinkGeometry).outer);
    return wrenchAt(this.geometry, this.pose, passedOn(this.geometry, part, this.pose, f), outer);
  };

  /** Multipliers (tension of a link positive) and the size of the carrier that balance the wrenches; null where singular. */
  solve(
    wrenches: readonly (readonly number[])[],
    carrier: readonly PartForce[],
  ): { readonly multipliers: readonly number[]; readonly carrier: number } | null {
    const f = makeFactorisation(6);
    const b = new Float64Array(6);
    const carried = carrier.map(this.asWrench);
    for (let c = 0; c < 6; c++) {
      for (let i = 0; i < 5; i++) f.lu[6 * c + i] = this.rows[6 * i + c] as number;
      f.lu[6 * c + 5] = -carried.reduce((sum, w) => sum + (w[c] as number), 0);
      b[c] = wrenches.reduce((sum, w) => sum + (w[c] as number), 0);
    }
    if (!factorise(f) || f.pivotRatio < 1e-12) return null;
    solveFactorised(f, b);
    return { multipliers: [...b.subarray(0, 5)], carrier: b[5] as number };
  }

  /** Tension of a link among the multipliers; null where there is no such link. */
  pullOf(link: string, multipliers: readonly number[]): number | null {
    const i = this.sweep.linkage.mechanism.constraints.findIndex((m) => m.kind === "distance" && m.joint === link);
    return i < 0 ? null : (multipliers[i] as number);
  }

  /** Forces in every joint. */
  joints(multipliers: readonly number[], forces: readonly PartForce[]): readonly JointLoad[] {
    const { constraints } = this.sweep.linkage.mechanism;
    const pull = new Map<string, Vector>();
    constraints.forEach((m, i) => {
      const row = this.rows.subarray(6 * i, 6 * i + 3);
      // A multiplier times the gradient by the knuckle is what the knuckle does to the joint.
      const force = scale([row[0] as number, row[1] as number, row[2] as number], -(multipliers[i] as number));
      pull.set(m.joint, add(pull.get(m.joint) ?? [0, 0, 0], force));
    });
    const out: JointLoad[] = [];
    const inner: JointLoad[] = [];
    for (const part of this.parts) {
      const on = forces.filter((f) => f.part === part.name);
      const passed = on.reduce<Vector>((sum, f) => add(sum, passedOn(this.geometry, part, this.pose, f)), [0, 0, 0]);
      const legs = part.legs.map((leg) => pull.get(leg.name) ?? ([0, 0, 0] as Vector));
      const outer = add(legs.reduce(add, [0, 0, 0]), passed);
      out.push({ link: part.name, end: "outer", force: outer });
      inner.push(...this.innerLoads(part, outer, on));
    }
    const mounts = [...pull].flatMap(([joint, force]): JointLoad[] =>
      joint === "strut" || joint === "trailing_arm"
        ? [{ link: joint === "strut" ? "strut_top" : joint, end: "outer", force }]
        : [],
    );
    return [...out, ...inner, ...mounts];
  }

  /**
   * What the body does to a part at its inner joints. Of an arm both are found by force and moment; along the line of both
   * bushes only their sum is, which is shared equally.
   */
  private innerLoads(part: MovingPart, outer: Vector, on: readonly PartForce[]): JointLoad[] {
    const [first, second] = part.legs as readonly [LinkGeometry, LinkGeometry | undefined];
    const whole = on.reduce<Vector>((sum, f) => subtract(sum, f.force), outer);
    if (!second) return [{ link: first.name, end: "inner", force: whole }];
    const hinge = unitVector(subtract(second.inner, first.inner));
    const length = norm(subtract(second.inner, first.inner));
    const joint = placeOf(this.geometry, this.pose, first.outer);
    const moment = on.reduce<Vector>(
      (sum, f) => subtract(sum, cross(subtract(f.at, first.inner), f.force)),
      cross(subtract(joint, first.inner), outer),
    );
    const along = scale(hinge, dot(whole, hinge) / 2);
    const atSecond = add(scale(cross(moment, hinge), 1 / length), along);
    return [
      { link: first.name, end: "inner", force: subtract(whole, atSecond) },
      { link: second.name, end: "inner", force: atSecond },
    ];
  }
}
