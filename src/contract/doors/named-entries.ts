import type { Finding } from "#numeric";
import { findNearest } from "../edit-distance.ts";
import { entriesOf } from "./loose-corner.ts";

/** A name and where it stands. */
export interface NamedEntry {
  readonly name: string;
  readonly path: string;
}

/** Names of the entries of a list, as far as they are text. */
export function namesOf(list: unknown, path: string, key: "id" | "name"): readonly NamedEntry[] {
  return entriesOf(list).flatMap(([i, entry]) => {
    const name = entry[key];
    return typeof name === "string" ? [{ name, path: `${path}[${i}].${key}` }] : [];
  });
}

/** A finding for every name that has stood before. */
export function checkRepeated(entries: readonly NamedEntry[]): Finding[] {
  const first = new Map<string, string>();
  return entries.flatMap(({ name, path }) => {
    const before = first.get(name);
    if (before === undefined) {
      first.set(name, path);
      return [];
    }
    return [
      {
        code: "repeated-name",
        path,
        got: JSON.stringify(name.slice(0, 80)),
        needed: "a name that stands once",
        hint: `${before} has this name already.`,
      },
    ];
  });
}

/** How many unknown names the nearest known one is sought for, and among how many: more would only take time. */
const SOUGHT = 50;
const AMONG = 1000;

/** A finding for every name that nothing known has; `what` says what was meant. */
export function checkNamed(entries: readonly NamedEntry[], known: readonly NamedEntry[], what: string): Finding[] {
  const names = [...new Set(known.map((k) => k.name))];
  const there = new Set(names);
  const near = names.slice(0, AMONG).filter((n) => n.length <= 80);
  return entries
    .filter(({ name }) => !there.has(name))
    .map(({ name, path }, i) => {
      const nearest = i < SOUGHT ? findNearest(name, near) : null;
      return {
        code: "unknown-name",
        path,
        got: JSON.stringify(name.slice(0, 80)),
        needed: `the name of a listed ${what}`,
        hint: nearest === null ? "Nothing listed here is called anything like it." : `The nearest is ${nearest}.`,
      };
    });
}
