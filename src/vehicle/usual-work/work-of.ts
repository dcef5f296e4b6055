import type { Family } from "../family.ts";
import type { FamilyWork } from "../family-work.ts";
import { usualWork } from "./usual-work.ts";

/**
 * What is known of the work on a family.
 * @returns the family's own work; without a sheet of it (a car line from a silhouette, too) the usual work of its layouts,
 * origin "usual", whose figures are invented start values or common practice and say so. A sheet that names no remedies
 * keeps its own limits, faults, targets and prices, and borrows operations and remedies, so that its origin is "usual"
 * too; an entry of its own stands before the usual one of the same id.
 */
export function workOf(family: Family): FamilyWork {
  const own = family.work;
  if (own !== null && own.remedies.length > 0) return own;
  const usual = usualWork(family);
  if (own === null) return usual;
  return {
    ...own,
    origin: "usual",
    limits: own.limits.length > 0 ? own.limits : usual.limits,
    access: ownFirst(own.access, usual.access),
    operations: ownFirst(own.operations, usual.operations),
    remedies: usual.remedies,
    parts: ownFirst(own.parts, usual.parts),
  };
}

function ownFirst<T extends { readonly id: string }>(own: readonly T[], usual: readonly T[]): readonly T[] {
  const known = new Set(own.map(({ id }) => id));
  return [...own, ...usual.filter(({ id }) => !known.has(id))];
}
