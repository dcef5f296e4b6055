import { existsSync } from "node:fs";
import { type Finding, findNearest, parseFamily, parseKeptFamilyText } from "#contract";
import { demoFamilySheets } from "#demo";
import { openFamilyFiles } from "#records";

type Found = Extract<ReturnType<typeof parseFamily>, { readonly family: unknown }>;
type Refusal = { readonly findings: readonly Finding[] };

/**
 * The family with this id: one that comes with the program, or the workshop's own in the data folder.
 * @param path where the asking document names it: its findings begin there
 */
export const loadFamilyOnFile = async (id: string, path: string, dataFolder: string): Promise<Found | Refusal> => {
  const orRefusal = (parsed: ReturnType<typeof parseFamily>): Found | Refusal =>
    "findings" in parsed
      ? { findings: parsed.findings.map((f) => ({ ...f, path: f.path === "" ? path : `${path}: ${f.path}` })) }
      : parsed;
  const given = (demoFamilySheets as Readonly<Record<string, unknown>>)[id];
  if (given !== undefined) return orRefusal(parseFamily(given));
  const own = existsSync(dataFolder) ? await openFamilyFiles(dataFolder) : null;
  const kept = own === null ? null : await own.load(id);
  if (kept !== null) return orRefusal(parseKeptFamilyText(kept.text));
  const known = [...Object.keys(demoFamilySheets), ...(own === null ? [] : (await own.list()).map((f) => f.id))];
  const nearest = findNearest(id, known);
  const hint = nearest === null ? `There are: ${known.join(", ")}.` : `The nearest is ${nearest}.`;
  return { findings: [{ code: "unknown-family", path, got: id, needed: "the id of a family", hint }] };
};
