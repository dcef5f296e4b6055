import type { Finding } from "#contract";

/** What came back: the answer, the findings of what was refused, or nothing that can be read. */
export type Answer<T> =
  | { readonly kind: "answer"; readonly body: T }
  | { readonly kind: "refused"; readonly status: number; readonly findings: readonly Finding[] }
  | { readonly kind: "silent" };

const isFinding = (value: unknown): value is Finding =>
  typeof value === "object" && value !== null && "code" in value && "path" in value && "needed" in value;

/** The findings of a refusal; none where the text holds none. */
const findingsIn = (text: string): readonly Finding[] => {
  try {
    const body: unknown = JSON.parse(text);
    if (typeof body !== "object" || body === null || !("findings" in body) || !Array.isArray(body.findings)) return [];
    return body.findings.filter(isFinding);
  } catch (cause) {
    if (cause instanceof SyntaxError) return [];
    throw cause;
  }
};

/** Sends a request and returns what `read` makes of a good response; a refusal comes back as findings. */
export const askServer = async <T>(
  path: string,
  init: RequestInit,
  read: (response: Response) => Promise<T>,
): Promise<Answer<T>> => {
  let response: Response;
  try {
    response = await fetch(path, init);
  } catch (cause) {
    if (cause instanceof TypeError) return { kind: "silent" };
    throw cause;
  }
  if (response.ok) return { kind: "answer", body: await read(response) };
  const findings = findingsIn(await response.text());
  return findings.length === 0 ? { kind: "silent" } : { kind: "refused", status: response.status, findings };
};

/** JSON body and headers of a request that sends something. */
export const jsonBody = (value: unknown): Pick<RequestInit, "body" | "headers"> => ({
  body: JSON.stringify(value),
  headers: { "content-type": "application/json" },
});
