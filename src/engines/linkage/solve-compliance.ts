import { cross, type Vector } from "#numeric";
import { type CornerLoad, type ElasticCorner, NO_LOAD } from "./elastic-corner.ts";
import { type Balance, type Branch, type Carried, ElasticBalance } from "./equilibrium.ts";
import { findFreeMoves } from "./free-moves.ts";
import { allBranches, findPlayBalances } from "./play-branches.ts";
import type { Pose } from "./pose.ts";
import { computeAttitude, computeAttitudeRates, computeDesignContact, type WheelAttitude } from "./wheel-figures.ts";
import { contactWithChange } from "./wheel-forces.ts";

/** One state of balance of a loaded corner; SI, left side. */
export interface ElasticState {
  readonly pose: Pose;
  readonly attitude: WheelAttitude;
  readonly springForce: number;
  readonly wheelLoad: number;
  /** By link name, N, tension positive. */
  readonly linkForces: Readonly<Record<string, number>>;
  /** By mount name ("strut_top", "trailing_arm"): force on the knuckle. */
  readonly mountForces: Readonly<Record<string, Vector>>;
  readonly branch: Branch;
  readonly stable: boolean;
  readonly balance: Balance;
}

/** All balances of one load: first the one on the side of the healthy preload; or how the search ended. */
export type ElasticAnswer =
  | { readonly state: ElasticState; readonly others: readonly ElasticState[] }
  | {
      readonly unsolved: Balance["report"];
      /** How far the branch from rest goes on the way to the load, where that is what ends. */
      readonly carried?: Carried;
      /** Moves that nothing resists: balances lie side by side without end, and none of them is the answer. */
      readonly freeMoves?: number;
    };

/** Derivatives by one load at a state. */
export interface LoadRate {
  readonly toe: number;
  readonly camber: number;
  readonly caster: number;
  readonly centre: Vector;
  readonly contact: Vector;
}

export interface LoadRates {
  /** Per newton; braking rearward. */
  readonly lateral: LoadRate;
  readonly braking: LoadRate;
  readonly drive: LoadRate;
  /** Per N m about z. */
  readonly aligning: LoadRate;
}

/** Balance of a corner with rubber, faults included; made once per corner and asked for many loads. */
export class ComplianceSolver {
  readonly balance: ElasticBalance;

  constructor(readonly corner: ElasticCorner) {
    this.balance = new ElasticBalance(corner);
  }

  /** False where the members cannot carry the wheel load at design (singular); nothing can be answered then. */
  get carries(): boolean {
    return this.balance.preload.every(Number.isFinite);
  }

  /** Contact patch at design, metres. */
  get designContact(): Vector {
    return computeDesignContact(this.balance.linkage);
  }

  /**
   * All balances under a load. Without play there is one; with play every side of every dead band is looked at. `near`, a balance of a close load, saves the walk from design.
   */
  solve(load: CornerLoad, near: ElasticState | null = null): ElasticAnswer {
    const plays = this.balance.playTerms;
    if (plays.length === 0) {
      const close = near ? this.balance.solveFrom(near.pose, load, near.wheelLoad, []) : null;
      const only = near && close && this.balance.follows(near.balance, close) ? close : this.balance.solve(load, []);
      return only.report.end === "converged"
        ? { state: this.describe(only, load), others: [] }
        : { unsolved: only.report, ...(only.carried ? { carried: only.carried } : {}) };
    }
    const { found, continuum, report, carried } = findPlayBalances(this.balance, load);
    if (continuum) return { unsolved: report, ...(continuum.freeMoves ? { freeMoves: continuum.freeMoves } : {}) };
    const [state, ...others] = found.map((balance) => this.describe(balance, load));
    return state ? { state, others } : { unsolved: report, ...(carried ? { carried } : {}) };
  }

  /**
   * Balances with every loose member held on one side of its dead band, pulled or pushed, as if it could not leave it:
   * what the corner does lies between them where it is not known which one holds. Empty where none is found.
   */
  solveSidesOfPlay(load: CornerLoad): readonly ElasticState[] {
    return allBranches(this.balance.playTerms.length)
      .filter((branch) => !branch.includes(0))
      .flatMap((branch) => {
        const balance = this.balance.solve(load, branch);
        return balance.report.end === "converged" ? [this.describe(balance, load)] : [];
      });
  }

