import type { Finding } from "#numeric";
import { STANDARD_GRAVITY } from "#vehicle";
import { readJson } from "../read-json.ts";
import { limitFindings, parseWire } from "../refusal.ts";
import { checkBar } from "./check-bar.ts";
import { checkBodies, saysBodies, withDrawnKeys } from "./check-bodies.ts";
import { checkCar, checkSubframe } from "./check-car.ts";
import { checkConstraints } from "./check-constraints.ts";
import { checkCorrelation } from "./check-correlation.ts";
import { checkIndependence } from "./check-independence.ts";
import { checkNames } from "./check-names.ts";
import { checkPlausible, checkPlausibleCar } from "./check-plausible.ts";
import { checkPoints } from "./check-points.ts";
import { checkReach } from "./check-reach.ts";
import { checkRubber } from "./check-rubber.ts";
import { checkSlips } from "./check-slips.ts";
import { checkStops } from "./check-stops.ts";
import { checkTyreSize } from "./check-tyre-size.ts";
import { checkWheel } from "./check-wheel.ts";
import { familyFinding } from "./family-finding.ts";
import { type FamilySheet, familySheet } from "./family-schema.ts";
import { asObject, type LooseAxle, looseAxle } from "./loose-axle.ts";

/** Larger than any family sheet by a factor of fifty (invented bound). */
export const LARGEST_FILE_BYTES = 8_000_000;

/** A sheet without a finding in the type of its schema, or everything that is wrong with it. */
export type CheckedSheet = { readonly sheet: FamilySheet } | { readonly findings: readonly Finding[] };

/**
 * How much a sheet is asked. "new": also whether its wheels move as a car's do and its tyre size agrees with the figures
 * beside it, which a later version of this program may judge more strictly. "kept": that it can be read and computed with, so that what was kept once opens always.
 */
export type Strictness = "new" | "kept";

/** Checks a family sheet that is already JSON data: form, units, and what its figures say together; all findings at once. */
export function checkFamilySheet(
  document: unknown,
  before: readonly Finding[] = [],
  strictness: Strictness = "new",
): CheckedSheet {
  const raw = asObject(document);
  const [front, rear] = [withDrawnKeys(raw.front), withDrawnKeys(raw.rear)];
  const isDrawn = front !== raw.front || rear !== raw.rear;
  const parsed = parseWire(familySheet, isDrawn ? { ...raw, front, rear } : document, before);
  const byForm = "findings" in parsed ? parsed.findings : [];
  const axles = [looseAxle("front", front, raw.front), looseAxle("rear", rear, raw.rear)];
  const wheelbase = typeof raw.wheelbase_mm === "number" ? raw.wheelbase_mm : undefined;
  const bySense = [
    ...checkPlausibleCar(raw),
    ...axles.flatMap((axle) => checkAxle(axle, wheelbase, wheelLoadOf(raw, axle))),
  ];
  bySense.push(...checkCar(raw, axles, bySense.length === 0));
  const sound = byForm.length === 0 && bySense.length === 0;
  const doubts =
    sound && strictness === "new" ? axles.flatMap((axle) => [...checkTyreSize(axle), ...checkTravel(axle)]) : [];
  const findings = sound ? doubts : merged(byForm, bySense);
  if (findings.length > 0) return { findings: limitFindings(findings) };
  if ("findings" in parsed) throw new Error("a sheet with findings lost them");
  return { sheet: parsed.value };
}

/** Every finding of a family sheet that is already JSON data; none: it can be read. */
export function checkFamily(document: unknown): readonly Finding[] {
  const checked = checkFamilySheet(document);
  return "findings" in checked ? checked.findings : [];
}

/** The same from the text of a file. */
export function checkFamilyText(text: string, strictness: Strictness = "new"): CheckedSheet {
  if (text.length > LARGEST_FILE_BYTES) return { findings: [tooLarge(text.length)] };
  const reading = readJson(text);
  return reading.readable
    ? checkFamilySheet(reading.value, reading.findings, strictness)
    : { findings: reading.findings };
}

function tooLarge(letters: number): Finding {
  return familyFinding(
    "file-too-large",
    "",
    `${(letters / 1e6).toFixed(1)} MB`,
    `at most ${LARGEST_FILE_BYTES / 1e6} MB`,
    "A family sheet has about 20 KB, with its work some 120 KB; is this the right file?",
  );
}

/** What can be said of an axle once it moves; a slip in its points explains a fold better than a stop does. */
function checkTravel(axle: LooseAxle): Finding[] {
  if (saysBodies(axle)) return [];
  const slips = checkSlips(axle);
  return slips.length > 0 ? slips : [...checkStops(axle), ...checkBar(axle)];
}

/** At one wheel of an axle while the car stands, N; null where mass or share cannot be understood. */
function wheelLoadOf(raw: Readonly<Record<string, unknown>>, { name }: LooseAxle): number | null {
  const { kerb_mass_kg: mass, front_weight_share: front } = raw;
  if (typeof mass !== "number" || typeof front !== "number") return null;
  return (mass * (name === "front" ? front : 1 - front) * STANDARD_GRAVITY) / 2;
}

function checkAxle(axle: LooseAxle, wheelbaseMm: number | undefined, wheelLoad: number | null): Finding[] {
  if (saysBodies(axle))
    return [...checkBodies(axle, wheelLoad), ...checkWheel(axle, wheelbaseMm), ...checkSubframe(axle)];
  const constraints = checkConstraints(axle);
  const points = checkPoints(axle);
  const sound = constraints.length === 0 && points.length === 0;
  const wheel = checkWheel(axle, wheelbaseMm);
  return [
    ...checkBodies(axle, wheelLoad),
    ...checkNames(axle),
    ...constraints,
    ...points,
    ...(sound ? checkIndependence(axle) : []),
    ...(sound ? checkCorrelation(axle) : []),
    ...checkRubber(axle),
    ...wheel,
    ...checkPlausible(axle),
    ...checkReach(axle, wheel.length === 0 && !axle.pointsConfirmed),
    ...checkSubframe(axle),
  ];
}

/** One finding per place: a wrong unit explains a figure out of range or at odds with others; else the form comes first. */
function merged(byForm: readonly Finding[], bySense: readonly Finding[]): Finding[] {
  const units = bySense.filter(({ code }) => code.startsWith("looks-like-"));
  const inOtherUnit = new Set(units.map(({ path }) => path));
  const form = byForm.filter(({ code, path }) => !(code === "out-of-range" && inOtherUnit.has(path)));
  const said = new Set(form.map(({ path }) => path));
  const sense = [
    ...units,
    ...bySense.filter(({ code, path }) => !code.startsWith("looks-like-") && !inOtherUnit.has(path)),
  ];
  return [...form, ...sense.filter(({ path }) => !said.has(path))];
}
