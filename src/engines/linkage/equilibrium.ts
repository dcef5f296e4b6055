import {
  add,
  type Factorisation,
  factorise,
  makeFactorisation,
  type SolveReport,
  solveFactorised,
  type Vector,
} from "#numeric";
import { buildCornerLinkage, type CornerLinkage } from "./corner-linkage.ts";
import { type CornerLoad, type ElasticCorner, mixLoads, NO_LOAD } from "./elastic-corner.ts";
import { type ElasticTerm, makeTermState, type TermState } from "./elastic-term.ts";
import { buildElasticTerms, shiftOf } from "./elastic-terms.ts";
import { advancePose, clonePose, designPose, orthonormalise, type Pose } from "./pose.ts";
import { addTerm } from "./term-stiffness.ts";
import { computeWheelWrench, contactWithChange } from "./wheel-forces.ts";

/** On which side of its dead band each member with play stands: -1 pushed, 0 in the gap, 1 pulled. */
export type Branch = readonly (-1 | 0 | 1)[];

export interface Balance {
  readonly pose: Pose;
  /** Force of each term, tension positive, N, in the order of the terms. */
  readonly forces: readonly number[];
  /** Measure of each term, metres. */
  readonly values: readonly number[];
  readonly wheelLoad: number;
  readonly branch: Branch;
  /** Sign of the determinant at the pose, which changes only where a branch turns back; 0 where it was not reached. */
  readonly sign: -1 | 0 | 1;
  readonly report: SolveReport;
  /** Where the walk from rest did not arrive: the share of its last leg (the height, then the load) that was carried. */
  readonly carried?: Carried;
  /** Moves that no member resists there, as where every loose member stands in its gap; absent: none. */
  readonly freeMoves?: number;
}

/** How far the branch that begins at rest goes on the way to an asked state. */
export interface Carried {
  readonly leg: "faults" | "height" | "load";
  /** 0 to 1, the last share at which a balance on the branch was found. */
  readonly share: number;
}

const LIMIT = 40;
/** Newton ends when a step moves nothing by more than this (m and rad): rounding of coordinates of some metres. */
const SETTLED = 2e-15;
export const SETTLED_PROMISED = 1e-11;
/** Walk of a height or a load is cut finer than this share of its first step before it is given up. */
const LEAST_SHARE = 2 ** -34;
/** A search that leaves its start by more strides than this finds nothing near it. */
export const REACH = 4;
const RISE_STEP = 0.01;
/** A balance that lies farther than this from the one before it (m and rad) may be another branch's: a finer step tells. */
const STRIDE = 0.03;
const STRIDE_TURN = 0.1;

/** Static balance of one corner with rubber in its joints; free lengths are those of the healthy corner. */
export class ElasticBalance {
  readonly linkage: CornerLinkage;
  readonly terms: readonly ElasticTerm[];
  /** Unstretched value of each term: the healthy one, shifted where a fault shifts it. */
  readonly free: readonly number[];
  readonly preload: readonly number[];
  readonly playTerms: readonly number[];
  /** Which terms are rigid: the force of each is an unknown. */
  readonly rigid: readonly number[];
  /** Place of each term among the rigid ones, and among those with play; -1 where it is none. */
  private readonly rigidSlot: Int32Array;
  private readonly playSlot: Int32Array;
  /** The terms' states of the last assembly, and its right-hand side. */
  private readonly states: readonly TermState[];
  readonly right: Float64Array;
  /** How far the faults have grown: 1, but for a walk that lets them grow from nothing. */
  private grown = 1;
  /** Whose stiffness the factorisation is; null while it is another's. */
  private factorised: { readonly balance: Balance; readonly load: CornerLoad } | null = null;
  readonly size: number;
  readonly factorisation: Factorisation;
  private readonly designContactHeight: number;

