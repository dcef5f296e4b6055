import { readJson } from "#contract";
import type { Answer } from "../server/ask-server.ts";
import { loadFamilyText } from "../server/families.ts";
import { listShownFamilies } from "../server/family-list.ts";
import type { KeptSheet } from "./model/draft.ts";

/** What the editor of a family begins with. */
export interface EditedFamily {
  readonly id: string;
  readonly kept: KeptSheet;
  /** Own: it can be edited. Supplied with the program: only a copy can. An example beside one's own: only looked at. */
  readonly kind: "own" | "supplied" | "example";
  /** Ids and names that are taken. */
  readonly ids: readonly string[];
  readonly names: readonly string[];
}

/** The sheet of a family as the store has it now; findings where its text is no JSON. */
export const loadKeptSheet = async (id: string): Promise<Answer<KeptSheet>> => {
  const answer = await loadFamilyText(id);
  if (answer.kind !== "answer") return answer;
  const reading = readJson(answer.body.text);
  return reading.readable
    ? { kind: "answer", body: { ...answer.body, sheet: reading.value } }
    : { kind: "refused", status: 200, findings: reading.findings };
};

/** A family with what its editor needs to know. */
export const loadEditedFamily = async (id: string): Promise<Answer<EditedFamily>> => {
  const [kept, listed] = await Promise.all([loadKeptSheet(id), listShownFamilies()]);
  if (kept.kind !== "answer") return kept;
  if (listed.kind !== "answer") return listed;
  const { families, examples } = listed.body;
  const kind = families.some((line) => line.id === id && line.read_only)
    ? "supplied"
    : examples.some((line) => line.id === id)
      ? "example"
      : "own";
  const lines = [...families, ...examples];
  const [ids, names] = [lines.map((line) => line.id), lines.map((line) => line.name)];
  return { kind: "answer", body: { id, kept: kept.body, kind, ids, names } };
};
