import {
  add,
  type Factorisation,
  factorise,
  makeFactorisation,
  type SolveReport,
  solveFactorised,
  type Vector,
} from "#numeric";
import { type CornerLoad, type Hold, NO_LOAD } from "../elastic-corner.ts";
import { isStride, REACH } from "../equilibrium.ts";
import type { LayoutLinkage } from "../layout-linkage.ts";
import { advancePose, clonePose, designPose, orthonormalise, type Pose } from "../pose.ts";
import { computeAttitude, computeAttitudeRates, type WheelAttitude } from "../wheel-figures.ts";
import { computeWheelWrench, contactWithChange } from "../wheel-forces.ts";
import type { LayoutElasticity, LayoutFault, LayoutTerm } from "./layout-elasticity.ts";
import { buildLayoutTerms } from "./layout-terms.ts";
import { computeGive, findLooseGroups, type LooseGroup, type Side } from "./loose-group.ts";
import { placeElastic } from "./place-elastic.ts";
import type { Placed } from "./placed-measure.ts";

/** A balance of a layout under a load; forces in the order of the terms, N, tension positive. */
export interface LayoutState {
  readonly pose: Pose;
  readonly attitude: WheelAttitude;
  readonly forces: readonly number[];
  /** Where each loose group stands, in the order of the groups. */
  readonly sides: readonly Side[];
  readonly wheelLoad: number;
  readonly load: CornerLoad;
  /** Sign of the determinant at the pose, which changes only where a branch turns back. */
  readonly sign: -1 | 0 | 1;
}

export type LayoutAnswer = LayoutState | { readonly unsolved: SolveReport };

/** Newton ends when a step moves nothing by more than this, or stalls on rounding below the promise (m and rad). */
const SETTLED = 2e-15;
const SETTLED_PROMISED = 1e-11;
const LIMIT = 40;
/** Steps of the walk to a height, metres, and how finely it is cut before it is given up. */
const RISE_STEP = 0.01;
const LEAST_SHARE = 1 / 256;

/** Where a walk begins or goes on: the pose, the members' forces there, and what the wheel carries. */
type Start = Pick<LayoutState, "pose" | "forces" | "wheelLoad">;

/** Steps per newton (or N m) of one load at a state, and what follows for the wheel. */
export interface LayoutLoadRate {
  readonly toe: number;
  readonly camber: number;
  readonly caster: number;
  readonly centre: Vector;
  readonly contact: Vector;
}

/**
 * Static balance of a wheel suspension of any number of bodies with rubber between them: elastic members are measures with
 * an energy, rigid ones measures with an unknown force. The healthy corner stands at design under its wheel load.
 */
export class LayoutBalance {
  readonly terms: readonly LayoutTerm[];
  readonly preload: readonly number[];
  readonly free: readonly number[];
  /** Members with play, those of one part together. */
  readonly loose: readonly LooseGroup[];
  /** Terms whose force is an unknown of the balance: rigid ones and those with play. */
  readonly unknown: readonly number[];
  readonly factorisation: Factorisation;
  readonly size: number;
  /** Numbers a pose steps by: six a body. */
  readonly steps: number;
  private readonly right: Float64Array;
  /** The loose group of each term, and its place among the unknown forces; -1 where it has none. */
  private readonly groupOf: Int32Array;
  private readonly slotOf: Int32Array;
  /** How much of the play is there: 1, but while it grows from nothing. */
  private grown = 1;
  private readonly designContactHeight: number;

  constructor(
    readonly linkage: LayoutLinkage,
    readonly elasticity: LayoutElasticity,
    readonly hold: Hold,
    faults: readonly LayoutFault[],
  ) {
    const bodies = linkage.mechanism.origins.length;
    this.steps = 6 * bodies;
    this.terms = buildLayoutTerms(linkage, elasticity, faults);
    this.loose = findLooseGroups(linkage, this.terms, faults);
    this.groupOf = Int32Array.from(this.terms, (_, i) => this.loose.findIndex(({ terms }) => terms.includes(i)));
    this.unknown = this.terms.flatMap((t, i) => (Number.isFinite(t.rate) && this.groupOf[i] === -1 ? [] : [i]));
    this.slotOf = Int32Array.from(this.terms, (_, i) => this.unknown.indexOf(i));
    this.size = this.steps + this.unknown.length + (hold === "contact-height" ? 1 : 0);
    this.factorisation = makeFactorisation(this.size);
    this.right = new Float64Array(this.size);
    const start = designPose(bodies);
    this.designContactHeight = this.contactHeight(start);
    const design = this.place(start, 0);
    this.preload = this.solvePreload(start, design);
    this.free = this.terms.map((t, i) => {
      const { value } = design[i] as Placed;
      return Number.isFinite(t.healthyRate) ? value - (this.preload[i] as number) / t.healthyRate : value;
    });
  }