  constructor(readonly corner: ElasticCorner) {
    this.linkage = buildCornerLinkage(corner.geometry);
    this.terms = buildElasticTerms(corner);
    this.rigid = this.terms.flatMap((t, i) => (Number.isFinite(t.rate) ? [] : [i]));
    this.playTerms = this.terms.flatMap((t, i) => (t.play > 0 ? [i] : []));
    this.rigidSlot = Int32Array.from(this.terms, (_, i) => this.rigid.indexOf(i));
    this.playSlot = Int32Array.from(this.terms, (_, i) => this.playTerms.indexOf(i));
    this.states = this.terms.map(makeTermState);
    this.size = 6 + this.rigid.length + (corner.hold === "contact-height" ? 1 : 0);
    this.right = new Float64Array(this.size);
    this.factorisation = makeFactorisation(this.size);
    const start = designPose(1);
    this.designContactHeight = this.contactHeight(start);
    const states = this.terms.map((t) => t.at(start, 0));
    this.preload = this.solvePreload(states);
    this.free = this.terms.map((t, i) => {
      const f = this.preload[i] as number;
      const value = (states[i] as TermState).value;
      const healthy = Number.isFinite(t.healthyRate) ? value - f / t.healthyRate : value;
      return t.kind === "link" ? healthy + shiftOf(corner.faults, t.name) : healthy;
    });
  }

  /** Forces that carry the wheel load at design: six members, six equations; NaN where they cannot. */
  private solvePreload(states: readonly TermState[]): number[] {
    const carriers = this.terms.flatMap((t, i) => (t.carriesPreload ? [i] : []));
    const out = this.terms.map(() => 0);
    const f = makeFactorisation(6);
    const wheel = computeWheelWrench(this.linkage, designPose(1), NO_LOAD, this.corner.elasticity.wheelLoad);
    const b = Float64Array.from(wheel.wrench);
    carriers.forEach((term, j) => {
      for (let i = 0; i < 6; i++) f.lu[6 * i + j] = (states[term] as TermState).row[i] as number;
    });
    if (carriers.length !== 6 || !factorise(f) || f.pivotRatio < 1e-13) return out.map(() => Number.NaN);
    solveFactorised(f, b);
    carriers.forEach((term, j) => {
      out[term] = b[j] as number;
    });
    return out;
  }

  private contactHeight(pose: Pose): number {
    return (
      (this.linkage.geometry.wheel.centre[2] as number) +
      (pose.t[2] as number) +
      contactWithChange(this.linkage, pose).offset[2]
    );
  }

  /** Force of a member at a value of its measure, on its side of its play. */
  private forceOf(i: number, value: number, branch: Branch, multipliers: Float64Array): number {
    const t = this.terms[i] as ElasticTerm;
    const slot = this.playSlot[i] as number;
    const side = slot < 0 ? 1 : (branch[slot] as number);
    if (slot >= 0 && side === 0) return 0;
    const rigid = this.rigidSlot[i] as number;
    if (rigid >= 0) return multipliers[rigid] as number;
    return this.rateOf(t) * (value - (this.free[i] as number) - (side * t.play * this.grown) / 2);
  }

  /** Rate of a member with its faults as far as they have grown. */
  private rateOf({ rate, healthyRate }: ElasticTerm): number {
    return this.grown === 1 || !Number.isFinite(rate) ? rate : healthyRate * (rate / healthyRate) ** this.grown;
  }

  /** Assembles the Jacobian into the factorisation and the residual (right-hand side of a Newton step) into `right`. */
  assemble(
    pose: Pose,
    load: CornerLoad,
    wheelLoad: number,
    branch: Branch,
    multipliers: Float64Array,
    forces: number[],
    values: number[],
  ): void {
    const n = this.size;
    const a = this.factorisation.lu;
    const b = this.right;
    this.factorised = null;
    a.fill(0);
    b.fill(0);
    const wheel = computeWheelWrench(this.linkage, pose, load, wheelLoad);
    for (let i = 0; i < 6; i++) {
      b[i] = wheel.wrench[i] as number;
      for (let j = 0; j < 6; j++) a[i * n + j] = -(wheel.turning[6 * i + j] as number);
    }
    for (let k = 0; k < this.terms.length; k++) {
      const term = this.terms[k] as ElasticTerm;
      const state = term.at(pose, load.rack, this.states[k]);
      const force = this.forceOf(k, state.value, branch, multipliers);
      const rigid = this.rigidSlot[k] as number;
      const slot = this.playSlot[k] as number;
      const side = slot < 0 ? 0 : (branch[slot] as number);
      const inGap = slot >= 0 && side === 0;
      addTerm(a, n, b, state, force, rigid >= 0 || inGap ? 0 : this.rateOf(term));
      forces[k] = force;
      values[k] = state.value;
      if (rigid < 0) continue;
      if (inGap) {
        // Inside its gap a rigid member holds nothing: its force is nought.
        a[(6 + rigid) * n + 6 + rigid] = 1;
        b[6 + rigid] = -(multipliers[rigid] as number);
        continue;
      }
      for (let i = 0; i < 6; i++) {
        a[i * n + 6 + rigid] = state.row[i] as number;
        a[(6 + rigid) * n + i] = state.row[i] as number;
      }
      b[6 + rigid] = (this.free[k] as number) + (side * term.play * this.grown) / 2 - state.value;
    }
    if (this.corner.hold === "contact-height") {
      const { offset } = contactWithChange(this.linkage, pose);
      const row = [0, 0, 1, offset[1], -offset[0], 0];
      for (let i = 0; i < 6; i++) {
        a[i * n + n - 1] = -(row[i] as number);
        a[(n - 1) * n + i] = row[i] as number;
      }
      b[n - 1] = this.designContactHeight + load.contactRise - this.contactHeight(pose);
    }
  }

