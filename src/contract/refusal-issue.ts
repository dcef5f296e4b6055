import type { z } from "zod";
import type { Finding } from "#numeric";
import { findNearest } from "./edit-distance.ts";
import { hintRange, hintType } from "./refusal-hint.ts";
import { exactLengthAt } from "./refusal-schema.ts";
import { describeKind, describeUnit, describeValue } from "./refusal-words.ts";
import { formatPath, valueAt } from "./wire-path.ts";

/**
 * A schema's own check says what it found by `ctx.addIssue({ code: "custom", params: { finding: { ... } } })`;
 * what it leaves out is filled from the place of the issue.
 */
export interface CustomIssueParams {
  readonly finding: Partial<Omit<Finding, "path">>;
}

type Issue = z.core.$ZodIssue;

const isNumeric = (kind: string): boolean => kind === "number" || kind === "int";

const needOneOf = (values: readonly unknown[]): string =>
  values.length === 1 ? describeValue(values[0]) : `one of: ${values.map(describeValue).join(", ")}`;

/** "Did you mean" for a word that is near one of those allowed. */
const hintNearestWord = (given: unknown, values: readonly unknown[]): string => {
  if (typeof given !== "string") return "";
  const words = values.filter((value) => typeof value === "string");
  const nearest = findNearest(given, words);
  return nearest === null ? "" : `The nearest is ${JSON.stringify(nearest)}.`;
};

const countOf = (count: number | bigint, origin: string): string => {
  const one = Number(count) === 1;
  return origin === "string" ? `${count} ${one ? "letter" : "letters"}` : `${count} ${one ? "entry" : "entries"}`;
};

/** The alternative of a union the writer most likely meant: the right kind of value first, then the fewest objections. */
const likeliestAlternative = (alternatives: readonly (readonly Issue[])[]): readonly Issue[] | null => {
  const rootMismatch = (issues: readonly Issue[]): boolean =>
    issues.some(
      (issue) => issue.path.length === 0 && (issue.code === "invalid_type" || issue.code === "invalid_value"),
    );
  const fitting = alternatives.filter((issues) => !rootMismatch(issues));
  const weight = (issues: readonly Issue[]): number =>
    issues.reduce((sum, issue) => sum + (issue.code === "invalid_value" ? 10 : 1), 0);
  return fitting.reduce<readonly Issue[] | null>(
    (best, issues) => (best === null || weight(issues) < weight(best) ? issues : best),
    null,
  );
};

/** What each alternative needs where none has the right kind: "a number or text in double quotes". */
const needAnyOf = (alternatives: readonly (readonly Issue[])[]): string => {
  const needs = alternatives.flatMap((issues) => {
    const first = issues[0];
    if (first?.code === "invalid_type") return [describeKind(first.expected)];
    if (first?.code === "invalid_value") return [needOneOf(first.values)];
    return [];
  });
  return needs.length === 0 ? "another form" : [...new Set(needs)].join(" or ");
};

/** What was checked, and against what. */
export interface CheckedDocument {
  readonly schema: z.ZodType;
  readonly document: unknown;
}

/**
 * Puts the objections of a schema into findings (unknown keys excepted: they need the known ones beside them).
 * `above` is the path of the part the issue speaks of; paths of findings are absolute.
 */
