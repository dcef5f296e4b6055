import { expect, test } from "vitest";
import { parseFamily } from "#contract";
import { demoFamilySheets } from "#demo";
import { positionsOf } from "../../src/web/car.ts";
import { alsoOf, subjectsOf } from "../../src/web/geometry/line-subjects.ts";

const parsed = parseFamily(structuredClone(demoFamilySheets["ouzel-saloon"]));
if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
const { family } = parsed;
const position = positionsOf(family).find(({ id }) => id === "rear-left/trailing-link/inner-bush") ?? null;
const torn = { kind: "torn", grade: 3 } as const;

test("a place is drawn as each kind once, and not as what it is looked at as", () => {
  const also = alsoOf(family, position, torn, "torn-2~firmer-2~firmer-3~nothing~loose-1.5", false);
  expect(also).toEqual([
    { kind: "firmer", factor: 2 },
    { kind: "loose", play: 0.0015 },
  ]);
  expect(alsoOf(family, position, null, "firmer-2", false)).toEqual([]);
  expect(alsoOf(family, position, { kind: "fluid-gone" }, "firmer-2", false)).toEqual([]);
});

test("no line is asked for that is not drawn: with the body lowered there is room for one state less", () => {
  const also = alsoOf(family, position, torn, "firmer-2~loose-1.5", true);
  expect(also.map(({ kind }) => kind)).toEqual(["firmer"]);
  expect(subjectsOf(position, torn, also, 30).map(({ kind }) => kind)).toEqual([
    "sound",
    "rubber",
    "rubber",
    "lowered",
  ]);
  expect(subjectsOf(position, null, [], undefined)).toEqual([{ kind: "sound" }]);
});
