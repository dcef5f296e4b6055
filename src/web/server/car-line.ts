import type { StoredDocumentSheet } from "#contract";
import { type Answer, askServer, jsonBody } from "./ask-server.ts";

const ask = <T>(id: string, init: RequestInit, read: (response: Response) => Promise<T>): Promise<Answer<T>> =>
  askServer(`/api/documents/car-line/${encodeURIComponent(id)}`, init, read);

/** The version of what is kept of a car line; null where nothing is yet. */
const loadVersion = async (id: string): Promise<Answer<number | null>> => {
  const answer = await ask(id, {}, async (response) => (await response.json()) as StoredDocumentSheet<"car-line">);
  if (answer.kind === "answer") return { kind: "answer", body: answer.body.version };
  return answer.kind === "refused" && answer.status === 404 ? { kind: "answer", body: null } : answer;
};

/**
 * Takes a car line off the list or puts it back; its file and everything that refers to it stay as they are.
 * @param by who does it
 */
export const saveOffList = async (id: string, offList: boolean, by: string): Promise<Answer<null>> => {
  const seen = await loadVersion(id);
  if (seen.kind !== "answer") return seen;
  const sent = jsonBody({ by, document: { off_list: offList } });
  const condition = seen.body === null ? { "if-none-match": "*" } : { "if-match": `"${seen.body}"` };
  return ask(
    id,
    { method: "PUT", ...sent, headers: { ...sent.headers, ...condition } as HeadersInit },
    async () => null,
  );
};