  /** False where the members cannot carry the wheel load at design. */
  get carries(): boolean {
    return this.preload.every(Number.isFinite);
  }

  /**
   * The balance under a load with every loose group on a given side, walked to from design; or how the search ended. Whether
   * the groups can stand so is not looked at.
   */
  follow(load: CornerLoad, sides: readonly Side[]): LayoutAnswer {
    const rest: CornerLoad = { ...NO_LOAD, contactRise: load.contactRise, rack: load.rack };
    const first = this.solveFrom(this.atDesign(), NO_LOAD, sides);
    if ("unsolved" in first) return first;
    const moved = Math.max(Math.abs(load.contactRise), Math.abs(load.rack));
    const risen = this.walk(first, NO_LOAD, rest, Math.min(1, RISE_STEP / moved));
    return "unsolved" in risen ? risen : this.walk(risen, rest, load, 1);
  }

  /** The same from a balance of a close load, which saves the walk; null where that leads to no step from it. */
  followFrom(near: LayoutState, load: CornerLoad): LayoutState | null {
    const trial = this.solveFrom(near, load, near.sides);
    return !("unsolved" in trial) && follows(near, trial) ? trial : null;
  }

  /** The same on given sides, by one step from a balance on others under the same load; null where it is none. */
  stepTo(near: LayoutState, load: CornerLoad, sides: readonly Side[]): LayoutState | null {
    const trial = this.solveFrom(near, load, sides, REACH);
    return !("unsolved" in trial) && isStride(near.pose, trial.pose) && trial.sign * near.sign >= 0 ? trial : null;
  }

  /** The same, reached by a play that grows from nothing under the whole load: a joint then knows which way it is pressed. */
  growPlay(load: CornerLoad, sides: readonly Side[]): LayoutAnswer {
    this.grown = 0;
    const tight = this.follow(load, sides);
    const grown =
      "unsolved" in tight
        ? tight
        : this.walk(tight, load, load, 1 / 4, (share) => {
            this.grown = share;
          });
    this.grown = 1;
    return grown;
  }

  /** How far each member is from where it is free, at a state; metres. */
  stretches({ pose, load }: Pick<LayoutState, "pose" | "load">): readonly number[] {
    return this.place(pose, load.rack).map(({ value }, i) => value - (this.free[i] as number));
  }

  private atDesign(): Start {
    return {
      pose: designPose(this.linkage.mechanism.origins.length),
      forces: this.preload,
      wheelLoad: this.elasticity.wheelLoad,
    };
  }

  /** Exact derivatives per newton (N m about z for "aligning") at a state; null where its stiffness is singular. */
  loadRates(state: LayoutState): Readonly<Record<"lateral" | "braking" | "drive" | "aligning", LayoutLoadRate>> | null {
    if (!this.factoriseAt(state)) return null;
    const { offset } = contactWithChange(this.linkage, state.pose);
    const [x, y, z] = offset;
    const rate = (wrench: readonly number[]): LayoutLoadRate => {
      const b = new Float64Array(this.size);
      b.set(wrench);
      solveFactorised(this.factorisation, b);
      const at = (i: number): number => b[i] as number;
      const screw = { v: [at(0), at(1), at(2)] as Vector, w: [at(3), at(4), at(5)] as Vector };
      const r = computeAttitudeRates(state.attitude, screw, this.linkage.wheel.loadedRadius);
      return { toe: r.toe, camber: r.camber, caster: -r.spin, centre: screw.v, contact: r.contact };
    };
    return {
      lateral: rate([0, 1, 0, -z, 0, x]),
      braking: rate([-1, 0, 0, 0, -z, y]),
      drive: rate([1, 0, 0, 0, 0, 0]),
      aligning: rate([0, 0, 0, 0, 0, 1]),
    };
  }

  /** Brings the factorisation to a state; false where the stiffness is singular there. */
  factoriseAt(state: LayoutState): boolean {
    this.assemble(state.pose, state.load, state.wheelLoad, this.multipliersOf(state.forces), state.sides);
    return factorise(this.factorisation);
  }

