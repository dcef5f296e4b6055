import type { SolveReport } from "#numeric";
import type { CornerLoad } from "../elastic-corner.ts";
import { isStride } from "../equilibrium.ts";
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

/** Most parts with play that are looked at together: 3 to this power combinations of sides are tried. */
export const MOST_LOOSE_PARTS = 4;
/** A group stands on a side it assumes to within so many metres: rounding. */
const SLACK = 1e-12;

/**
 * All balances of a layout under a load. Without play there is one; with play every combination of sides is tried and kept
 * where each group can stand on the side assumed. More than `MOST_LOOSE_PARTS` groups must not be asked for. `near`, what was
 * found for a close load, saves the walks from design.
 */
export function solveLayout(
  balance: LayoutBalance,
  load: CornerLoad,
  near: LayoutEquilibria | null = null,
): LayoutEquilibria {
  const { loose } = balance;
  const close = near && "settled" in near ? near.settled : [];
  const startOf = (sides: readonly Side[]): LayoutState | undefined =>
    close.find((state) => state.sides.every((side, g) => side === sides[g]));
  const follow = (sides: readonly Side[]): LayoutAnswer => {
    const start = startOf(sides);
    return (start && balance.followFrom(start, load)) ?? balance.follow(load, sides);
  };
  if (loose.length === 0) {
    const only = follow([]);
    return "unsolved" in only ? only : { state: only, others: [], settled: [only] };
  }
  const preferred = loose.map((group): Side => (isPushed(balance, group) ? -1 : 1));
  const combinations = combineSides(loose).sort((a, b) => apart(a, preferred) - apart(b, preferred));
  const firstTries = combinations.map((sides): LayoutAnswer => {
    const walked = follow(sides);
    const mayTurn = sides.some((side, g) => side !== 0 && (loose[g] as LooseGroup).terms.length > 1);
    return "unsolved" in walked && mayTurn ? balance.growPlay(load, sides) : walked;
  });
  const found = new Map<readonly Side[], LayoutState>();
  firstTries.forEach((state, i) => {
    if (!("unsolved" in state) && stands(balance, state)) found.set(combinations[i] as readonly Side[], state);
  });
  const settled = firstTries.filter((state): state is LayoutState => !("unsolved" in state));
  // One that did not settle from design may do so from where another one did, and one that settled elsewhere may stand close
  // to a balance that was found. Twice, as one finds the next.
  for (let pass = 0; pass < 2; pass++)
    combinations.forEach((sides, i) => {
      if (found.has(sides)) return;
      const lost = "unsolved" in (firstTries[i] as LayoutAnswer);
      const near = findNear(balance, load, sides, [...found.values(), ...(lost ? settled : [])]);
      if (near) found.set(sides, near);
    });
  const states = combinations
    .flatMap((sides) => found.get(sides) ?? [])
    .toSorted((a, b) => awayFromPreload(balance, a) - awayFromPreload(balance, b));
  const [state, ...others] = states;
  if (state) return { state, others, settled };
  const unsolved = firstTries.flatMap((answer) => ("unsolved" in answer ? [answer.unsolved] : []));
  // Where every combination settles and none stands there is no balance near: not one that converged.
  return { unsolved: unsolved[0] ?? { end: "infeasible", iterations: 0, residual: 0 } };
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
    const next = balance.solveFrom({ ...other, forces: touching(balance, other, sides) }, load, sides);
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
