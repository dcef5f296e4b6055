import type { CarDocument, StoredLook, VisitRecord } from "#casework";
import type { Finding } from "#numeric";
import type { Family } from "#vehicle";
import { checkBelowNought, checkReading } from "../cases/check-reading.ts";
import { readBody } from "../cases/document-form.ts";
import { readLook } from "../cases/look-form.ts";
import { parseFamily } from "../family/parse-family.ts";
import { parseSilhouette } from "../family/silhouette-sheet.ts";
import { readJson } from "../read-json.ts";
import { limitFindings, type Parsed, parseReading } from "../refusal.ts";
import { type LookInFile, type VisitFileSheet, visitFile } from "./visit-schema.ts";

/** The family of a visit file: known already, or to be taken from where families are kept. */
export type FamilyOfVisit = { readonly family: Family } | { readonly onFile: string };

/** A visit file as the program computes with it. */
export interface VisitInFile {
  readonly car: CarDocument;
  readonly family: FamilyOfVisit | null;
  /** Everything on record about the visit; family and work come from the family. */
  readonly record: Omit<VisitRecord, "family" | "work">;
}

/** The id a visit of a file goes by. */
const VISIT_ID = "visit";

/** Reads a visit file from its text; every finding at once, those of an inline family sheet too. */
export function parseVisitText(text: string): Parsed<VisitInFile> {
  const reading = readJson(text);
  const parsed = parseReading(visitFile, reading);
  const family = reading.readable ? familyIn(reading.value) : null;
  const familyFindings = family !== null && "findings" in family ? family.findings : [];
  if ("findings" in parsed) return { findings: limitFindings([...parsed.findings, ...familyFindings]) };
  const sheet = parsed.value;
  const findings = [
    ...familyFindings,
    ...checkLooks(sheet.looks, "looks"),
    ...checkLooks(sheet.looks_before, "looks_before"),
  ];
  if (findings.length > 0) return { findings: limitFindings(findings) };
  return { value: { car: readCar(sheet), family: familyOf(sheet, family), record: readRecord(sheet) } };
}

type FamilyReading = { readonly family: Family } | { readonly findings: readonly Finding[] };

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const below = (path: string, finding: Finding): Finding => ({
  ...finding,
  path: finding.path === "" ? path : finding.path.startsWith("[") ? path + finding.path : `${path}.${finding.path}`,
});

/** The family that stands in the file itself, read whatever else is wrong; null where it is on file or missing. */
function familyIn(value: unknown): FamilyReading | null {
  const family = isObject(value) ? value.family : null;
  if (!isObject(family)) return null;
  const read = (key: "sheet" | "silhouette"): FamilyReading => {
    const parsed = key === "sheet" ? parseFamily(family[key]) : parseSilhouette(family[key]);
    return "family" in parsed ? parsed : { findings: parsed.findings.map((f) => below(`family.${key}`, f)) };
  };
  if (family.kind === "sheet" && isObject(family.sheet)) return read("sheet");
  return family.kind === "silhouette" && isObject(family.silhouette) ? read("silhouette") : null;
}

function familyOf({ family }: VisitFileSheet, inline: FamilyReading | null): FamilyOfVisit | null {
  if (family?.kind === "on-file") return { onFile: family.id };
  return inline !== null && "family" in inline ? { family: inline.family } : null;
}

/** Figures no car shows, unless somebody stands by them, and those that are less than nothing. */
function checkLooks(looks: readonly LookInFile[], list: string): Finding[] {
  return looks.flatMap((look, i) => {
    const check = look.confirmed ? checkBelowNought : checkReading;
    return check(toLook(look, i, "", "", "").content).map((f) => below(`${list}[${i}]`, f));
  });
}

/** Finer than a UUID's own form is not needed inside one file: a look without an id gets its place in the list. */
function toLook(wire: LookInFile, index: number, visit: string, who: string, at: string): StoredLook {
  const look = readLook({
    ...wire,
    id: wire.id ?? `${visit}-look-${index + 1}`,
    car: wire.car ?? "car",
    visit: wire.visit ?? visit,
    who: wire.who ?? who,
    at: wire.at ?? at,
  });
  return { ...look, sequence: index + 1, receivedAt: wire.received_at ?? look.at, clockOff: wire.clock_off ?? false };
}

const readCar = ({ car }: VisitFileSheet): CarDocument => readBody("car", { ...car, family: null });

function readRecord(sheet: VisitFileSheet): VisitInFile["record"] {
  const visit = readBody("visit", sheet.visit);
  const at = `${visit.date}T00:00:00Z`;
  const rates = readBody("settings", {
    ...sheet.rates,
    units: { distance: "km", length: "mm", torque: "nm", angle: "deg", pressure: "bar" },
    invented: sheet.car.invented,
  });
  return {
    rates,
    visit,
    enquiry: sheet.enquiry && readBody("enquiry", sheet.enquiry),
    plan: sheet.plan && readBody("plan", sheet.plan),
    jobCard: sheet.job_card && readBody("job-card", sheet.job_card),
    handOver: sheet.hand_over && readBody("hand-over", sheet.hand_over),
    looks: sheet.looks.map((look, i) => toLook(look, i, VISIT_ID, visit.by, at)),
    past: sheet.looks_before.map((look, i) => toLook(look, i, "before", visit.by, at)),
  };
}
