import type { Readable } from "node:stream";
import { recordOfVisit, type VisitRecord } from "#casework";
import { checkPlaces, type FamilyOfVisit, type Finding, parseVisitText, type VisitInFile } from "#contract";
import { loadFamilyOnFile } from "../load-family.ts";
import { readFileText } from "../read-input.ts";

/** A visit file with its family found, ready to be appraised. */
export interface LoadedVisit {
  readonly car: VisitInFile["car"];
  readonly record: VisitRecord;
}

type Refusal = { readonly findings: readonly Finding[] };
type FoundFamily = { readonly family: VisitRecord["family"] } | Refusal;

const findFamily = async (family: FamilyOfVisit | null, dataFolder: string): Promise<FoundFamily> =>
  family === null
    ? { family: null }
    : "onFile" in family
      ? loadFamilyOnFile(family.onFile, "family.id", dataFolder)
      : family;

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
