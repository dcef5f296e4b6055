import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type Axle, idWithoutSide, positionsOf } from "#vehicle";
import { formatFamily, parseFamily, parseFamilyText } from "./index.ts";

const folder = new URL("../../demo/families/", import.meta.url);
const texts = readdirSync(folder)
  .sort()
  .map((file) => readFileSync(new URL(file, folder), "utf8"));
const families = texts.map((text) => {
  const parsed = parseFamilyText(text);
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings, null, 2));
  return parsed.family;
});

describe("the demo families", () => {
  it("are three, with the layouts of the scenario, all invented", () => {
    const layouts = families.map(({ id, front, rear }) => [id, front.layout, rear.layout]);
    expect(layouts).toEqual([
      ["dunlin-hatch", "strut", "trailing-arm"],
      ["ouzel-saloon", "double-wishbone", "five-link"],
      ["siskin-coupe", "five-link", "five-link"],
    ]);
    for (const { invented, note } of families) {
      expect(invented).toBe(true);
      expect(note).toMatch(/^Invented/);
    }
  });

  it.each(families)("$name is the same family when written and read again, to the double", (family) => {
    const again = parseFamily(JSON.parse(JSON.stringify(formatFamily(family))));
    expect(again).toEqual({ family });
  });

  it.each(families)("$name keeps what its sheet says", (family) => {
    const sheets = texts.map(
      (text) => JSON.parse(text) as { id: string; wheelbase_mm: number; front: { links: { inner_mm: number[] }[] } },
    );
    const sheet = sheets.find(({ id }) => id === family.id);
    if (!sheet) throw new Error("a family without its sheet");
    expect(family.wheelbase * 1000).toBeCloseTo(sheet.wheelbase_mm, 9);
    expect(family.front.links[0]?.inner.at.map((metres) => metres * 1000)).toEqual(
      sheet.front.links[0]?.inner_mm.map((mm) => expect.closeTo(mm, 9)),
    );
  });

  it.each(families)("$name stands with both tyres on the ground, pressed in by 5 to 20 mm", (family) => {
    for (const axle of [family.front, family.rear]) {
      const { centre, camber, loadedRadius, freeRadius } = axle.wheel;
      expect(centre[2] - loadedRadius * Math.cos(camber)).toBeCloseTo(0, 9);
      expect(freeRadius - loadedRadius).toBeGreaterThan(0.005);
      expect(freeRadius - loadedRadius).toBeLessThan(0.02);
    }
  });

  it.each(families)(
    "$name has about a dozen lives from practice, each on a position it has, and unique positions",
    (family) => {
      const positions = positionsOf(family);
      const known = new Set(positions.map(idWithoutSide));
      expect(new Set(positions.map(({ id }) => id)).size).toBe(positions.length);
      expect(family.life.length).toBeGreaterThanOrEqual(12);
      for (const { position, source } of family.life) {
        expect(known).toContain(position);
        expect(source).toMatch(/practice/);
      }
    },
  );

  it.each(families)("$name says for every rubber bush what share of its rate a torn one keeps", (family) => {
    for (const bush of bushesOf(family.front).concat(bushesOf(family.rear))) {
      expect(Object.keys(bush.tornShare ?? {})).toEqual(["1", "2", "3"]);
      expect(bush.radial).toBeGreaterThan(0);
    }
  });
});

function bushesOf(axle: Axle) {
  const mounts = [axle.strut?.topMount, axle.trailingArm?.bushJoint].filter((joint) => joint !== undefined);
  return axle.links
    .flatMap(({ innerJoint, outerJoint }) => [innerJoint, outerJoint])
    .concat(mounts)
    .filter(({ kind }) => kind === "bush" || kind === "hydraulic-bush");
}
