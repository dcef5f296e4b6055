import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type Row, wholeDigits } from "./score.ts";
import type { Suite } from "./suites.ts";
import { parseVerification, verificationPath } from "./verification-page.ts";

/** Tests of one suite: every row within its tolerance, and stated on the page with no more digits than measured. */
export function checkSuite(suite: Suite): void {
  describe(suite.title, () => {
    const rows = suite.score();
    const stated = parseVerification(readFileSync(verificationPath, "utf8"));
    const of = (row: Row) => stated.filter((s) => s.check === row.check && s.quantity === row.quantity);

    it.each(rows.map((row) => [`${row.check}: ${row.quantity}`, row] as const))("%s", (_, row) => {
      expect(row.cases).toBeGreaterThan(0);
      expect(row.worst).toBeLessThanOrEqual(row.tolerance.most);
    });

    it("stands on the verification page with every row, once", () => {
      const missing = rows.filter((row) => of(row).length !== 1 || of(row)[0]?.cases !== row.cases);
      expect(
        missing.map((row) => `${row.check}: ${row.quantity}`),
        "run npx tsx tools/write-verification.ts",
      ).toEqual([]);
    });

    it("is not stated with more digits than were measured", () => {
      const tooMany = rows.filter((row) => (of(row)[0]?.digits ?? 0) > (wholeDigits(row) ?? 0));
      expect(tooMany.map((row) => `${row.check}: ${row.quantity}`)).toEqual([]);
    });

    it("has no line on the page that no test gives", () => {
      const checks = new Set(rows.map((row) => row.check));
      const given = new Set(rows.map((row) => `${row.check}: ${row.quantity}`));
      const own = stated.filter((s) => checks.has(s.check)).map((s) => `${s.check}: ${s.quantity}`);
      expect(own.filter((name) => !given.has(name))).toEqual([]);
    });
  });
}