  /** The matrix of a state before it is factorised: a copy, row-major. */
  matrixAt(state: LayoutState): Float64Array {
    this.assemble(state.pose, state.load, state.wheelLoad, this.multipliersOf(state.forces), state.sides);
    return this.factorisation.lu.slice();
  }

  /** All measures at a pose. */
  place(pose: Pose, rack: number): readonly Placed[] {
    return this.terms.map((t) => placeElastic(this.linkage.mechanism, t.measure, pose, rack));
  }

  /** Forces that carry the wheel load at design, one member for each freedom; NaN where they cannot. */
  private solvePreload(start: Pose, design: readonly Placed[]): readonly number[] {
    const n = this.steps;
    const carriers = this.terms.flatMap((t, i) => (t.carriesPreload ? [i] : []));
    const out = this.terms.map(() => 0);
    const f = makeFactorisation(n);
    if (carriers.length !== n) return out.map(() => Number.NaN);
    carriers.forEach((term, j) => {
      const { row } = design[term] as Placed;
      for (let i = 0; i < n; i++) f.lu[n * i + j] = row[i] as number;
    });
    if (!factorise(f) || f.pivotRatio < 1e-13) return out.map(() => Number.NaN);
    const b = new Float64Array(n);
    b.set(computeWheelWrench(this.linkage, start, NO_LOAD, this.elasticity.wheelLoad).wrench);
    solveFactorised(f, b);
    carriers.forEach((term, j) => {
      out[term] = b[j] as number;
    });
    return out;
  }

  private contactHeight(pose: Pose): number {
    return this.linkage.wheel.centre[2] + (pose.t[2] as number) + contactWithChange(this.linkage, pose).offset[2];
  }

  private multipliersOf(forces: readonly number[]): Float64Array {
    return Float64Array.from(this.unknown, (i) => forces[i] as number);
  }

  /** Assembles Jacobian and residual at a pose; returns the members' forces. */
  private assemble(
    pose: Pose,
    load: CornerLoad,
    wheelLoad: number,
    multipliers: Float64Array,
    sides: readonly Side[],
  ): number[] {
    const { size, steps, right: b } = this;
    const a = this.factorisation.lu;
    a.fill(0);
    b.fill(0);
    const wheel = computeWheelWrench(this.linkage, pose, load, wheelLoad);
    for (let i = 0; i < 6; i++) {
      b[i] = wheel.wrench[i] as number;
      for (let j = 0; j < 6; j++) a[i * size + j] = -(wheel.turning[6 * i + j] as number);
    }
    const forces = this.place(pose, load.rack).map((placed, k) => {
      const { rate } = this.terms[k] as LayoutTerm;
      const slot = this.slotOf[k] as number;
      const off = placed.value - (this.free[k] as number);
      if (slot >= 0 && sides[this.groupOf[k] as number] === 0) {
        // Inside its gap a member holds nothing: its force is nought.
        a[(steps + slot) * size + steps + slot] = 1;
        b[steps + slot] = -(multipliers[slot] as number);
        return 0;
      }
      const force = slot < 0 ? rate * off : (multipliers[slot] as number);
      for (let j = 0; j < steps; j++) {
        if (!placed.touches(Math.floor(j / 6))) continue;
        const gj = placed.row[j] as number;
        b[j] = (b[j] as number) - force * gj;
        const turned = force === 0 ? null : placed.changeByStep(j).row;
        for (let i = 0; i < steps; i++) {
          const stiff = slot < 0 ? rate * gj * (placed.row[i] as number) : 0;
          a[i * size + j] = (a[i * size + j] as number) + stiff + (turned ? force * (turned[i] as number) : 0);
        }
        if (slot >= 0) {
          a[j * size + steps + slot] = gj;
          a[(steps + slot) * size + j] = gj;
        }
      }
      if (slot >= 0) b[steps + slot] = -off;
      return force;
    });
    this.addGives(multipliers, sides);
    if (this.hold === "contact-height") {
      const { offset } = contactWithChange(this.linkage, pose);
      [0, 0, 1, offset[1], -offset[0], 0].forEach((part, i) => {
        a[i * size + size - 1] = -part;
        a[(size - 1) * size + i] = part;
      });
      b[size - 1] = this.designContactHeight + load.contactRise - this.contactHeight(pose);
    }
    return forces;
  }

