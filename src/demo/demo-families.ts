import type { Finding } from "#numeric";
import type { Family } from "#vehicle";
import dunlin from "./families/dunlin-hatch.json" with { type: "json" };
import ouzel from "./families/ouzel-saloon.json" with { type: "json" };
import siskin from "./families/siskin-coupe.json" with { type: "json" };
import { dunlinWork } from "./family-work/dunlin-work.ts";
import { ouzelWork } from "./family-work/ouzel-work.ts";
import { siskinWork } from "./family-work/siskin-work.ts";

/** Reads one family sheet; the wire form belongs to the contract, so the reader is passed in. */
export type FamilyReader = (sheet: unknown) => { readonly family: Family } | { readonly findings: readonly Finding[] };

/** The sheets of the invented families, their work included, by id; none of them exists. */
export const demoFamilySheets: Readonly<Record<string, unknown>> = {
  "siskin-coupe": { ...siskin, work: siskinWork },
  "dunlin-hatch": { ...dunlin, work: dunlinWork },
  "ouzel-saloon": { ...ouzel, work: ouzelWork },
};

/**
 * The invented families.
 * @param parseFamily the reader of family sheets of #contract
 * @returns every demo family; throws where one of the demo files itself is wrong
 */
export function demoFamilies(parseFamily: FamilyReader): readonly Family[] {
  return Object.entries(demoFamilySheets).map(([id, sheet]) => {
    const parsed = parseFamily(sheet);
    if ("findings" in parsed) throw new Error(`the demo family ${id} is wrong: ${JSON.stringify(parsed.findings)}`);
    return parsed.family;
  });
}
