import { formatFamily } from "#contract";
import { familyFromSilhouette, type SilhouetteEntries } from "#vehicle";
import type { Answer } from "./ask-server.ts";
import { saveFamily } from "./families.ts";

/** Keeps a new family made from silhouettes; the body is its id. */
export const beginFamily = async (entries: SilhouetteEntries): Promise<Answer<string>> => {
  const made = familyFromSilhouette(entries);
  if ("findings" in made) return { kind: "refused", status: 422, findings: made.findings };
  const { family } = made;
  const saved = await saveFamily(family.id, JSON.stringify(formatFamily(family), null, 2), null);
  if (saved.kind === "kept") return { kind: "answer", body: family.id };
  return saved.kind === "refused" ? { kind: "refused", status: 422, findings: saved.findings } : { kind: "silent" };
};
