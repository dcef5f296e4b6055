import type { SolveReport } from "#numeric";
import type { CornerLoad } from "./elastic-corner.ts";
import { type Balance, type Branch, type ElasticBalance, isStride, REACH } from "./equilibrium.ts";
import { findFreeBalance } from "./free-balance.ts";
import { clonePose, orthonormalise } from "./pose.ts";

/** What the search over all sides of all gaps found. */
export interface PlayBalances {
  /** Every balance, the one on the side of the healthy preload first. */
  readonly found: readonly Balance[];
  /** A balance that is one of endlessly many, side by side: where loose members all hold nothing; else null. */
  readonly continuum: Balance | null;
  /** How the search ended where nothing was found. */
  readonly report: SolveReport;
  readonly carried?: Balance["carried"];
}

/** Two balances nearer than this (m and rad) are one, found from two sides of the end of a gap. */
const SAME = 1e-9;
/** Least over largest pivot of a stiffness that may leave a move free: looked at closely then. */
const NEARLY_FREE = 1e-9;
/** Strides between a balance and the start that leads to another side of the gaps. */
const NEAR = 2;

/**
 * All balances of a corner with play under a load. Sides without a gap are walked to from rest; a member in its gap moves
 * by no more than the gap, so its balance, where there is one, lies a short Newton away from those. The signs of the
 * determinants of all balances must sum to one, as they do without play (play grown from nothing brings and takes
 * balances in pairs of either sign); where they do not, every side is searched from every balance and from rest.
 */
export function findPlayBalances(balance: ElasticBalance, load: CornerLoad): PlayBalances {
  const search = new PlaySearch(balance, load);
  search.findNearOnes();
  if (!search.complete) search.findTheRest();
  return search.result();
}

class PlaySearch {
  private readonly branches: readonly Branch[];
  /** Converged on their branch, consistent or not: where other branches are looked for from. */
  private readonly settled = new Map<Branch, Balance>();
  private readonly found = new Map<Branch, Balance>();
  private readonly lost: Balance[] = [];
  /** Where Newton found no way or a stiffness that is nearly none. */
  private readonly open = new Set<Branch>();
  private continuum: Balance | null = null;

  constructor(
    private readonly balance: ElasticBalance,
    private readonly load: CornerLoad,
  ) {
    const preferred: Branch = balance.playTerms.map((i) => ((balance.preload[i] as number) < 0 ? -1 : 1));
    this.branches = allBranches(preferred.length).sort((a, b) => distance(a, preferred) - distance(b, preferred));
  }

  /** Whether the signs of the balances found sum to that of a corner without play. */
  get complete(): boolean {
    if (this.continuum) return true;
    let sum = 0;
    for (const one of this.found.values()) sum += indexOf(this.balance, one);
    return sum === 1;
  }

  findNearOnes(): void {
    const sides = this.branches.filter((branch) => !branch.includes(0));
    for (const branch of sides) this.keep(branch, this.fromSettled(branch) ?? this.balance.solve(this.load, branch));
    for (const branch of this.branches)
      if (branch.includes(0)) {
        // From where the loose ones stand on either side of their gaps.
        const one = this.settled.get(this.branchOfSides(branch, 1));
        const other = this.settled.get(this.branchOfSides(branch, -1));
        for (const start of [one, other]) if (start && !this.found.has(branch)) this.tryFrom(start, branch);
        if (one && other && this.open.has(branch)) this.lookForFree(midway(one, other), branch);
      }
  }

  findTheRest(): void {
    // Twice, as one finds the next.
    for (let pass = 0; pass < 2; pass++)
      for (const branch of this.branches) {
        if (this.found.has(branch)) continue;
        if (pass === 0 && branch.includes(0)) this.keep(branch, this.balance.solve(this.load, branch));
        for (const start of [...this.found.values()]) if (!this.found.has(branch)) this.tryFrom(start, branch);
      }
  }

