import type { CarRemedy } from "./remedies.ts";

/** The remedy that does another one's work too. */
export interface BroughtAlong {
  /** Id of the remedy that brings it along. */
  readonly by: string;
  /** Its name with its place as it stands in a sentence: "lower arm, front left". */
  readonly name: string;
  /** Index of the visit both are done at. */
  readonly visit: number;
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

const nameOf = ({ label, axle, sides }: CarRemedy): string => {
  const side = sides.length === 1 ? [sides[0]] : [];
  const named = axle !== null && label.toLowerCase().split(/\W+/).includes(axle);
  const where = [...(axle === null || (named && side.length === 0) ? [] : [axle]), ...side].join(" ");
  return lowerFirst(where === "" ? label : `${label}, ${where}`);
};

/** True where all of one remedy's work, and it has no parts, is a part of the other's. */
function isPartOf(less: CarRemedy, more: CarRemedy): boolean {
  return (
    less.parts.length === 0 &&
    less.operations.length > 0 &&
    less.operations.every(({ id }) => more.operations.some((o) => o.id === id)) &&
    (more.parts.length > 0 || more.operations.length > less.operations.length)
  );
}

/**
 * Remedies whose whole work another one does at the same visit, by id: an alignment beside an arm that is followed by
 * one. What no visit holds is brought along by the earliest that does its work; what is set to another visit is not.
 * @param visitOf index of the visit of each remedy that has one
 */
export function findBroughtAlong(
  remedies: readonly CarRemedy[],
  visitOf: ReadonlyMap<string, number>,
): ReadonlyMap<string, BroughtAlong> {
  const found = new Map<string, BroughtAlong>();
  for (const less of remedies) {
    const own = visitOf.get(less.id);
    const [first] = remedies
      .flatMap((more): readonly BroughtAlong[] => {
        const visit = visitOf.get(more.id);
        if (visit === undefined || (own !== undefined && own !== visit) || !isPartOf(less, more)) return [];
        return [{ by: more.id, name: nameOf(more), visit }];
      })
      .toSorted((a, b) => a.visit - b.visit);
    if (first !== undefined) found.set(less.id, first);
  }
  return found;
}
