import type { SolveReport } from "#numeric";
import type { CornerLoad } from "../elastic-corner.ts";
import { isStride, REACH } from "../equilibrium.ts";
import type { LayoutAnswer, LayoutBalance, LayoutState } from "./layout-balance.ts";
import type { LooseGroup, Side } from "./loose-group.ts";

/** All balances of one load: first the one on the side of the healthy preload; or how the search ended. */
export type LayoutEquilibria =
  | {
      readonly state: LayoutState;
      readonly others: readonly LayoutState[];
      /** A balance of every combination of sides that has one, also where it cannot stand so: from these a close load is near. */
      readonly settled: readonly LayoutState[];
    }
  | { readonly unsolved: SolveReport };

/** A group stands on a side it assumes to within so many metres: rounding. */
const SLACK = 1e-12;

/**
 * All balances of a layout under a load. Without play there is one; with play every combination of sides is tried and kept
 * where each group can stand on the side assumed. `near`, what was found for a close load, saves the walks from design.
 */
export function solveLayout(
  balance: LayoutBalance,
  load: CornerLoad,
  near: LayoutEquilibria | null = null,
): LayoutEquilibria {
  const close = near && "settled" in near ? near.settled : [];
  if (balance.loose.length > 0) return new LooseSearch(balance, load, close).result();
  const [start] = close;
  const only = (start && balance.followFrom(start, load)) ?? balance.follow(load, []);
  return "unsolved" in only ? only : { state: only, others: [], settled: [only] };
}

/**
 * The search over all sides of all loose groups. Sides without a gap are walked to from design or from each other; a member in
 * its gap moves by no more than the gap, so its balance lies a short Newton away from those. The signs of the determinants of
 * all balances sum to one as they do without play; where they do not, every combination is walked to and searched from every
 * balance.
 */
class LooseSearch {
  private readonly combinations: readonly (readonly Side[])[];
  /** Converged on their sides, whether they can stand so or not. */
  private readonly settled = new Map<readonly Side[], LayoutState>();
  private readonly found = new Map<readonly Side[], LayoutState>();
  private readonly lost: SolveReport[] = [];

  constructor(
    private readonly balance: LayoutBalance,
    private readonly load: CornerLoad,
    private readonly close: readonly LayoutState[],
  ) {
    const preferred = balance.loose.map((group): Side => (isPushed(balance, group) ? -1 : 1));
    this.combinations = combineSides(balance.loose).sort((a, b) => apart(a, preferred) - apart(b, preferred));
    this.findNearOnes();
    if (!this.isComplete) this.findTheRest();
  }

  result(): LayoutEquilibria {
    const states = this.combinations
      .flatMap((sides) => this.found.get(sides) ?? [])
      .toSorted((a, b) => awayFromPreload(this.balance, a) - awayFromPreload(this.balance, b));
    const [state, ...others] = states;
    if (state) return { state, others, settled: [...this.settled.values()] };
    // Where every combination settles and none stands there is no balance near: not one that converged.
    return { unsolved: this.lost[0] ?? { end: "infeasible", iterations: 0, residual: 0 } };
  }

  /** Whether the signs of the balances found sum to that of a layout without play. */
  private get isComplete(): boolean {
    let sum = 0;
    for (const one of this.found.values()) sum += indexOf(this.balance, one);
    return sum === 1;
  }

  private findNearOnes(): void {
    for (const sides of this.combinations) {
      const known = this.close.find((state) => state.sides.every((side, g) => side === sides[g]));
      const followed = known && this.balance.followFrom(known, this.load);
      if (followed) this.keep(sides, followed);
    }
    for (const sides of this.combinations)
      if (!sides.includes(0) && !this.settled.has(sides))
        this.keep(sides, this.fromSettled(sides) ?? this.walkTo(sides));
    const touching = [...this.settled.values()].filter(({ sides }) => !sides.includes(0));
    for (const sides of this.combinations) {
      if (!sides.includes(0) || this.found.has(sides)) continue;
      // From where the loose ones stand on one side of their gaps or another, all else as asked.
      const starts = touching.filter((state) => sides.every((side, g) => side === 0 || side === state.sides[g]));
      this.keepNear(
        sides,
        [...new Set([starts[0], starts.at(-1)])].flatMap((start) => start ?? []),
      );
    }
  }

  private findTheRest(): void {
    for (const sides of this.combinations) if (!this.settled.has(sides)) this.keep(sides, this.walkTo(sides));
    // One that did not settle from design may do so from where another one did, and one that settled elsewhere may stand close
    // to a balance that was found. Twice, as one finds the next.
    for (let pass = 0; pass < 2; pass++)
      for (const sides of this.combinations) {
        if (this.found.has(sides)) continue;
        const others = this.settled.has(sides) ? [] : [...this.settled.values()];
        this.keepNear(sides, [...this.found.values(), ...others]);
      }
  }