  /** What touching loose groups give under their forces, in the rows of those. */
  private addGives(multipliers: Float64Array, sides: readonly Side[]): void {
    const { size, steps, right: b } = this;
    const a = this.factorisation.lu;
    this.loose.forEach(({ terms, total }, g) => {
      const side = sides[g] as Side;
      if (side === 0) return;
      const slots = terms.map((t) => this.slotOf[t] as number);
      const give = computeGive(
        slots.map((s) => multipliers[s] as number),
        terms.map((t) => (this.terms[t] as LayoutTerm).rate),
        side,
        total * this.grown,
      );
      slots.forEach((s, i) => {
        // A joint that passes no force touches nowhere: no number, which ends the search.
        b[steps + s] = (b[steps + s] as number) + (give?.by[i] ?? Number.NaN);
        slots.forEach((other, j) => {
          const at = (steps + s) * size + steps + other;
          a[at] = (a[at] as number) - (give?.change[slots.length * i + j] ?? 0);
        });
      });
    });
  }

  /** A balance by Newton from where another one stands; or how that ended: "infeasible" once it is `reach` strides away. */
  solveFrom(start: Start, load: CornerLoad, sides: readonly Side[], reach = Number.POSITIVE_INFINITY): LayoutAnswer {
    const { size, steps, right: b } = this;
    const pose = clonePose(start.pose);
    const multipliers = this.multipliersOf(start.forces);
    let { wheelLoad } = start;
    let last = Number.POSITIVE_INFINITY;
    for (let iterations = 0; ; iterations++) {
      this.assemble(pose, load, wheelLoad, multipliers, sides);
      const unsolved = (end: SolveReport["end"], residual: number): LayoutAnswer => ({
        unsolved: { end, iterations, residual },
      });
      if (!b.every(Number.isFinite)) return unsolved("ill-posed", Number.POSITIVE_INFINITY);
      if (!factorise(this.factorisation)) return unsolved("singular", last);
      const { sign } = this.factorisation;
      solveFactorised(this.factorisation, b);
      const step = b.subarray(0, steps).reduce((most, x) => Math.max(most, Math.abs(x)), 0);
      if (step > 0.6) return unsolved("ill-posed", step);
      const settled = step <= SETTLED || (step >= 0.5 * last && step <= SETTLED_PROMISED);
      if (!settled && iterations >= LIMIT) return unsolved("iteration-limit", step);
      advancePose(pose, b);
      for (let i = 0; i < multipliers.length; i++)
        multipliers[i] = (multipliers[i] as number) + (b[steps + i] as number);
      if (this.hold === "contact-height") wheelLoad += b[size - 1] as number;
      if (!isStride(start.pose, pose, reach)) return unsolved("infeasible", step);
      if (settled) {
        orthonormalise(pose);
        const forces = this.assemble(pose, load, wheelLoad, multipliers, sides);
        return { pose, attitude: computeAttitude(this.linkage, pose), forces, sides, wheelLoad, load, sign };
      }
      last = step;
    }
  }

  /**
   * From one load to another in shares of the way, halved where Newton does not settle or settles where another branch may
   * be. Where no share is fine enough the branch ends: "infeasible".
   */
  private walk(
    from: LayoutState,
    begin: CornerLoad,
    target: CornerLoad,
    firstStep: number,
    grow: (share: number) => void = () => undefined,
  ): LayoutAnswer {
    let at = from;
    let share = 0;
    let step = firstStep;
    while (share < 1) {
      const next = Math.min(1, share + step);
      const mix = (key: keyof CornerLoad): number => begin[key] + next * (target[key] - begin[key]);
      const load: CornerLoad = {
        lateral: mix("lateral"),
        braking: mix("braking"),
        drive: mix("drive"),
        aligning: mix("aligning"),
        contactRise: mix("contactRise"),
        rack: mix("rack"),
      };
      grow(next);
      const trial = this.solveFrom(at, next === 1 ? target : load, from.sides);
      if (!("unsolved" in trial) && follows(at, trial)) {
        at = trial;
        share = next;
      } else {
        step /= 2;
        if (step >= firstStep * LEAST_SHARE) continue;
        return "unsolved" in trial ? trial : { unsolved: { end: "infeasible", iterations: 0, residual: 0 } };
      }
    }
    return at;
  }

  /** Contact patch at design, metres. */
  get designContact(): Vector {
    return add(this.linkage.wheel.centre, contactWithChange(this.linkage, designPose(1)).offset);
  }
}

/** Whether one balance may be a step from another on the same branch: near it, and no turning point between them. */
const follows = (from: LayoutState, to: LayoutState): boolean =>
  to.sign * from.sign >= 0 && isStride(from.pose, to.pose);
