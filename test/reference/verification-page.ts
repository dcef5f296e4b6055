import { fileURLToPath } from "node:url";
import { type Row, statedDigits, type Tolerance } from "./score.ts";
import type { Suite } from "./suites.ts";

export const verificationPath = fileURLToPath(new URL("../../docs/verification.md", import.meta.url));

/** A line of the page, taken apart. */
export interface StatedRow {
  readonly check: string;
  readonly quantity: string;
  readonly cases: number;
  readonly digits: number | null;
}

const kinds: Readonly<Record<Tolerance["kind"], string>> = {
  absolute: "",
  relative: " relative",
  "relative-above-one": " relative above 1",
  identical: "",
};

/** One significant digit, rounded up. */
function formatWorst(worst: number): string {
  if (worst === 0) return "0";
  const power = Math.floor(Math.log10(worst));
  const lead = Math.ceil(worst / 10 ** power - 1e-9);
  return lead === 10 ? `1e${power + 1}` : `${lead}e${power}`;
}

function formatRow(row: Row): string {
  const same = row.tolerance.kind === "identical";
  const digits = statedDigits(row);
  const cells = [
    row.check,
    row.quantity,
    String(row.cases),
    same ? `${row.worst} differ` : formatWorst(row.worst),
    same ? "none" : `${formatWorst(row.tolerance.most)}${kinds[row.tolerance.kind]}`,
    digits === null ? "-" : String(digits),
  ];
  return `| ${cells.join(" | ")} |`;
}

/** The page, from the suites and the rows they gave. */
export function formatVerification(scored: readonly (readonly [Suite, readonly Row[]])[]): string {
  const parts = scored.map(
    ([suite, rows]) => `## ${suite.title}

${suite.about}

| check | quantity | figures | worst difference | tolerance | digits |
|---|---|---|---|---|---|
${rows.map(formatRow).join("\n")}
`,
  );
  return `# Verification

What the program computes, held against figures that were computed or printed elsewhere. Written from the tests by
\`npx tsx tools/write-verification.ts\`; a test holds this page against what the tests measure.

Worst difference is in the unit of the quantity, or relative where the tolerance is. Digits: the agreeing digits of the
worst figure, -log10 of its relative difference, rounded down with 0.3 in hand, at most 12 (a figure below the median of its quantity
counts as the median where the tolerance is absolute). A dash stands where answers are the same or not, and where the
true value is nought.

${parts.join("\n")}`;
}

/** The lines of the page, for the test that holds them against the measured ones. */
export function parseVerification(page: string): readonly StatedRow[] {
  return page.split("\n").flatMap((line) => {
    const cells = line.split("|").map((cell) => cell.trim());
    const [, check, quantity, figures, , , digits] = cells;
    if (cells.length !== 8 || check === undefined || quantity === undefined) return [];
    const cases = Number(figures);
    if (!Number.isInteger(cases)) return [];
    return [{ check, quantity, cases, digits: digits === "-" ? null : Number(digits) }];
  });
}