  private keep(sides: readonly Side[], answer: LayoutAnswer): void {
    if ("unsolved" in answer) {
      this.lost.push(answer.unsolved);
      return;
    }
    this.settled.set(sides, answer);
    if (stands(this.balance, answer)) this.found.set(sides, answer);
  }

  private keepNear(sides: readonly Side[], others: readonly LayoutState[]): void {
    const one = findNear(this.balance, this.load, sides, others);
    if (one) this.keep(sides, one);
  }

  private walkTo(sides: readonly Side[]): LayoutAnswer {
    const walked = this.balance.follow(this.load, sides);
    const mayTurn = sides.some((side, g) => side !== 0 && (this.balance.loose[g] as LooseGroup).terms.length > 1);
    return "unsolved" in walked && mayTurn ? this.balance.growPlay(this.load, sides) : walked;
  }

  /** From the settled combination that shares most sides; null where that leads to no step from it. */
  private fromSettled(sides: readonly Side[]): LayoutState | null {
    const [nearest] = [...this.settled.values()].sort((a, b) => apart(a.sides, sides) - apart(b.sides, sides));
    return nearest ? this.balance.stepTo(nearest, this.load, sides) : null;
  }
}

/**
 * +1 or -1: the sign of the determinant of the stiffness on the moves that rigid members leave. Every force among the unknowns
 * that is passed on brings one change of sign into the bordered matrix, one in its gap and a held height none.
 */
function indexOf({ unknown, loose }: LayoutBalance, { sides, sign }: LayoutState): number {
  const slack = loose.reduce((sum, { terms }, g) => sum + (sides[g] === 0 ? terms.length : 0), 0);
  return (unknown.length - slack) % 2 === 0 ? sign : -sign;
}

/** A link that is pressed at design; a joint is only ever pressed together. */
const isPushed = ({ preload }: LayoutBalance, { terms: [first = 0, ...rest] }: LooseGroup): boolean =>
  rest.length === 0 && (preload[first] as number) < 0;

/** Every combination of the sides the groups can stand on. */
function combineSides(loose: readonly LooseGroup[]): (readonly Side[])[] {
  return loose.reduce<(readonly Side[])[]>(
    (all, { terms }) => {
      const sides: readonly Side[] = terms.length === 1 ? [1, -1, 0] : [1, 0];
      return all.flatMap((before) => sides.map((side) => [...before, side]));
    },
    [[]],
  );
}

const apart = (a: readonly Side[], b: readonly Side[]): number =>
  a.reduce<number>((sum, side, g) => sum + Math.abs(side - (b[g] as number)), 0);

/** How far a state is from the sides of the healthy preload: of each group 0 on its side, 1 in the gap, 2 across from it. */
function awayFromPreload({ loose, preload }: LayoutBalance, { sides, forces }: LayoutState): number {
  return loose.reduce((sum, { terms }, g) => {
    if (sides[g] === 0) return sum + 1;
    const along = terms.reduce((dot, t) => dot + (forces[t] as number) * (preload[t] as number), 0);
    return sum + (along < 0 ? 2 : 0);
  }, 0);
}

/** Whether every loose group can stand on the side its state assumes. */
function stands(balance: LayoutBalance, state: LayoutState): boolean {
  const off = balance.stretches(state);
  return balance.loose.every(({ terms, total }, g) => {
    const side = state.sides[g] as Side;
    if (side === 0) return Math.hypot(...terms.map((t) => off[t] as number)) <= total / 2 + SLACK;
    // A joint's force has the direction of its shift: it only ever presses.
    const [first = 0, ...rest] = terms;
    if (rest.length > 0) return true;
    const isRigid = !Number.isFinite(balance.terms[first]?.rate);
    return isRigid ? side * (state.forces[first] as number) >= 0 : side * (off[first] as number) >= total / 2 - SLACK;
  });
}

/** A balance on these sides by Newton from those on others; null where none is near. */
function findNear(
  balance: LayoutBalance,
  load: CornerLoad,
  sides: readonly Side[],
  others: readonly LayoutState[],
): LayoutState | null {
  for (const other of others) {
    const next = balance.solveFrom({ ...other, forces: touching(balance, other, sides) }, load, sides, REACH);
    if (!("unsolved" in next) && stands(balance, next) && isStride(other.pose, next.pose, 2)) return next;
  }
  return null;
}

/** Forces of a state with joints that are to touch and do not yet pressed by a newton the way they have shifted. */
function touching(balance: LayoutBalance, state: LayoutState, sides: readonly Side[]): readonly number[] {
  const forces = [...state.forces];
  const off = balance.stretches(state);
  balance.loose.forEach(({ terms }, g) => {
    if (sides[g] === 0 || terms.some((t) => forces[t] !== 0)) return;
    const size = Math.hypot(...terms.map((t) => off[t] as number)) || 1;
    for (const t of terms) forces[t] = (off[t] as number) / size || 1 / terms.length;
  });
  return forces;
}
