import { type Finding, parseKeptFamilyText } from "#contract";
import type { Family } from "../car.ts";
import { type Answer, askServer } from "./ask-server.ts";

/** A family as the server keeps it: what the pages draw from, the text of its file, and its version. */
export interface LoadedFamily {
  readonly family: Family;
  readonly text: string;
  readonly version: string | null;
}

const familyPath = (id: string): string => `/api/families/${encodeURIComponent(id)}`;

/** The text of a family's file and its version. */
export interface FamilyText {
  readonly text: string;
  readonly version: string | null;
}

const readText = async (response: Response): Promise<FamilyText> => ({
  text: await response.text(),
  version: response.headers.get("etag"),
});

/** The text of a family's file at a path, whatever is wrong with it. */
const loadText = (path: string): Promise<Answer<FamilyText>> => askServer(path, {}, readText);

/** The text of a family's file by its id, that of an example too, whatever is wrong with it. */
export const loadFamilyText = (id: string): Promise<Answer<FamilyText>> => loadText(`${familyPath(id)}?examples=1`);

const loadFrom = async (path: string): Promise<Answer<LoadedFamily>> => {
  const answer = await loadText(path);
  if (answer.kind !== "answer") return answer;
  const parsed = parseKeptFamilyText(answer.body.text);
  return "findings" in parsed
    ? { kind: "refused", status: 200, findings: parsed.findings }
    : { kind: "answer", body: { ...answer.body, family: parsed.family } };
};

/** One family a car may be of, by its id, or the findings of what was kept and cannot be read. */
export const loadFamily = (id: string): Promise<Answer<LoadedFamily>> => loadFrom(familyPath(id));

/** One family to look at by its id, an example too; or the findings. */
export const loadShownFamily = (id: string): Promise<Answer<LoadedFamily>> => loadFrom(`${familyPath(id)}?examples=1`);

/** How a save ended; "superseded": somebody has saved another text since this one was opened. */
export type SaveAnswer =
  | { readonly kind: "kept"; readonly version: string | null }
  | { readonly kind: "superseded" }
  | { readonly kind: "refused"; readonly findings: readonly Finding[] }
  | { readonly kind: "silent" };

/** Saves the text of a family file whole or not at all; `version` null where the family must not exist yet. */
export const saveFamily = async (id: string, text: string, version: string | null): Promise<SaveAnswer> => {
  const condition = version === null ? { "if-none-match": "*" } : { "if-match": version };
  const init = { method: "PUT", body: text, headers: { "content-type": "application/json", ...condition } };
  const answer = await askServer(familyPath(id), init, async (response) => response.headers.get("etag"));
  if (answer.kind === "answer") return { kind: "kept", version: answer.body };
  if (answer.kind === "silent") return answer;
  return answer.status === 412 || answer.status === 428 ? { kind: "superseded" } : answer;
};