export const findingsOfIssue = (
  issue: Issue,
  checked: CheckedDocument,
  above: readonly PropertyKey[],
): readonly Finding[] => {
  const { document } = checked;
  const path = [...above, ...issue.path];
  const at = formatPath(path);
  const given = valueAt(document, path);
  const got = describeValue(given);
  const parent = valueAt(document, path.slice(0, -1));
  const finding = (code: string, needed: string, hint = ""): Finding[] => [{ code, path: at, got, needed, hint }];
  if (given === undefined && path.length > 0 && issue.code !== "custom" && !Array.isArray(parent)) {
    return finding("missing-key", needOf(issue, path));
  }
  switch (issue.code) {
    case "invalid_type":
    case "invalid_value":
      return finding(
        issue.code === "invalid_type" ? "wrong-type" : "unknown-word",
        needOf(issue, path),
        issue.code === "invalid_type" ? hintType(given, issue.expected) : hintNearestWord(given, issue.values),
      );
    case "too_small":
    case "too_big": {
      const lower = issue.code === "too_small";
      const bound = lower ? issue.minimum : issue.maximum;
      const words = lower ? (issue.inclusive ? "at least" : "more than") : issue.inclusive ? "at most" : "less than";
      if (isNumeric(issue.origin)) {
        return finding("out-of-range", `${words} ${bound}${describeUnit(path)}`, hintRange(given, Number(bound), path));
      }
      const exact = issue.exact ? bound : exactLengthAt(checked.schema, path, document);
      const count =
        exact === null ? `${words} ${countOf(bound, issue.origin)}` : `exactly ${countOf(exact, issue.origin)}`;
      return finding("wrong-length", `${count}${describeUnit(path)}`);
    }
    case "not_multiple_of":
      return finding("out-of-range", `a multiple of ${issue.divisor}${describeUnit(path)}`);
    case "invalid_format":
      return finding("wrong-format", needFormat(issue));
    case "invalid_union":
      return findingsOfUnion(issue, checked, path, finding);
    case "invalid_key":
    case "invalid_element":
      return issue.issues.flatMap((inner) => findingsOfIssue(inner, checked, path));
    case "unrecognized_keys":
      return [];
    case "custom": {
      const said = (issue.params as CustomIssueParams | undefined)?.finding;
      return [{ code: "not-consistent", path: at, got, needed: issue.message, hint: "", ...said }];
    }
  }
};

const findingsOfUnion = (
  issue: z.core.$ZodIssueInvalidUnion,
  checked: CheckedDocument,
  path: readonly PropertyKey[],
  finding: (code: string, needed: string, hint?: string) => readonly Finding[],
): readonly Finding[] => {
  const given = valueAt(checked.document, path);
  if ("options" in issue && issue.options !== undefined && issue.errors.length === 0) {
    return finding("unknown-word", needOneOf(issue.options), hintNearestWord(given, issue.options));
  }
  const words = issue.errors.map((issues) => (issues[0]?.code === "invalid_value" ? issues[0].values : null));
  if (words.every((values) => values !== null)) {
    return finding("unknown-word", needOneOf(words.flat()), hintNearestWord(given, words.flat()));
  }
  const meant = likeliestAlternative(issue.errors);
  if (meant === null) return finding("wrong-type", needAnyOf(issue.errors));
  return meant.flatMap((inner) => findingsOfIssue(inner, checked, path));
};

/** Unknown keys of an issue and of the likeliest alternative inside a union, with the path of the object they stand in. */
export const unknownKeysOfIssue = (
  issue: Issue,
  above: readonly PropertyKey[],
): readonly { readonly path: readonly PropertyKey[]; readonly keys: readonly string[] }[] => {
  const path = [...above, ...issue.path];
  if (issue.code === "unrecognized_keys") return [{ path, keys: issue.keys }];
  if (issue.code !== "invalid_union") return [];
  return (likeliestAlternative(issue.errors) ?? []).flatMap((inner) => unknownKeysOfIssue(inner, path));
};

const needOf = (issue: Issue, path: readonly PropertyKey[]): string => {
  if (issue.code === "invalid_type") {
    return `${describeKind(issue.expected)}${isNumeric(issue.expected) ? describeUnit(path) : ""}`;
  }
  if (issue.code === "invalid_value") return needOneOf(issue.values);
  if (issue.code === "invalid_union") {
    return "options" in issue && issue.options !== undefined && issue.errors.length === 0
      ? needOneOf(issue.options)
      : needAnyOf(issue.errors);
  }
  return "a value";
};

const needFormat = (issue: z.core.$ZodIssueInvalidStringFormat): string => {
  if (issue.format === "date") return "a date like 2031-05-14";
  if (issue.format === "regex" && issue.message !== "" && !issue.message.startsWith("Invalid")) return issue.message;
  return issue.pattern === undefined ? `text in the form ${issue.format}` : `text of the form ${issue.pattern}`;
};
