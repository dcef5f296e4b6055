import type { Finding, StoredDocumentSheet, StoredLookSheet } from "#contract";
import { type Answer, askServer, jsonBody } from "../../server/ask-server.ts";
import type { UnsentDocument, UnsentLook, UnsentPhoto } from "./entry.ts";
import { loadPhoto } from "./photo-shelf.ts";

/** A look as the store gives it out, with its number there. */
export interface NumberedLook extends StoredLookSheet {
  readonly sequence: number;
}

/** What became of a document that was sent. */
export type DocumentAnswer =
  | { readonly kind: "stored"; readonly document: StoredDocumentSheet }
  | { readonly kind: "refused"; readonly findings: readonly Finding[] }
  | { readonly kind: "overtaken"; readonly latest: StoredDocumentSheet }
  /** Not now: no answer came, or the store could not take anything; the findings say why where it did. */
  | { readonly kind: "later"; readonly findings: readonly Finding[] };

/** What became of one look of a batch. */
export interface LookAnswer {
  readonly id: string | null;
  readonly outcome: "stored" | "known" | "clash" | "refused";
  readonly look?: NumberedLook;
  readonly findings?: readonly Finding[];
  readonly remarks?: readonly Finding[];
}

/** What became of a batch of looks. */
export type BatchAnswer =
  | { readonly kind: "answered"; readonly answers: readonly LookAnswer[] }
  | { readonly kind: "refused"; readonly findings: readonly Finding[] }
  | { readonly kind: "later"; readonly findings: readonly Finding[] };

/** What became of a photo that was sent. */
export type PhotoAnswer =
  | { readonly kind: "stored" }
  | { readonly kind: "refused"; readonly findings: readonly Finding[] }
  | { readonly kind: "later"; readonly findings: readonly Finding[] };

/** From here on the store itself was in trouble, not what was sent. */
export const STORE_TROUBLE = 500;
const OVERTAKEN = 412;

/** The version that stands, where the store has one that the sender had not seen. */
const loadOvertaking = async ({ kind, id }: UnsentDocument): Promise<DocumentAnswer> => {
  const answer = await askServer(`/api/documents/${kind}/${id}`, {}, (response) => response.text());
  if (answer.kind !== "answer") return { kind: "later", findings: [] };
  return { kind: "overtaken", latest: JSON.parse(answer.body) as StoredDocumentSheet };
};

const troubleOf = (answer: Exclude<Answer<unknown>, { kind: "answer" }>): readonly Finding[] | null => {
  if (answer.kind === "silent") return [];
  return answer.status >= STORE_TROUBLE ? answer.findings : null;
};

/** Sends one document; it is in the store, and on its disk, where the answer says "stored". */
export const sendDocument = async (entry: UnsentDocument): Promise<DocumentAnswer> => {
  const { kind, id, version, by, body, confirmed } = entry;
  const { body: text, headers } = jsonBody({ by, document: body, confirmed });
  const condition: Record<string, string> = version === 0 ? { "if-none-match": "*" } : { "if-match": `"${version}"` };
  const answer = await askServer(
    `/api/documents/${kind}/${id}`,
    { method: "PUT", body: text ?? null, headers: { ...(headers as Record<string, string>), ...condition } },
    async (response) => (await response.json()) as StoredDocumentSheet,
  );
  if (answer.kind === "answer") return { kind: "stored", document: answer.body };
  const trouble = troubleOf(answer);
  if (trouble !== null) return { kind: "later", findings: trouble };
  if (answer.kind === "refused" && answer.status === OVERTAKEN) return loadOvertaking(entry);
  return { kind: "refused", findings: answer.kind === "refused" ? answer.findings : [] };
};

/** Sends looks as one batch; each is answered by itself. */
export const sendLooks = async (entries: readonly UnsentLook[]): Promise<BatchAnswer> => {
  const looks = entries.map(({ look, confirmed }) => ({ ...look, confirmed }));
  const answer = await askServer("/api/looks", { method: "POST", ...jsonBody({ looks }) }, async (response) => {
    const { answers } = (await response.json()) as { readonly answers: readonly LookAnswer[] };
    return answers;
  });
  if (answer.kind === "answer") return { kind: "answered", answers: answer.body };
  const trouble = troubleOf(answer);
  if (trouble !== null) return { kind: "later", findings: trouble };
  return { kind: "refused", findings: answer.kind === "refused" ? answer.findings : [] };
};

/** Sends the bytes of a photo; the answer carries the hash the store has it under. */
export const sendPhotoBytes = (photo: Blob): Promise<Answer<string>> =>
  askServer(
    "/api/photos",
    { method: "POST", body: photo, headers: { "content-type": "application/octet-stream" } },
    async (response) => {
      const { hash } = (await response.json()) as { readonly hash: string };
      return hash;
    },
  );

const photoGone = ({ hash }: UnsentPhoto): Finding => ({
  code: "photo-missing",
  path: "",
  got: hash,
  needed: "a photo this browser still holds",
  hint: "Its bytes are gone from this browser before they were sent. Take the photo again.",
});

/** Sends a photo that waited here. */
export const sendPhoto = async (entry: UnsentPhoto): Promise<PhotoAnswer> => {
  const photo = await loadPhoto(entry.hash);
  if (photo === null) return { kind: "refused", findings: [photoGone(entry)] };
  const answer = await sendPhotoBytes(photo);
  if (answer.kind === "answer") return { kind: "stored" };
  const trouble = troubleOf(answer);
  if (trouble !== null) return { kind: "later", findings: trouble };
  return { kind: "refused", findings: answer.kind === "refused" ? answer.findings : [] };
};
