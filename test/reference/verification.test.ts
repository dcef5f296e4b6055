import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { absolute, Score, statedDigits, wholeDigits } from "./score.ts";
import { suites } from "./suites.ts";
import { formatVerification, parseVerification, verificationPath } from "./verification-page.ts";

const [suite] = suites;

describe("the verification page", () => {
  const page = readFileSync(verificationPath, "utf8");

  it("has a heading for every suite and for nothing else", () => {
    const headings = page.split("\n").flatMap((line) => (line.startsWith("## ") ? [line.slice(3)] : []));
    expect(headings).toEqual(suites.map((s) => s.title));
  });

  it("never states more than 12 digits", () => {
    const digits = parseVerification(page).flatMap((row) => (row.digits === null ? [] : [row.digits]));
    expect(digits.length).toBeGreaterThan(50);
    expect(Math.max(...digits)).toBeLessThanOrEqual(12);
  });

  it("reads back what it writes", () => {
    const score = new Score("a check", "a source");
    score.compare("a quantity", 1 + 2e-8, 1, absolute(1e-6));
    score.compare("a quantity", 2, 2, absolute(1e-6));
    score.agree("an answer", true);
    if (!suite) throw new Error("no suite");
    expect(parseVerification(formatVerification([[suite, score.rows()]]))).toEqual([
      { check: "a check", quantity: "a quantity", cases: 2, digits: 7 },
      { check: "a check", quantity: "an answer", cases: 1, digits: null },
    ]);
  });
});

describe("the score", () => {
  const rowOf = (got: unknown, want: number, most: number) => {
    const score = new Score("a check", "a source");
    score.compare("a quantity", got, want, absolute(most));
    const [row] = score.rows();
    if (!row) throw new Error("no row");
    return row;
  };

  it("counts what is not a finite number as infinitely far off", () => {
    for (const got of [undefined, null, "1", Number.NaN, Number.POSITIVE_INFINITY])
      expect(rowOf(got, 1, 1e-6).worst).toBe(Number.POSITIVE_INFINITY);
  });

  it("rounds digits down", () => {
    expect(wholeDigits(rowOf(1 + 1.1e-6, 1, 0.5))).toBe(5);
    expect(wholeDigits(rowOf(1 + 0.9e-6, 1, 0.5))).toBe(6);
    expect(statedDigits(rowOf(1 + 0.9e-6, 1, 0.5))).toBe(5);
  });

  it("gives no digits for a value that is nought", () => {
    expect(rowOf(1e-12, 0, 1e-9).digits).toBeNull();
  });

  it("counts answers that differ", () => {
    const score = new Score("a check", "a source");
    score.agree("an answer", true);
    score.agree("an answer", false);
    expect(score.rows()[0]?.worst).toBe(1);
  });
});
