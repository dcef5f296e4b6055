import { factoriseCholesky, solveLower } from "#numeric";
import { findFreeMoves } from "../free-moves.ts";
import type { LayoutBalance, LayoutState } from "./layout-balance.ts";
import type { LayoutTerm } from "./layout-elasticity.ts";
import { computeGive, type Side } from "./loose-group.ts";

type Row = readonly number[];

/** What a touching group adds to the stiffness: rows it resists along with a rate, and rows it lets nothing move along. */
interface Resisted {
  readonly stiff: readonly { readonly row: Row; readonly rate: number }[];
  readonly blocked: readonly Row[];
}

/**
 * Whether a balance is stable: its stiffness, on the moves that rigid members, rigid joints at the end of their play and a
 * held height leave, is positive definite.
 */
export function isLayoutStable(balance: LayoutBalance, state: LayoutState): boolean {
  const { size, steps: n, unknown, loose, terms, hold } = balance;
  const a = balance.matrixAt(state);
  const rowOf = (i: number): Row => Array.from({ length: n }, (_, j) => a[i * size + j] as number);
  const rowOfTerm = (term: number): Row => rowOf(n + unknown.indexOf(term));
  const groups = loose.flatMap(({ terms: members, total }, g): Resisted[] => {
    const side = state.sides[g] as Side;
    if (side === 0) return [];
    const rows = members.map(rowOfTerm);
    const forces = members.map((t) => state.forces[t] as number);
    const rates = members.map((t) => (terms[t] as LayoutTerm).rate);
    return [
      rates.every(Number.isFinite) ? resistSoftly(rows, forces, rates, side, total) : holdRigidly(rows, forces, total),
    ];
  });
  const inGroups = new Set(loose.flatMap(({ terms: members }) => members));
  const blocked = [
    ...unknown.flatMap((term) => (inGroups.has(term) ? [] : [rowOfTerm(term)])),
    ...(hold === "contact-height" ? [rowOf(size - 1)] : []),
    ...groups.flatMap((group) => group.blocked),
  ];
  const stiff = groups.flatMap((group) => group.stiff);
  const free = findFreeMoves(blocked, n);
  const dot = (p: Row, q: Row): number => p.reduce((sum, x, i) => sum + x * (q[i] as number), 0);
  const images = free.map((q) =>
    Array.from({ length: n }, (_, i) => {
      let sum = 0;
      for (let j = 0; j < n; j++)
        sum += 0.5 * ((a[i * size + j] as number) + (a[j * size + i] as number)) * (q[j] as number);
      return stiff.reduce((s, { row, rate }) => s + rate * (row[i] as number) * dot(row, q), sum);
    }),
  );
  return factoriseCholesky(free.map((p) => images.map((image) => dot(p, image)))) !== null;
}

/** Rubber at the end of its play: the inverse of what the group gives. */
function resistSoftly(rows: readonly Row[], forces: Row, rates: Row, side: Side, play: number): Resisted {
  const give = computeGive(forces, rates, side, play);
  const m = rows.length;
  const factor = give && factoriseCholesky(rows.map((_, i) => give.change.slice(m * i, m * i + m)));
  if (!factor) return { stiff: [], blocked: [] };
  const columns = (rows[0] as Row).map((_, j) =>
    solveLower(
      factor,
      rows.map((row) => row[j] as number),
    ),
  );
  return { stiff: rows.map((_, i) => ({ row: columns.map((c) => c[i] as number), rate: 1 })), blocked: [] };
}

/** A rigid group at the end of its play: nothing moves along its force; across, a joint swings about its middle under it. */
function holdRigidly(rows: readonly Row[], forces: Row, play: number): Resisted {
  const size = Math.hypot(...forces);
  if (rows.length === 1 || size === 0) return { stiff: [], blocked: rows };
  const along = (rows[0] as Row).map((_, j) =>
    rows.reduce((sum, row, i) => sum + ((forces[i] as number) / size) * (row[j] as number), 0),
  );
  const across = rows.map((row, i) => row.map((x, j) => x - ((forces[i] as number) / size) * (along[j] as number)));
  return { stiff: across.map((row) => ({ row, rate: (2 * size) / play })), blocked: [along] };
}
