import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assembleCorner, positionsOf } from "#vehicle";
import { demoSheetText, editSheet } from "../../../test/family-sheets/edit-sheet.ts";
import { formatFamily, parseFamily } from "./index.ts";

const sheets = (["siskin-coupe", "dunlin-hatch", "ouzel-saloon"] as const).map((name): unknown =>
  JSON.parse(demoSheetText(name)),
);

/** Every path of a document that ends in a figure, a word, a list or an object, inside lists and objects. */
function pathsOf(value: unknown, path = ""): string[] {
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => {
    const here = Array.isArray(value) ? `${path}[${key}]` : path === "" ? key : `${path}.${key}`;
    return [here, ...pathsOf(inner, here)];
  });
}

/** Any figure; one so small that it vanishes in metres would come back as the other zero. */
const figure = fc.double({ noNaN: true }).map((value) => (Math.abs(value) < 1e-300 ? 0 : value));
const anything = fc.oneof(
  figure,
  fc.constantFrom(0, -1, 1e-3, 1e6, Number.MAX_VALUE, Number.POSITIVE_INFINITY, null, "", "bush", true, false),
  fc.constant([]),
  fc.constant({}),
  fc.array(
    fc.integer({ min: -30_000, max: 30_000 }).map((tenths) => tenths / 10),
    { maxLength: 4 },
  ),
);

/** True where every number anywhere in a value is finite. */
function allFinite(value: unknown): boolean {
  if (typeof value === "number") return Number.isFinite(value);
  return typeof value !== "object" || value === null || Object.values(value).every(allFinite);
}

describe("a family sheet with any part replaced by anything", () => {
  it("gives findings that say where and what, or a family without a hole that writes and reads back the same", () => {
    const slip = fc.constantFrom(...sheets).chain((sheet) => {
      const paths = pathsOf(sheet);
      const edit = fc.record({ set: fc.constantFrom(...paths), to: anything });
      return fc.record({ sheet: fc.constant(sheet), edits: fc.array(edit, { minLength: 1, maxLength: 3 }) });
    });
    fc.assert(
      fc.property(slip, ({ sheet, edits }) => {
        let broken: unknown = sheet;
        for (const edit of edits) if (pathsOf(broken).includes(edit.set)) broken = editSheet(broken, [edit]);
        const parsed = parseFamily(broken);
        if ("findings" in parsed) {
          expect(parsed.findings.length).toBeGreaterThan(0);
          for (const { code, got, needed } of parsed.findings) expect([code, got, needed]).not.toContain("");
          return;
        }
        const { family } = parsed;
        expect(allFinite(family)).toBe(true);
        expect(allFinite(positionsOf(family))).toBe(true);
        for (const corner of ["front-left", "rear-right"] as const)
          expect(allFinite(assembleCorner(family, corner))).toBe(true);
        expect(parseFamily(JSON.parse(JSON.stringify(formatFamily(family))))).toEqual({ family });
      }),
      { seed: 20310514, numRuns: 300 },
    );
  }, 60_000);
});
