import { type StoredLook, standardReadings } from "#casework";
import type { Finding } from "#numeric";
import { type Family, positionsOf } from "#vehicle";
import { findNearest } from "../edit-distance.ts";
import type { VisitInFile } from "./parse-visit.ts";

/**
 * Looks at places the family does not have, each with the nearest it has, and signs at a place where only readings are
 * taken; only once the family is known.
 */
export function checkPlaces({ record }: Pick<VisitInFile, "record">, family: Family): readonly Finding[] {
  const positions = new Set(positionsOf(family).map((p) => p.id));
  const known = [...positions, ...standardReadings().map((r) => r.place)];
  const places = new Set(known);
  const check = (looks: readonly StoredLook[], list: string): Finding[] =>
    looks.flatMap(({ place, content }, i): Finding[] => {
      if (content.kind === "signs" && places.has(place) && !positions.has(place))
        return [
          {
            code: "not-consistent",
            path: `${list}[${i}].content`,
            got: `signs at ${place}`,
            needed: "a reading: nothing can be seen or felt there",
            hint: "Record the sign at the part where it was seen.",
          },
        ];
      if (places.has(place)) return [];
      const nearest = findNearest(place, known);
      return [
        {
          code: "unknown-position",
          path: `${list}[${i}].place`,
          got: place,
          needed: `a place of ${family.name}`,
          hint: nearest === null ? "Ids read like rear-left/trailing-link/inner-bush." : `The nearest is ${nearest}.`,
        },
      ];
    });
  return [...check(record.looks, "looks"), ...check(record.past, "looks_before")];
}