  result(): PlayBalances {
    const found: Balance[] = [];
    for (const branch of this.branches) {
      const one = this.found.get(branch);
      if (one && !found.some((other) => isStride(other.pose, one.pose, SAME / 0.1))) found.push(one);
    }
    const [lost] = this.lost;
    // Where every branch settles and none holds there is no balance near: not one that converged.
    const report = lost?.report ?? { end: "infeasible", iterations: 0, residual: 0 };
    return { found, continuum: this.continuum, report, ...(lost?.carried ? { carried: lost.carried } : {}) };
  }

  /** The branch with its gaps replaced by the side of the preload (1) or the other (-1). */
  private branchOfSides(branch: Branch, way: 1 | -1): Branch {
    const preferred = this.branches[0] as Branch;
    const wanted = branch.map((side, i) => side || way * (preferred[i] as number));
    return this.branches.find((one) => one.every((side, i) => side === wanted[i])) as Branch;
  }

  private fromSettled(branch: Branch): Balance | null {
    const near = [...this.settled.entries()].sort(([a], [b]) => distance(a, branch) - distance(b, branch))[0]?.[1];
    if (!near) return null;
    const next = this.balance.solveFrom(near.pose, this.load, near.wheelLoad, branch, REACH);
    return this.balance.follows(near, next) ? next : null;
  }

  private tryFrom(start: Balance, branch: Branch): void {
    const next = this.balance.solveFrom(start.pose, this.load, start.wheelLoad, branch, REACH);
    const converged = next.report.end === "converged";
    // One that leaves a move free is no answer: beside it lies another.
    if (branch.includes(0) && (!converged || this.balance.factorisation.pivotRatio < NEARLY_FREE))
      this.open.add(branch);
    if (converged && isStride(start.pose, next.pose, NEAR)) this.keep(branch, next);
  }

  private lookForFree(start: Balance, branch: Branch): void {
    const free = findFreeBalance(this.balance, start.pose, this.load, start.wheelLoad, branch);
    if (free && isConsistent(this.balance, free)) this.continuum ??= free;
  }

  private keep(branch: Branch, one: Balance): void {
    if (one.report.end !== "converged") {
      this.lost.push(one);
      return;
    }
    this.settled.set(branch, one);
    if (isConsistent(this.balance, one)) this.found.set(branch, one);
  }
}

/** A start between two balances. */
function midway(one: Balance, other: Balance): Balance {
  const pose = clonePose(one.pose);
  pose.t.forEach((x, i) => {
    pose.t[i] = (x + (other.pose.t[i] as number)) / 2;
  });
  pose.r.forEach((x, i) => {
    pose.r[i] = (x + (other.pose.r[i] as number)) / 2;
  });
  orthonormalise(pose);
  return { ...one, pose };
}

/**
 * +1 or -1: the sign of the determinant of the stiffness on the moves that rigid members leave. A rigid member that holds
 * brings one change of sign into the bordered matrix, a slack one and a held height none.
 */
function indexOf(balance: ElasticBalance, one: Balance): number {
  const slack = balance.playTerms.filter(
    (term, slot) => one.branch[slot] === 0 && !Number.isFinite(balance.terms[term]?.rate),
  ).length;
  return (balance.rigid.length - slack) % 2 === 0 ? one.sign : -one.sign;
}

/** Every loose member on the side its branch assumes. */
export function isConsistent(balance: ElasticBalance, one: Balance): boolean {
  return balance.playTerms.every((i, slot) => {
    const e = (one.values[i] as number) - (balance.free[i] as number);
    const half = (balance.terms[i]?.play ?? 0) / 2;
    const side = one.branch[slot] as number;
    const slack = 1e-12;
    if (side === 0) return Math.abs(e) <= half + slack;
    const rigid = !Number.isFinite(balance.terms[i]?.rate);
    return rigid ? side * (one.forces[i] as number) >= 0 : side * e >= half - slack;
  });
}

/** Every combination of sides of so many gaps. */
export function allBranches(n: number): Branch[] {
  let out: (-1 | 0 | 1)[][] = [[]];
  for (let i = 0; i < n; i++) out = out.flatMap((b) => ([1, -1, 0] as const).map((s) => [...b, s]));
  return out;
}

function distance(a: Branch, b: Branch): number {
  return a.reduce<number>((sum, s, i) => sum + Math.abs(s - (b[i] as number)), 0);
}
