import { type DocumentKind, stageWords, symptoms } from "#casework";

const KINDS: Readonly<Record<DocumentKind, string>> = {
  car: "this car",
  visit: "this visit",
  enquiry: "the enquiry",
  plan: "the plan",
  "job-card": "the job card",
  "hand-over": "the hand-over",
  settings: "the settings",
  "car-line": "the car line",
};

/** What a document is called in a sentence. */
export const kindWords = (kind: DocumentKind): string => KINDS[kind];

const UNITS: readonly (readonly [string, string])[] = [
  ["_km", ", km"],
  ["_mm", ", mm"],
  ["_nm", ", N·m"],
  ["_kph", ", km/h"],
];

/** A key of a document as words: "odometer_km" is "Odometer, km". */
export const keyWords = (key: string): string => {
  const unit = UNITS.find(([suffix]) => key.endsWith(suffix));
  const stem = unit === undefined ? key : key.slice(0, -unit[0].length);
  const words = stem.replaceAll("_", " ");
  return words.charAt(0).toUpperCase() + words.slice(1) + (unit?.[1] ?? "");
};

const LABELS = new Map([...Object.entries(stageWords), ...symptoms.map(({ id, label }) => [id, label] as const)]);

/** The name of one item of a list: a word it has for itself, else everything it says. */
const itemWords = (item: unknown): string => {
  if (typeof item !== "object" || item === null) return valueWords(item);
  const entries = Object.entries(item).filter(([, value]) => value !== null);
  return entries.map(([key, value]) => `${keyWords(key).toLowerCase()} ${valueWords(value)}`).join(", ");
};

/** A value of a document as words; what is not there is "nothing". */
export const valueWords = (value: unknown): string => {
  if (value === null || value === undefined || value === "") return "nothing";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (Array.isArray(value)) return value.length === 0 ? "nothing" : value.map(itemWords).join("; ");
  if (typeof value === "object") return itemWords(value);
  const text = String(value);
  return LABELS.get(text) ?? text;
};