  private describe(balance: Balance, load: CornerLoad): ElasticState {
    const { terms, linkage } = this.balance;
    const linkForces: Record<string, number> = {};
    const mountForces: Record<string, Vector> = {};
    let springForce = 0;
    terms.forEach((term, i) => {
      const force = balance.forces[i] as number;
      if (term.kind === "spring") springForce = -force;
      else if (term.kind === "mount") {
        const row = term.at(balance.pose, load.rack).row;
        const sum = mountForces[term.name] ?? [0, 0, 0];
        mountForces[term.name] = [
          sum[0] - force * (row[0] as number),
          sum[1] - force * (row[1] as number),
          sum[2] - force * (row[2] as number),
        ];
      } else if (term.kind === "link") linkForces[term.name] = force;
    });
    let stable: boolean | null = null;
    const isStable = (): boolean => this.isStable(balance, load);
    return {
      pose: balance.pose,
      attitude: computeAttitude(linkage, balance.pose),
      springForce,
      wheelLoad: balance.wheelLoad,
      linkForces,
      mountForces,
      branch: balance.branch,
      // Asked for by few, and as dear as a step of the balance.
      get stable() {
        stable ??= isStable();
        return stable;
      },
      balance,
    };
  }

  /** Whether the stiffness on the moves left free by rigid members and the held height is positive definite. */
  private isStable(balance: Balance, load: CornerLoad): boolean {
    const n = this.balance.size;
    const a = this.balance.stiffness(balance, load);
    const rigidRows: number[][] = [];
    for (let i = 6; i < n; i++) rigidRows.push(Array.from({ length: 6 }, (_, j) => a[i * n + j] as number));
    const free = findFreeMoves(rigidRows, 6);
    const k = free.map((p) =>
      free.map((q) => {
        let s = 0;
        for (let i = 0; i < 6; i++)
          for (let j = 0; j < 6; j++)
            s += (p[i] as number) * 0.5 * ((a[i * n + j] as number) + (a[j * n + i] as number)) * (q[j] as number);
        return s;
      }),
    );
    return isPositiveDefinite(k);
  }

  /** Exact derivatives by the loads at the state under the wheel load alone (the faulty one where there are faults). */
  solveLoadRates(): LoadRates | null {
    const answer = this.solve(NO_LOAD);
    if (!("state" in answer)) return null;
    const { state } = answer;
    if (!this.balance.factoriseAt(state.balance, NO_LOAD)) return null;
    const { offset } = contactWithChange(this.balance.linkage, state.pose);
    const radius = this.corner.geometry.wheel.loadedRadius;
    const rate = (force: Vector, at: Vector | null, moment: Vector): LoadRate => {
      const m = at ? cross(at, force) : moment;
      const screw = this.balance.responseTo([...force, ...m]);
      const r = computeAttitudeRates(state.attitude, screw, radius);
      return { toe: r.toe, camber: r.camber, caster: -r.spin, centre: screw.v, contact: r.contact };
    };
    return {
      lateral: rate([0, 1, 0], offset, [0, 0, 0]),
      braking: rate([-1, 0, 0], offset, [0, 0, 0]),
      drive: rate([1, 0, 0], null, [0, 0, 0]),
      aligning: rate([0, 0, 0], null, [0, 0, 1]),
    };
  }
}

/** Cholesky on a small symmetric matrix: true where every pivot is positive. */
function isPositiveDefinite(k: readonly (readonly number[])[]): boolean {
  const n = k.length;
  const l: number[][] = k.map((row) => [...row]);
  for (let j = 0; j < n; j++) {
    let d = l[j]?.[j] as number;
    for (let m = 0; m < j; m++) d -= (l[j]?.[m] as number) ** 2;
    if (!(d > 0)) return false;
    const root = Math.sqrt(d);
    (l[j] as number[])[j] = root;
    for (let i = j + 1; i < n; i++) {
      let s = l[i]?.[j] as number;
      for (let m = 0; m < j; m++) s -= (l[i]?.[m] as number) * (l[j]?.[m] as number);
      (l[i] as number[])[j] = s / root;
    }
  }
  return true;
}
