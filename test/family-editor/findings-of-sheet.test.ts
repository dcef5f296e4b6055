import { describe, expect, it } from "vitest";
import { demoFamilySheets } from "#demo";
import {
  drawnFamilyOf,
  findingsAt,
  findingsIn,
  findingsOfSheet,
  findingWords,
} from "../../src/web/editor/model/findings-of-sheet.ts";
import { pathWords } from "../../src/web/editor/model/path-words.ts";
import { parseSheetPath } from "../../src/web/editor/model/sheet-path.ts";
import { withoutEntry, withSheetValue } from "../../src/web/editor/model/sheet-value.ts";

const ID = "ouzel-saloon";
const ouzel = demoFamilySheets[ID];

describe("findings beside their fields", () => {
  it("are none where the sheet is whole", () => expect(findingsOfSheet(ouzel, ID)).toEqual([]));

  it("stand at what was typed: text in a field for a number", () => {
    const path = ["rear", "links", 3, "inner_mm", 2] as const;
    const findings = findingsOfSheet(withSheetValue(ouzel, path, "28o"), ID);
    expect(findingsIn(findings, path.slice(0, -1))).toHaveLength(1);
    expect(findings).toHaveLength(1);
    expect(findingWords(findings[0] as never)).toContain("28o");
  });

  it("stand at a point typed a metre too high, with the slip named, and the drawing keeps its last state", () => {
    const high = withSheetValue(ouzel, ["rear", "links", 3, "inner_mm", 2], 1286.5);
    const findings = findingsAt(findingsOfSheet(high, ID), ["rear", "links", 3, "inner_mm"]);
    expect(findings.map(({ code }) => code)).toEqual(["point-out-of-reach"]);
    expect(findingWords(findings[0] as never)).toContain("z 286.5 in place of 1286.5 would do");
    expect(drawnFamilyOf(high)).toBeNull();
  });

  it("speak of fields, not of the text of a file", () => {
    const point = ["rear", "links", 3, "inner_mm", 2] as const;
    const said = (path: readonly (string | number)[], value: unknown): string =>
      findingWords(findingsOfSheet(withSheetValue(ouzel, path, value), ID)[0] as never);
    expect(said(point, "1e3")).toMatch(/Write it in digits\.$/);
    expect(said(point, "286 mm")).toMatch(/Write the number alone: the field has its unit\.$/);
    expect(said(["rear", "track_mm"], null)).toBe("nothing came; a number, in millimetres was needed.");
    expect(said(point, 1286.5)).toMatch(/If the car is so, say under Axle that its points are confirmed\.$/);
  });

  it("stand at a key that was emptied", () => {
    const findings = findingsOfSheet(withSheetValue(ouzel, ["kerb_mass_kg"], undefined), ID);
    expect(findingsAt(findings, ["kerb_mass_kg"]).map(({ code }) => code)).toEqual(["missing-key"]);
  });

  it("count the constraints of an axle, and its drawing stays as it was", () => {
    const short = withoutEntry(ouzel, ["rear", "links"], 0);
    expect(findingsAt(findingsOfSheet(short, ID), ["rear", "links"]).map(({ code }) => code)).toEqual([
      "too-few-constraints",
    ]);
    expect(drawnFamilyOf(short)).toBeNull();
  });

  it("in the work do not hinder the drawing", () => {
    const priced = withSheetValue(ouzel, ["work", "parts", 0, "price_cents"], "dear");
    expect(findingsOfSheet(priced, ID).map(({ path }) => path)).toEqual(["work.parts[0].price_cents"]);
    expect(drawnFamilyOf(priced)?.rear.links).toHaveLength(5);
  });

  it("keep a sheet under its own id", () => {
    expect(findingsOfSheet(ouzel, "other").map(({ code, path }) => [code, path])).toEqual([
      ["id-not-of-address", "id"],
    ]);
  });

  it.each([
    ["", "The whole sheet"],
    ["rear.links[3].inner_mm[2]", "Rear, Trailing link, Inner, z"],
    ["kerb_mass_kg", "Kerb mass"],
    ["work.parts[999].id", "Parts, 1000, Name others refer to"],
  ])("are named as the page names their place: %j", (path, words) => {
    expect(pathWords(ouzel, parseSheetPath(path) ?? [])).toBe(words);
  });
});
