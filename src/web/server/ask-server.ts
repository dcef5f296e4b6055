import type { Finding } from "#numeric";

/** What came back: the answer with its version, or the findings of what was refused. */
export type Answer<T> =
  | { readonly kind: "answer"; readonly body: T; readonly version: string | null }
  | { readonly kind: "refused"; readonly status: number; readonly findings: readonly Finding[] };

const isFinding = (value: unknown): value is Finding =>
  typeof value === "object" && value !== null && "code" in value && "path" in value && "needed" in value;

const findingsIn = (body: unknown): readonly Finding[] => {
  if (typeof body !== "object" || body === null || !("findings" in body) || !Array.isArray(body.findings)) return [];
  return body.findings.filter(isFinding);
};

const noAnswer = (status: number, got: string): Answer<never> => ({
  kind: "refused",
  status,
  findings: [
    {
      code: "no-answer",
      path: "",
      got,
      needed: "an answer from the program that serves this page",
      hint: "see that the program is still running, then try again",
    },
  ],
});

const refusal = async (response: Response): Promise<Answer<never>> => {
  const text = await response.text();
  let body: unknown = null;
  try {
    body = JSON.parse(text);
  } catch {
    return noAnswer(response.status, text.slice(0, 120));
  }
  const findings = findingsIn(body);
  return findings.length > 0
    ? { kind: "refused", status: response.status, findings }
    : noAnswer(response.status, text.slice(0, 120));
};

/** Sends a request and returns what `read` makes of a good response; a refusal or silence comes back as findings. */
export const askServer = async <T>(
  path: string,
  init: RequestInit,
  read: (response: Response) => Promise<T>,
): Promise<Answer<T>> => {
  let response: Response;
  try {
    response = await fetch(path, init);
  } catch (cause) {
    if (cause instanceof DOMException && cause.name === "AbortError") throw cause;
    return noAnswer(0, "no connection");
  }
  if (!response.ok) return refusal(response);
  return { kind: "answer", body: await read(response), version: response.headers.get("etag") };
};

/** JSON body and headers of a request that sends something. */
export const jsonBody = (value: unknown): Pick<RequestInit, "body" | "headers"> => ({
  body: JSON.stringify(value),
  headers: { "content-type": "application/json" },
});
