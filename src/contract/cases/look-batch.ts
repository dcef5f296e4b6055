import { z } from "zod";
import type { Look } from "#casework";
import type { Finding } from "#numeric";
import { type JsonReading, readJson } from "../read-json.ts";
import { type Parsed, parseWire } from "../refusal.ts";
import { checkBelowNought, checkReading } from "./check-reading.ts";
import { readLook } from "./look-form.ts";
import { sentLook } from "./look-schema.ts";

/** More looks than a day of work makes (invented bound). */
const mostLooks = 1000;

const batch = z.strictObject({ looks: z.array(z.unknown()).min(1).max(mostLooks) });

/** One look of a batch: read, or everything that is wrong with it; paths begin at the batch. */
export type BatchEntry =
  | { readonly look: Look }
  /** `id` as it was sent, where something was. */
  | { readonly id: string | null; readonly findings: readonly Finding[] };

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** The batch without its looks, which are checked one by one. */
const envelopeOf = (value: unknown): unknown =>
  isObject(value) && Array.isArray(value.looks) ? { ...value, looks: value.looks.map(() => null) } : value;

const placeOf = (index: number): string => `looks[${index}]`;

const isInside = (path: string, place: string): boolean =>
  path === place || path.startsWith(`${place}.`) || path.startsWith(`${place}[`);

/** A path inside a look as a path inside the batch. */
const atPlace = (finding: Finding, place: string): Finding => {
  const { path } = finding;
  return { ...finding, path: path === "" || path.startsWith("[") ? place + path : `${place}.${path}` };
};

const parseLook = (value: unknown, place: string, before: readonly Finding[]): BatchEntry => {
  const here = before
    .filter(({ path }) => isInside(path, place))
    .map((finding) => ({ ...finding, path: finding.path.slice(place.length).replace(/^\./, "") }));
  const parsed = parseWire(sentLook, value, here);
  const id = isObject(value) && typeof value.id === "string" ? value.id.slice(0, 80) : null;
  if ("findings" in parsed) return { id, findings: parsed.findings.map((finding) => atPlace(finding, place)) };
  const { confirmed, ...fields } = parsed.value;
  const look = readLook(fields);
  const odd = confirmed ? checkBelowNought(look.content) : checkReading(look.content);
  return odd.length === 0 ? { look } : { id, findings: odd.map((finding) => atPlace(finding, place)) };
};

const parseEntries = (reading: Extract<JsonReading, { readable: true }>): Parsed<readonly BatchEntry[]> => {
  const looks = isObject(reading.value) && Array.isArray(reading.value.looks) ? (reading.value.looks as unknown[]) : [];
  const outside = reading.findings.filter(({ path }) => !looks.some((_, index) => isInside(path, placeOf(index))));
  const envelope = parseWire(batch, envelopeOf(reading.value), outside);
  if ("findings" in envelope) return envelope;
  return { value: looks.map((look, index) => parseLook(look, placeOf(index), reading.findings)) };
};

/**
 * Reads a batch of looks, {"looks": [...]}, from a JSON text: what the batch as a whole is refused for, or each look by
 * itself, so that one that cannot be taken does not hold up the others.
 */
export const parseLookBatch = (text: string): Parsed<readonly BatchEntry[]> => {
  const reading = readJson(text);
  return reading.readable ? parseEntries(reading) : { findings: reading.findings };
};
