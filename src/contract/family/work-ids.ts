import type { Finding } from "#numeric";
import { findNearest } from "../edit-distance.ts";
import { familyFinding } from "./family-finding.ts";

/** An entry of a list of the work, with where it stands. */
export interface Entry {
  readonly entry: unknown;
  readonly path: string;
}

/** Nothing where the id is listed, else the finding with the nearest that is. */
export function unknownId(
  code: "unknown-access" | "unknown-operation" | "unknown-part",
  path: string,
  id: string,
  known: readonly string[],
): Finding[] {
  if (known.includes(id)) return [];
  const list = { "unknown-access": "access", "unknown-operation": "operations", "unknown-part": "parts" }[code];
  return [
    familyFinding(
      code,
      path,
      id,
      `an id that stands in work.${list}`,
      nearestWords(id, known, `Add it to work.${list}.`),
    ),
  ];
}

/** "The nearest is .." where one is near enough, else the other words. */
export function nearestWords(given: string, known: readonly string[], otherwise: string): string {
  const nearest = findNearest(given, known);
  return nearest === null ? otherwise : `The nearest is ${nearest}.`;
}
