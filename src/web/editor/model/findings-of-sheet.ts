import { checkFamily, type Finding, parseKeptFamily } from "#contract";
import type { Family } from "../../car.ts";
import { formatSheetPath, isAtOrIn, type SheetPath } from "./sheet-path.ts";
import { isKeyed } from "./sheet-value.ts";

/** Everything that keeps the sheet from being kept under an id; none: it can be. */
export const findingsOfSheet = (sheet: unknown, id: string): readonly Finding[] => {
  const findings = checkFamily(sheet);
  const own = isKeyed(sheet) ? sheet.id : undefined;
  if (own === id || findings.some(({ path }) => path === "id")) return findings;
  return [
    ...findings,
    {
      code: "id-not-of-address",
      path: "id",
      got: String(own),
      needed: id,
      hint: "A family is saved under its own id.",
    },
  ];
};

/** Findings of one place and of everything in it. */
export const findingsIn = (findings: readonly Finding[], path: SheetPath): readonly Finding[] => {
  const place = formatSheetPath(path);
  return findings.filter((finding) => isAtOrIn(finding.path, place));
};

/** Findings of one place itself. */
export const findingsAt = (findings: readonly Finding[], path: SheetPath): readonly Finding[] => {
  const place = formatSheetPath(path);
  return findings.filter((finding) => finding.path === place);
};

/** Hints that speak of the text of a file, and what a person in front of fields is told instead. */
const FILE_HINTS: readonly (readonly [ofFile: string, ofField: string])[] = [
  ["Write the number without quotes and with a decimal point.", "Write it with a point before decimals."],
  ["Write the number without quotes.", "Write it in digits."],
  [
    "Write the number alone, without quotes: its unit stands in the key.",
    "Write the number alone: the field has its unit.",
  ],
  ["Leave the key out where there is nothing to say.", ""],
  [
    'If the car is so, write "points_confirmed": true on this axle.',
    "If the car is so, say under Axle that its points are confirmed.",
  ],
];

const hintOfField = (hint: string): string =>
  FILE_HINTS.reduce((said, [ofFile, ofField]) => said.replace(ofFile, ofField), hint).trim();

/** A finding as one says it beside the field: what came, what was needed, what to do. */
export const findingWords = ({ got, needed, hint }: Finding): string =>
  [`${got === "null" ? "nothing" : got} came; ${needed} was needed.`, hintOfField(hint)]
    .filter((part) => part !== "")
    .join(" ");

/** What of a sheet can be drawn, doubtful or not; null where its linkages do not close. What is wrong with work, life and variants does not hinder it. */
export const drawnFamilyOf = (sheet: unknown): Family | null => {
  if (!isKeyed(sheet)) return null;
  const { work: _work, life: _life, variants: _variants, ...drawn } = sheet;
  const parsed = parseKeptFamily(drawn);
  return "findings" in parsed ? null : parsed.family;
};
