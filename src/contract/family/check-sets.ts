import type { Finding } from "#numeric";
import { familyFinding } from "./family-finding.ts";
import { understood } from "./loose-axle.ts";
import { type Entry, unknownId } from "./work-ids.ts";
import { partSheet } from "./work-schema.ts";

/** Sets list what is in them, all of it known, and no set contains itself. */
export function checkSets(entries: readonly Entry[], known: readonly string[]): Finding[] {
  const contents = new Map<string, readonly string[]>();
  for (const { entry } of entries) {
    const part = understood(partSheet, entry);
    if (part)
      contents.set(
        part.id,
        (part.contents ?? []).map((one) => one.part),
      );
  }
  return entries.flatMap(({ entry, path }): Finding[] => {
    const part = understood(partSheet, entry);
    if (!part) return [];
    const inside = part.contents ?? [];
    const found = inside.flatMap(({ part: id }, index) =>
      unknownId("unknown-part", `${path}.contents[${index}].part`, id, known),
    );
    if (part.kind === "set" && inside.length === 0)
      found.push(
        familyFinding("set-without-contents", path, "no contents", "at least one part", "List what is in the box."),
      );
    if (part.kind !== "set" && inside.length > 0)
      found.push(
        familyFinding("contents-without-set", `${path}.kind`, part.kind, "set, as it lists contents", "Is it a set?"),
      );
    if (reaches(contents, part.id))
      found.push(
        familyFinding(
          "set-in-itself",
          `${path}.contents`,
          part.id,
          "contents without this set",
          "Take it out of the set.",
        ),
      );
    return found;
  });
}

/** Whether a set is among what is in it, at any depth. */
function reaches(contents: ReadonlyMap<string, readonly string[]>, id: string): boolean {
  const seen = new Set<string>();
  const open = [...(contents.get(id) ?? [])];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (next === id) return true;
    if (seen.has(next)) continue;
    seen.add(next);
    open.push(...(contents.get(next) ?? []));
  }
  return false;
}
