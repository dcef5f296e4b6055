import type { Metres } from "#quantity";
import type { LayoutLinkage } from "../layout-linkage.ts";
import type { LayoutFault, LayoutTerm } from "./layout-elasticity.ts";
import { isTurn } from "./turn-measure.ts";

/**
 * Members that share one play: a link by itself, or the members of a joint together. A ball or a slider may leave its middle
 * by half the play in any direction it holds, a bush in any direction across its axis; along the axis it holds as before, and what resists being turned is not loose.
 */
export interface LooseGroup {
  readonly part: string;
  /** Indices of its members among the terms. */
  readonly terms: readonly number[];
  /** Width of the dead band from side to side, metres. */
  readonly total: Metres;
}

/**
 * Where a group stands: 0 inside its gap, where it holds nothing. A link at either end of its gap is 1 (pulled) or -1
 * (pushed); a joint that touches is 1 wherever in its round gap it does.
 */
export type Side = -1 | 0 | 1;

/** The members with play of each faulty part, plays of one part added; a play of nothing is none. */
export function findLooseGroups(
  { layout }: LayoutLinkage,
  terms: readonly LayoutTerm[],
  faults: readonly LayoutFault[],
): readonly LooseGroup[] {
  const totals = new Map<string, number>();
  for (const fault of faults)
    if (fault.kind === "play") totals.set(fault.part, (totals.get(fault.part) ?? 0) + fault.total);
  return [...totals].flatMap(([part, total]): LooseGroup[] => {
    const isBush = layout.joints.find(({ name }) => name === part)?.kind === "bush";
    const members = terms.flatMap(({ part: of, measure }, i) =>
      of === part && !isTurn(measure) && !(isBush && measure.kind === "offset" && measure.which === 2) ? [i] : [],
    );
    return total > 0 && members.length > 0 ? [{ part, terms: members, total }] : [];
  });
}

/** How far a group has given under forces, member by member, and the exact change of that with each of them. */
export interface Give {
  readonly by: readonly number[];
  /** Row-major, as many rows as members. */
  readonly change: readonly number[];
}

/**
 * What a touching group gives under the forces of its members: each force over its rate (nothing where it is rigid), and half
 * the play along the force. A link keeps the side it is on whatever its force.
 */
export function computeGive(
  forces: readonly number[],
  rates: readonly number[],
  side: Side,
  play: Metres,
): Give | null {
  const half = play / 2;
  const n = forces.length;
  if (n === 1) {
    const give = 1 / (rates[0] as number);
    return { by: [(forces[0] as number) * give + side * half], change: [give] };
  }
  const size = Math.hypot(...forces);
  if (size === 0 && half > 0) return null;
  const along = forces.map((f) => (half > 0 ? f / size : 0));
  return {
    by: forces.map((f, i) => f / (rates[i] as number) + half * (along[i] as number)),
    change: Array.from({ length: n * n }, (_, k) => {
      const [i, j] = [Math.floor(k / n), k % n];
      const own = i === j ? 1 : 0;
      const turned = half > 0 ? (half / size) * (own - (along[i] as number) * (along[j] as number)) : 0;
      return own / (rates[i] as number) + turned;
    }),
  };
}
