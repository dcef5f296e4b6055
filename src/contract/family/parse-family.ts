import type { Finding } from "#numeric";
import type { Family } from "#vehicle";
import { readJson } from "../read-json.ts";
import { parseWire } from "../refusal.ts";
import { familySheet } from "./family-schema.ts";
import { readFamily } from "./read-family.ts";

/** What a family sheet came to: the family, or everything that is wrong with the sheet. */
export type ParsedFamily = { readonly family: Family } | { readonly findings: readonly Finding[] };

/** Reads a family sheet that is already JSON data; every finding at once. */
export function parseFamily(document: unknown): ParsedFamily {
  const parsed = parseWire(familySheet, document);
  return "findings" in parsed ? parsed : { family: readFamily(parsed.value) };
}

/** Reads a family sheet from the text of its file; every finding at once. */
export function parseFamilyText(text: string): ParsedFamily {
  const reading = readJson(text);
  return reading.readable ? parseFamily(reading.value) : { findings: reading.findings };
}
