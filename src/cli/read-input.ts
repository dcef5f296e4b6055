import { createReadStream } from "node:fs";
import type { Readable } from "node:stream";
import { type Finding, inputTooLargeFinding, largestInputBytes, notUtf8Finding } from "#contract";

/** A text from outside, or why it is none. */
export type InputText = { readonly text: string } | { readonly findings: readonly Finding[] };

/** Reads bytes as UTF-8. */
export const decodeText = (bytes: Uint8Array): InputText => {
  try {
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(bytes) };
  } catch (problem) {
    if (problem instanceof TypeError) return { findings: [notUtf8Finding] };
    throw problem;
  }
};

/** Reads a whole stream as one text; stops at the limit. */
export const readText = async (input: Readable): Promise<InputText> => {
  const chunks: Buffer[] = [];
  let size = 0;
  for await (const chunk of input) {
    const bytes = Buffer.from(chunk as Uint8Array | string);
    size += bytes.length;
    if (size > largestInputBytes) return { findings: [inputTooLargeFinding] };
    chunks.push(bytes);
  }
  return decodeText(Buffer.concat(chunks));
};

const fileTroubles: Readonly<Record<string, string>> = {
  ENOENT: "no such file",
  EISDIR: "a folder",
  EACCES: "a file that may not be read",
  ENOTDIR: "no such file",
};

/** Reads a file ("-": the given input) as one text; a file that cannot be read is a finding too. */
export const readFileText = async (path: string, input: Readable): Promise<InputText> => {
  if (path === "-") return readText(input);
  try {
    return await readText(createReadStream(path));
  } catch (problem) {
    const trouble = problem instanceof Error && "code" in problem ? fileTroubles[String(problem.code)] : undefined;
    if (trouble === undefined) throw problem;
    const finding = {
      code: "no-file",
      path: "",
      got: `${trouble}: ${path.slice(0, 200)}`,
      needed: "a file that can be read",
      hint: "- reads standard input.",
    };
    return { findings: [finding] };
  }
};

const lineEnd = 10;

/** The lines of a stream as bytes; null stands for a line longer than any input may be. */
export async function* readLines(input: Readable): AsyncGenerator<Uint8Array | null> {
  let parts: Buffer[] = [];
  let size = 0;
  const finishLine = (): Uint8Array | null => {
    const line = size > largestInputBytes ? null : Buffer.concat(parts);
    parts = [];
    size = 0;
    return line;
  };
  const add = (bytes: Buffer): void => {
    size += bytes.length;
    if (size > largestInputBytes) parts = [];
    else parts.push(bytes);
  };
  for await (const chunk of input) {
    let bytes = Buffer.from(chunk as Uint8Array | string);
    for (let end = bytes.indexOf(lineEnd); end >= 0; end = bytes.indexOf(lineEnd)) {
      add(bytes.subarray(0, end));
      yield finishLine();
      bytes = bytes.subarray(end + 1);
    }
    add(bytes);
  }
  if (size > 0) yield finishLine();
}