  /**
   * Newton from a start; the pose of the start is left alone. At end "converged" the factorisation is that state's.
   * With `reach` it ends as "infeasible" once it is that many strides away.
   */
  solveFrom(
    start: Pose,
    load: CornerLoad,
    wheelLoadStart: number,
    branch: Branch,
    reach = Number.POSITIVE_INFINITY,
  ): Balance {
    const n = this.size;
    const b = this.right;
    const pose = clonePose(start);
    const forces: number[] = [];
    const values: number[] = [];
    const multipliers = new Float64Array(Math.max(1, this.rigid.length));
    this.rigid.forEach((term, i) => {
      multipliers[i] = this.preload[term] as number;
    });
    let wheelLoad = wheelLoadStart;
    let last = Number.POSITIVE_INFINITY;
    for (let iteration = 0; ; iteration++) {
      this.assemble(pose, load, wheelLoad, branch, multipliers, forces, values);
      const done = (end: SolveReport["end"], residual: number): Balance => ({
        pose,
        forces,
        values,
        wheelLoad,
        branch,
        sign: end === "converged" ? this.factorisation.sign : 0,
        report: { end, iterations: iteration, residual },
      });
      if (!b.every(Number.isFinite)) return done("ill-posed", Number.POSITIVE_INFINITY);
      if (!factorise(this.factorisation)) return done("singular", last);
      solveFactorised(this.factorisation, b);
      let step = 0;
      for (let i = 0; i < 6; i++) step = Math.max(step, Math.abs(b[i] as number));
      if (step > 0.6) return done("ill-posed", step);
      const settledHere = step <= SETTLED || (step >= 0.5 * last && step <= SETTLED_PROMISED);
      if (!settledHere && iteration >= LIMIT) return done("iteration-limit", step);
      // The forces of rigid members and of a held height come with the last step too: they may change while nothing moves.
      advancePose(pose, b);
      for (let i = 0; i < this.rigid.length; i++) multipliers[i] = (multipliers[i] as number) + (b[6 + i] as number);
      if (this.corner.hold === "contact-height") wheelLoad += b[n - 1] as number;
      if (!isStride(start, pose, reach)) return done("infeasible", step);
      if (settledHere) {
        orthonormalise(pose);
        this.assemble(pose, load, wheelLoad, branch, multipliers, forces, values);
        const whole = factorise(this.factorisation);
        const settled = done("converged", step);
        if (whole) this.factorised = { balance: settled, load };
        return settled;
      }
      last = step;
    }
  }

  /**
   * Follows the unloaded corner to the asked height in steps of 10 mm, then loads it, on one branch of the play.
   * Returns the best iterate with a report that is not "converged" where the walk cannot be finished.
   */
  solve(load: CornerLoad, branch: Branch, start: Balance | null = null): Balance {
    let at = start ?? this.standUnloaded(branch);
    if (at.report.end !== "converged") return at;
    const rest: CornerLoad = { ...NO_LOAD, contactRise: load.contactRise, rack: load.rack };
    if (!start) {
      const moved = Math.max(Math.abs(load.contactRise), Math.abs(load.rack));
      at = this.walk(at, [NO_LOAD, rest], branch, Math.min(1, RISE_STEP / moved), "height");
      if (at.report.end !== "converged") return at;
    }
    return this.walk(at, [rest, load], branch, 1, "load");
  }

