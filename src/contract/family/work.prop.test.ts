import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { demoSheetText, editSheet, valueIn } from "../../../test/family-sheets/edit-sheet.ts";
import { workSheetForSlips } from "../../../test/family-sheets/work-slips.ts";
import { formatFamily, parseFamily } from "./index.ts";

const ouzel = editSheet(JSON.parse(demoSheetText("ouzel-saloon")), [{ set: "work", to: workSheetForSlips }]);

/** Every path inside the work that ends in a figure, a word, a list or an object. */
function pathsOf(value: unknown, path: string): string[] {
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => {
    const here = Array.isArray(value) ? `${path}[${key}]` : `${path}.${key}`;
    return [here, ...pathsOf(inner, here)];
  });
}

const anything = fc.oneof(
  fc.double({ noNaN: true }).map((value) => (Math.abs(value) < 1e-300 ? 0 : value)),
  fc.integer({ min: -20, max: 400 }),
  fc.constantFrom(0, -1, 1e-3, Number.MAX_VALUE, null, "", "lift", "arm", "practice", "hanging", true, false, [], {}),
  fc.array(fc.integer({ min: -40, max: 40 }), { maxLength: 3 }),
);

describe("the work on a sheet with any part replaced by anything", () => {
  it("gives findings that say where and what, or work that writes and reads back the same", () => {
    const paths = pathsOf(valueIn(ouzel, "work"), "work");
    const edits = fc.array(fc.record({ set: fc.constantFrom(...paths), to: anything }), { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(edits, (wanted) => {
        let broken: unknown = ouzel;
        for (const edit of wanted)
          if (pathsOf(valueIn(broken, "work"), "work").includes(edit.set)) broken = editSheet(broken, [edit]);
        const parsed = parseFamily(broken);
        if ("findings" in parsed) {
          expect(parsed.findings.length).toBeGreaterThan(0);
          for (const { code, path, got, needed } of parsed.findings) {
            expect([code, got, needed]).not.toContain("");
            expect(path).toMatch(/^work/);
          }
          return;
        }
        expect(parseFamily(JSON.parse(JSON.stringify(formatFamily(parsed.family))))).toEqual(parsed);
      }),
      { seed: 20310603, numRuns: 400 },
    );
  }, 60_000);
});
