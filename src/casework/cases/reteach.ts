import type { Operation } from "#vehicle";
import type { HandOverDocument } from "./documents.ts";
import type { CarRemedy } from "./remedies.ts";

export type ReteachNeed = "needed" | "not needed" | "unknown: look up";

/** What may have to be re-taught or re-aimed, and why; never silence. */
export interface ReteachItem {
  readonly item: string;
  readonly need: ReteachNeed;
  readonly why: string;
  readonly state: HandOverDocument["taught"][number]["state"] | null;
}

type Loosened = Operation["loosens"][number];

/** Which work asks for what (source key reteach in docs/sources.md, from memory): many makers differ, so most of it is to be looked up. */
const RETEACH: readonly {
  readonly item: string;
  readonly needed: readonly Loosened[];
  readonly lookUp: readonly Loosened[];
}[] = [
  { item: "Steering-angle zero", needed: ["front-toe", "rear-toe", "subframe", "rack"], lookUp: [] },
  { item: "Level sensors", needed: ["sensor-link", "height", "subframe"], lookUp: [] },
  { item: "Headlamp aim", needed: ["sensor-link", "height", "subframe"], lookUp: [] },
  { item: "Front camera", needed: ["height", "subframe"], lookUp: ["front-toe", "rear-toe", "sensor-link", "rack"] },
  { item: "Front radar", needed: ["height", "subframe"], lookUp: ["front-toe", "rear-toe"] },
  { item: "Tyre pressure monitor", needed: [], lookUp: ["wheel"] },
];

export function deriveReteach(
  remedies: readonly CarRemedy[],
  document: HandOverDocument | null,
): readonly ReteachItem[] {
  const loosened = new Set<Loosened>(remedies.flatMap((r) => r.operations.flatMap((o) => o.operation.loosens)));
  const words = (list: readonly Loosened[]): string =>
    list
      .filter((l) => loosened.has(l))
      .map((l) => l.replaceAll("-", " "))
      .join(", ");
  return RETEACH.map(({ item, needed, lookUp }) => {
    const state = document?.taught.find((t) => t.item === item)?.state ?? null;
    if (needed.some((l) => loosened.has(l))) return { item, need: "needed", why: `loosened: ${words(needed)}`, state };
    if (lookUp.some((l) => loosened.has(l)))
      return { item, need: "unknown: look up", why: `loosened: ${words(lookUp)}; makers differ`, state };
    return { item, need: "not needed", why: "nothing loosened that it hangs on", state };
  });
}
