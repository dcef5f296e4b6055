import { type StoredLook, standardReadings } from "#casework";
import type { Finding } from "#numeric";
import { type Family, positionsOf } from "#vehicle";
import { findNearest } from "../edit-distance.ts";
import type { VisitInFile } from "./parse-visit.ts";

/** Looks at places the family does not have, each with the nearest it has; only once the family is known. */
export function checkPlaces({ record }: Pick<VisitInFile, "record">, family: Family): readonly Finding[] {
  const known = [...positionsOf(family).map((p) => p.id), ...standardReadings().map((r) => r.place)];
  const places = new Set(known);
  const check = (looks: readonly StoredLook[], list: string): Finding[] =>
    looks.flatMap(({ place }, i): Finding[] => {
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
