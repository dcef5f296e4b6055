import type { z } from "zod";
import type { Finding } from "#numeric";
import type { JsonReading } from "./read-json.ts";
import { findingsOfIssue, unknownKeysOfIssue } from "./refusal-issue.ts";
import { unknownKeyFinding } from "./refusal-key.ts";
import { checkNumbers } from "./refusal-number.ts";
import { knownKeysAt } from "./refusal-schema.ts";
import { formatPath, valueAt } from "./wire-path.ts";

/** What outside data came to: the value, or everything that is wrong with it. */
export type Parsed<T> = { readonly value: T } | { readonly findings: readonly Finding[] };

/** More findings than anyone reads; the last one says how many were left out. */
const mostFindings = 200;

const nothingThere = "nothing";

/** Findings for the keys nobody reads, and by path which of them stands where a missing key was meant. */
const checkKeys = <T>(
  schema: z.ZodType<T>,
  document: unknown,
  issues: readonly z.core.$ZodIssue[],
): { readonly findings: readonly Finding[]; readonly meant: ReadonlyMap<string, string> } => {
  const findings: Finding[] = [];
  const meant = new Map<string, string>();
  for (const { path, keys } of issues.flatMap((issue) => unknownKeysOfIssue(issue, []))) {
    if (findings.length > mostFindings) break;
    const known = knownKeysAt(schema, path, document);
    const here = valueAt(document, path) ?? {};
    const open = known.filter((key) => !Object.hasOwn(here, key));
    for (const key of keys.slice(0, mostFindings)) {
      const unknown = unknownKeyFinding(key, formatPath([...path, key]), known, open);
      findings.push(unknown.finding);
      if (unknown.meant !== null) meant.set(formatPath([...path, unknown.meant]), key);
    }
  }
  return { findings, meant };
};

/** One finding per place: the first that was said there, misread kinds before everything derived from them. */
const onePerPlace = (findings: readonly Finding[]): readonly Finding[] => {
  const said = new Set<string>();
  return findings.filter(({ path, code }) => {
    const place = code === "duplicate-key" ? `${path}\u0000${code}` : path;
    if (said.has(place)) return false;
    said.add(place);
    return true;
  });
};

/** Cuts a list of findings to what can be read and says in the last one how many there were. */
export const limitFindings = (findings: readonly Finding[]): readonly Finding[] => {
  if (findings.length <= mostFindings) return findings;
  const rest = findings.length - mostFindings;
  return [
    ...findings.slice(0, mostFindings),
    {
      code: "too-many-findings",
      path: "",
      got: `at least ${rest} more findings`,
      needed: "a document in the form of the schema",
      hint: "Settle these first.",
    },
  ];
};

/**
 * Checks a value from outside against a schema: its value in the schema's type, or every finding at once
 * (numbers no car has, unknown and misspelt keys, missing keys, wrong kinds, values out of range).
 * `before` are findings the reading of the text already gave.
 */
export const parseWire = <T>(schema: z.ZodType<T>, document: unknown, before: readonly Finding[] = []): Parsed<T> => {
  const numbers = checkNumbers(document, mostFindings + 1);
  const checked = schema.safeParse(document);
  if (checked.success && numbers.length === 0 && before.length === 0) return { value: checked.data };
  const issues = checked.success ? [] : checked.error.issues;
  const keys = checkKeys(schema, document, issues);
  const values: Finding[] = [];
  for (const issue of issues) {
    if (values.length > mostFindings) break;
    for (const finding of findingsOfIssue(issue, { schema, document }, [])) {
      const stands = finding.code === "missing-key" ? keys.meant.get(finding.path) : undefined;
      values.push(
        stands === undefined ? finding : { ...finding, got: nothingThere, hint: `${stands} stands there instead.` },
      );
    }
  }
  return { findings: limitFindings(onePerPlace([...before, ...numbers, ...keys.findings, ...values])) };
};

/** Like parseWire, for a text that has been read as JSON. */
export const parseReading = <T>(
  schema: z.ZodType<T>,
  reading: JsonReading,
  before: readonly Finding[] = [],
): Parsed<T> =>
  reading.readable
    ? parseWire(schema, reading.value, [...reading.findings, ...before])
    : { findings: reading.findings };
