import { describe, expect, it } from "vitest";
import { workOf } from "#vehicle";
import { demoSheetText, editSheet } from "../../../test/family-sheets/edit-sheet.ts";
import { workSheetForSlips, workSlips } from "../../../test/family-sheets/work-slips.ts";
import { checkFamily, formatFamily, parseFamily, workCodes } from "./index.ts";

const ouzel = editSheet(JSON.parse(demoSheetText("ouzel-saloon")), [{ set: "work", to: workSheetForSlips }]);

const familyOf = (sheet: unknown) => {
  const parsed = parseFamily(sheet);
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings, null, 2));
  return parsed.family;
};

describe("the work on a family sheet", () => {
  it("is read in SI, blanks stay blank, and comes back the same", () => {
    const family = familyOf(ouzel);
    expect(family.work?.limits[0]).toEqual({
      place: "disc/thickness",
      axle: "front",
      quantity: "thickness",
      lower: 0.0256,
      upper: null,
      loadState: null,
      owner: "maker",
      source: "invented",
      grade: 3,
    });
    expect(family.work?.limits[2]?.lower).toBeCloseTo(210_000, 6);
    expect(family.work?.operations[0]?.fasteners[0]?.stages).toEqual([{ torque: 70 }, { angle: Math.PI / 2 }]);
    expect(family.work?.parts[1]?.priceCents).toBeNull();
    expect(family.work?.alignment[0]).toMatchObject({ toe: null, caster: null, hubToArch: 0.362 });
    expect(familyOf(JSON.parse(JSON.stringify(formatFamily(family))))).toEqual(family);
  });

  it("is left out where nothing is on file; the usual work can be written, read and replaced", () => {
    const bare = familyOf(JSON.parse(demoSheetText("dunlin-hatch")));
    expect(bare.work).toBeNull();
    expect(formatFamily(bare)).not.toHaveProperty("work");
    const work = { ...workOf(bare), origin: "family" as const };
    const kept = { ...bare, work };
    expect(familyOf(JSON.parse(JSON.stringify(formatFamily(kept))))).toEqual(kept);
  });
});

describe("the work on a family sheet with one slip", () => {
  it("is in order without one", () => {
    expect(checkFamily(ouzel)).toEqual([]);
  });

  it.each(workSlips)("$code is said at $path", ({ code, path, edits, hint }) => {
    const findings = checkFamily(editSheet(ouzel, edits));
    const finding = findings.find((one) => one.code === code && one.path === path);
    expect(findings.map((one) => `${one.code} ${one.path}`)).toContain(`${code} ${path}`);
    expect(finding?.got).toMatch(/./);
    expect(finding?.needed).toMatch(/./);
    expect(finding?.hint).toMatch(hint ?? (Object.hasOwn(workCodes, code) ? /./ : /^/));
  });

  it("is tried for every code of the work", () => {
    const tried = new Set(workSlips.map(({ code }) => code));
    expect(Object.keys(workCodes).filter((code) => !tried.has(code))).toEqual([]);
  });

  it("has them all said at once, beside those of the axles that leave the axles readable", () => {
    const edits = workSlips.filter(({ code }) => code.startsWith("unknown-") && code !== "unknown-word");
    const findings = checkFamily(
      editSheet(
        ouzel,
        edits.flatMap((slip) => slip.edits),
      ),
    );
    const said = findings.map(({ code, path }) => `${code} ${path}`);
    for (const { code, path } of edits.filter(({ path: at }) => !at.includes("lower_bar")))
      expect(said).toContain(`${code} ${path}`);
  });
});
