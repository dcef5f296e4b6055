import type { Finding } from "#numeric";
import type { Family } from "#vehicle";
import { type CheckedSheet, checkFamilySheet, checkFamilyText } from "./check-family.ts";
import { readFamily } from "./read-family.ts";

/** What a family sheet came to: the family, or everything that is wrong with the sheet. */
export type ParsedFamily = { readonly family: Family } | { readonly findings: readonly Finding[] };

/** Reads a family sheet that is already JSON data; every finding at once. */
export function parseFamily(document: unknown): ParsedFamily {
  return familyOf(checkFamilySheet(document));
}

/** Reads a family sheet from the text of its file; every finding at once. */
export function parseFamilyText(text: string): ParsedFamily {
  return familyOf(checkFamilyText(text));
}

/**
 * Reads a family sheet this program has kept: what only became doubtful by a later version's checks is read all the same,
 * and the editor says it.
 */
export function parseKeptFamilyText(text: string): ParsedFamily {
  return familyOf(checkFamilyText(text, "kept"));
}

/** The same of a sheet that is already JSON data. */
export function parseKeptFamily(document: unknown): ParsedFamily {
  return familyOf(checkFamilySheet(document, [], "kept"));
}

function familyOf(checked: CheckedSheet): ParsedFamily {
  return "findings" in checked ? checked : { family: readFamily(checked.sheet) };
}
