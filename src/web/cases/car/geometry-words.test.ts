import { expect, test } from "vitest";
import { parseFamilyText, parseSilhouette } from "#contract";
import { demoSheetText } from "../../../../test/family-sheets/edit-sheet.ts";
import { rungWords } from "../../effect/rung-words.ts";
import { geometryWords } from "./geometry-words.ts";

test("an invented car line is not called measured, as on its own pages", () => {
  const ouzel = parseFamilyText(demoSheetText("ouzel-saloon"));
  if ("findings" in ouzel) throw new Error("refused");
  const said = geometryWords(ouzel.family);
  expect(said.toLowerCase()).toContain(rungWords("measured", true));
  expect(said).not.toContain("Measured on a car");
  expect(geometryWords({ ...ouzel.family, invented: false })).toMatch(/^Measured on a car: /);
});

test("axles that are known differently well are told apart", () => {
  const made = parseSilhouette({});
  if ("findings" in made) throw new Error("refused");
  const { family } = made;
  expect(geometryWords(family)).toMatch(/^Scaled from a template: /);
  const rear = { ...family.rear, rung: "layout" } as const;
  expect(geometryWords({ ...family, rear })).toMatch(/^Front scaled .*; rear layout only: /);
});
