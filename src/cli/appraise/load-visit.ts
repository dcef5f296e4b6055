import { existsSync } from "node:fs";
import type { Readable } from "node:stream";
import { recordOfVisit, type VisitRecord } from "#casework";
import {
  checkPlaces,
  type FamilyOfVisit,
  type Finding,
  findNearest,
  parseFamily,
  parseFamilyText,
  parseVisitText,
  type VisitInFile,
} from "#contract";
import { demoFamilySheets } from "#demo";
import { openFamilyFiles } from "#records";
import { readFileText } from "../read-input.ts";

/** A visit file with its family found, ready to be appraised. */
export interface LoadedVisit {
  readonly car: VisitInFile["car"];
  readonly record: VisitRecord;
}

type Refusal = { readonly findings: readonly Finding[] };
type FoundFamily = { readonly family: VisitRecord["family"] } | Refusal;

/** Findings of a family on file begin where the visit file names it. */
const atFamily = (findings: readonly Finding[]): Refusal => ({
  findings: findings.map((f) => ({ ...f, path: f.path === "" ? "family.id" : `family.id: ${f.path}` })),
});

/** The family with this id: one that comes with the program, or the workshop's own in the data folder. */
const loadFamily = async (id: string, dataFolder: string): Promise<FoundFamily> => {
  const given = (demoFamilySheets as Readonly<Record<string, unknown>>)[id];
  if (given !== undefined) return orFamily(parseFamily(given));
  const own = existsSync(dataFolder) ? await openFamilyFiles(dataFolder) : null;
  const kept = own === null ? null : await own.load(id);
  if (kept !== null) return orFamily(parseFamilyText(kept.text));
  const known = [...Object.keys(demoFamilySheets), ...(own === null ? [] : (await own.list()).map((f) => f.id))];
  const nearest = findNearest(id, known);
  const hint = nearest === null ? `There are: ${known.join(", ")}.` : `The nearest is ${nearest}.`;
  return { findings: [{ code: "unknown-family", path: "family.id", got: id, needed: "the id of a family", hint }] };
};

const orFamily = (parsed: ReturnType<typeof parseFamily>): FoundFamily =>
  "findings" in parsed ? atFamily(parsed.findings) : parsed;

const findFamily = async (family: FamilyOfVisit | null, dataFolder: string): Promise<FoundFamily> =>
  family === null ? { family: null } : "onFile" in family ? loadFamily(family.onFile, dataFolder) : family;

/** Reads a visit file ("-": the given input) and finds its family; every finding at once. */
export const loadVisit = async (path: string, input: Readable, dataFolder: string): Promise<LoadedVisit | Refusal> => {
  const read = await readFileText(path, input);
  const parsed = "findings" in read ? read : parseVisitText(read.text);
  if ("findings" in parsed) return parsed;
  const found = await findFamily(parsed.value.family, dataFolder);
  if ("findings" in found) return found;
  const { family } = found;
  const places = family === null ? [] : checkPlaces(parsed.value, family);
  if (places.length > 0) return { findings: places };
  const { car, record } = parsed.value;
  return { car, record: recordOfVisit({ ...record, family }) };
};