  /** The balance at rest that is connected with design: at once where it is near, else with the faults growing from nothing. */
  private standUnloaded(branch: Branch): Balance {
    const start = designPose(1);
    const stand = (): Balance => this.solveFrom(start, NO_LOAD, this.corner.elasticity.wheelLoad, branch);
    const direct = stand();
    if (direct.report.end === "converged" && isStride(start, direct.pose)) return direct;
    // A member in its gap holds nothing however small its play: there is nothing to grow from.
    if (branch.includes(0)) return direct;
    this.grown = 0;
    const sound = stand();
    const found =
      sound.report.end === "converged" ? this.walk(sound, [NO_LOAD, NO_LOAD], branch, 1 / 4, "faults") : direct;
    this.grown = 1;
    return found;
  }

  /** Whether one balance may be a step from another on the same branch: near it, and no turning point between them. */
  follows(from: Balance, to: Balance): boolean {
    return to.report.end === "converged" && to.sign * from.sign >= 0 && isStride(from.pose, to.pose);
  }

  /**
   * From one load to another in steps of a share of the way, halved where Newton does not settle (a soft corner swings
   * far) or settles where another branch may be, and doubled again after. Where no step is fine enough the branch ends:
   * "infeasible", with the share it was carried to.
   */
  private walk(
    from: Balance,
    [begin, target]: readonly [CornerLoad, CornerLoad],
    branch: Branch,
    firstStep: number,
    leg: Carried["leg"],
  ): Balance {
    let at = from;
    let share = 0;
    let step = firstStep;
    while (share < 1) {
      const next = Math.min(1, share + step);
      if (leg === "faults") this.grown = next;
      const trial = this.solveFrom(at.pose, mixLoads(begin, target, next), at.wheelLoad, branch);
      if (this.follows(at, trial)) {
        at = trial;
        share = next;
        step = Math.min(firstStep, 2 * step);
      } else {
        step /= 2;
        if (step < firstStep * LEAST_SHARE)
          return { ...trial, report: { ...trial.report, end: "infeasible" }, carried: { leg, share } };
      }
    }
    return at;
  }

  /** Brings the factorisation to a balance, so that rates at that state can be taken from it. */
  factoriseAt(balance: Balance, load: CornerLoad): boolean {
    if (this.factorised?.balance === balance && this.factorised.load === load) return true;
    this.assembleAt(balance, load);
    if (!factorise(this.factorisation)) return false;
    this.factorised = { balance, load };
    return true;
  }

  private assembleAt(balance: Balance, load: CornerLoad): void {
    const multipliers = Float64Array.from(this.rigid.map((i) => balance.forces[i] as number));
    this.assemble(balance.pose, load, balance.wheelLoad, balance.branch, multipliers, [], []);
  }

  /** Step (v, w) of the knuckle per unit of an outer wrench at a balance, from the factorisation there. */
  responseTo(wrench: readonly number[]): { v: Vector; w: Vector } {
    const b = this.fullResponseTo(wrench);
    const at = (i: number): number => b[i] as number;
    return { v: [at(0), at(1), at(2)], w: [at(3), at(4), at(5)] };
  }

  /** The same with what follows the step: changes of the rigid members' forces, then of the wheel load where it is not held. */
  fullResponseTo(wrench: readonly number[]): Float64Array {
    const b = new Float64Array(this.size);
    b.set(wrench.slice(0, 6));
    solveFactorised(this.factorisation, b);
    return b;
  }

  /** Jacobian rows at a balance: a copy, row-major, before factorisation. */
  stiffness(balance: Balance, load: CornerLoad): Float64Array {
    this.assembleAt(balance, load);
    return this.factorisation.lu.slice();
  }

  /** Contact patch at a pose, metres. */
  contactAt(pose: Pose): Vector {
    const { centre } = this.linkage.geometry.wheel;
    return add(
      add(centre, [pose.t[0] as number, pose.t[1] as number, pose.t[2] as number]),
      contactWithChange(this.linkage, pose).offset,
    );
  }
}

/** Whether two poses lie so near that one may be a step from the other, or that many steps. */
export function isStride(from: Pose, to: Pose, strides = 1): boolean {
  return (
    to.t.every((x, i) => Math.abs(x - (from.t[i] as number)) <= strides * STRIDE) &&
    to.r.every((x, i) => Math.abs(x - (from.r[i] as number)) <= strides * STRIDE_TURN)
  );
}
