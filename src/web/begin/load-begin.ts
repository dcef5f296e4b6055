import type { Answer } from "../server/ask-server.ts";
import { type LoadedFamily, loadFamily } from "../server/families.ts";
import { type FamilyLine, listFamilies } from "../server/family-list.ts";
import { loadSilhouetteRanges, type SilhouetteRanges } from "../server/silhouettes.ts";
import type { BeginSearch } from "./begin-search.ts";

/** What the page begins with. */
export interface LoadedBegin {
  readonly ranges: SilhouetteRanges;
  readonly lines: readonly FamilyLine[];
  /** The car line whose entries are to be corrected; null where a new one is begun. */
  readonly corrected: LoadedFamily | null;
}

/** What may be entered, which names are taken, and the car line that is to be corrected. */
export const loadBegin = async ({ correct }: Pick<BeginSearch, "correct">): Promise<Answer<LoadedBegin>> => {
  const ranges = await loadSilhouetteRanges();
  if (ranges.kind !== "answer") return ranges;
  const lines = await listFamilies();
  if (lines.kind !== "answer") return lines;
  const corrected = correct === undefined ? null : await loadFamily(correct);
  if (corrected !== null && corrected.kind !== "answer") return corrected;
  return { kind: "answer", body: { ranges: ranges.body, lines: lines.body, corrected: corrected?.body ?? null } };
};
