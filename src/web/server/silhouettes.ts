import type { Finding, SilhouetteSheet } from "#contract";
import { type Answer, askServer, jsonBody } from "./ask-server.ts";
import { saveFamily } from "./families.ts";

/** What may be entered under one key of a silhouette. */
interface EntryRange {
  readonly minimum?: number;
  readonly maximum?: number;
  readonly enum?: readonly string[];
}

/** By key of a silhouette. */
export type SilhouetteRanges = Readonly<Partial<Record<keyof SilhouetteSheet, EntryRange>>>;

/** What can be entered of a car nobody has measured. */
export const loadSilhouetteRanges = (): Promise<Answer<SilhouetteRanges>> =>
  askServer("/api/silhouettes", {}, async (response) => {
    const body: { readonly entries: { readonly properties: SilhouetteRanges } } = await response.json();
    return body.entries.properties;
  });

interface MadeFamily {
  readonly id: string;
}

const makeFamily = (sheet: SilhouetteSheet): Promise<Answer<MadeFamily>> =>
  askServer("/api/families/from-silhouette", { method: "POST", ...jsonBody(sheet) }, async (response) => {
    const body: { readonly family: MadeFamily } = await response.json();
    return body.family;
  });

/** How often a name may have been taken before. */
const MOST_NAMESAKES = 50;

const refusedTwice = (findings: readonly Finding[]): Answer<never> => ({ kind: "refused", status: 422, findings });

/** Makes a family of a silhouette and keeps it under the first free id of its name; the body is that id. */
export const beginFamily = async (sheet: SilhouetteSheet): Promise<Answer<string>> => {
  const made = await makeFamily(sheet);
  if (made.kind !== "answer") return made;
  for (let namesake = 1; namesake <= MOST_NAMESAKES; namesake++) {
    const id = namesake === 1 ? made.body.id : `${made.body.id}-${namesake}`;
    const saved = await saveFamily(id, JSON.stringify({ ...made.body, id }, null, 2), null);
    if (saved.kind === "kept") return { kind: "answer", body: id };
    if (saved.kind === "refused") return refusedTwice(saved.findings);
    if (saved.kind === "silent") return saved;
  }
  return { kind: "silent" };
};
