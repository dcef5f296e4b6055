import { type Finding, inputTooLargeFinding, largestInputBytes, notUtf8Finding, parseFamilyText } from "#contract";
import type { Family } from "../car.ts";

/** A family file as it was read: the family with the text it came as, or everything that is wrong with it. */
export type ReadFamilyFile =
  | { readonly family: Family; readonly text: string }
  | { readonly findings: readonly Finding[] };

const decode = (bytes: ArrayBuffer): string | null => {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch (cause) {
    if (cause instanceof TypeError) return null;
    throw cause;
  }
};

/** Reads a family from a file a person chose; nothing is kept by it. */
export const readFamilyFile = async (file: File): Promise<ReadFamilyFile> => {
  if (file.size > largestInputBytes) return { findings: [inputTooLargeFinding] };
  const text = decode(await file.arrayBuffer());
  if (text === null) return { findings: [notUtf8Finding] };
  const parsed = parseFamilyText(text);
  return "findings" in parsed ? parsed : { family: parsed.family, text };
};
