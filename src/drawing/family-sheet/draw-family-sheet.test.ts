import { describe, expect, it } from "vitest";
import type { Family } from "#vehicle";
import { sampleFamily } from "../../../test/samples/sample-family.ts";
import { countCrossings } from "../labels/place-labels.ts";
import { badTargets, crowdedTexts, flatMarks, leadersOf, overlappingTargets, textsOf } from "../scene-checks.ts";
import { drawFamilySheet } from "./draw-family-sheet.ts";

const life = [
  "front/lower-arm/front-bush",
  "front/lower-arm/rear-bush",
  "front/tie-rod/outer-joint",
  "front/bar-link",
  "front/pads/thickness",
  "front/disc/thickness",
  "rear/trailing-link/inner-bush",
  "rear/toe-link/inner-bush",
  "rear/pads/thickness",
  "rear/spring",
  "rear/no-such-part",
].map((position, i) => ({
  position,
  lowKm: 30_000 + 7000 * i,
  middleKm: 50_000 + 9000 * i,
  highKm: 80_000 + 11_000 * i,
  source: "invented practice",
}));
const family: Family = { ...sampleFamily, life };

describe("drawFamilySheet", () => {
  it("has a row per position that lasts, none overlapping, leaders not crossing; a thumb's height on a tablet", () => {
    for (const room of [
      { width: 1040, height: 800 },
      { width: 820, height: 1100, type: "touch" as const },
    ]) {
      const scene = drawFamilySheet(family, room);
      expect(scene.targets).toHaveLength(10);
      expect(overlappingTargets(scene)).toEqual([]);
      if (room.type === "touch") expect(badTargets(scene)).toEqual([]);
      expect(leadersOf(scene)).toHaveLength(10);
      expect(countCrossings(leadersOf(scene))).toBe(0);
    }
  });

  it("keeps words inside and apart in narrow rooms too, names then over their bars", () => {
    const long = {
      ...family,
      life: family.life.map((entry) => ({ ...entry, source: "invented practice ".repeat(6) })),
    };
    for (const room of [
      { width: 1040, height: 800 },
      { width: 820, height: 1100, type: "touch" as const },
      { width: 640, height: 560 },
      { width: 560, height: 700, type: "touch" as const },
    ]) {
      expect(crowdedTexts(drawFamilySheet(family, room)), `${room.width}`).toEqual([]);
      expect(crowdedTexts(drawFamilySheet(long, room)), `${room.width}`).toEqual([]);
    }
  });

  it("marks every band as practice: dotted, with a dashed edge, and says who says so", () => {
    const scene = drawFamilySheet(family, { width: 1040, height: 800 });
    const bands = flatMarks(scene.marks).filter((mark) => mark.kind === "path" && mark.fill === "dots-rubber");
    expect(bands).toHaveLength(11);
    for (const band of bands) expect(band.kind === "path" && band.stroke?.dash).toEqual([3, 2.4]);
    const said = textsOf(scene).map(({ text }) => text);
    expect(said.filter((text) => text === "practice")).toHaveLength(10);
    expect(said.some((text) => text.includes("not counted here: invented practice"))).toBe(true);
  });

  it("lays bands along the scale of distance", () => {
    const scene = drawFamilySheet({ ...family, life: life.slice(0, 1) }, { width: 1040, height: 800 });
    const band = flatMarks(scene.marks).find((mark) => mark.kind === "path" && mark.fill === "dots-rubber");
    const middle = flatMarks(scene.marks).find((mark) => mark.kind === "path" && mark.stroke?.width === 2.4);
    if (band?.kind !== "path" || middle?.kind !== "path") throw new Error("no band");
    const xs = band.d
      .slice(1, -1)
      .split("L")
      .map((pair) => Number(pair.split(" ")[0]));
    const [low, high] = [Math.min(...xs), Math.max(...xs)];
    const at = Number(middle.d.slice(1).split(" ")[0]);
    expect((at - low) / (high - low)).toBeCloseTo((50 - 30) / (80 - 30), 3);
  });

  it("shows variants with what tells them apart", () => {
    const said = textsOf(drawFamilySheet(family, { width: 1040, height: 800 })).map(({ text }) => text);
    for (const words of ["Front brake", "calliper on the edge", "25 mm", "B 31", "28 mm", "B 33"]) {
      expect(said).toContain(words);
    }
  });

  it("carries a title block that says what is invented where one is wanted", () => {
    const titleBlock = { name: "Family sheet", invented: true, rows: [[{ label: "Family", value: "Test", share: 1 }]] };
    const said = textsOf(drawFamilySheet(family, { width: 1040, height: 800, titleBlock })).map(({ text }) => text);
    expect(said).toContain("everything here is invented");
  });

  it("leaves the calendar out where nothing is known of how long parts last", () => {
    const scene = drawFamilySheet({ ...family, life: [] }, { width: 1040, height: 800 });
    expect(scene.targets).toEqual([]);
    expect(textsOf(scene).map(({ text }) => text)).not.toContain("When it goes");
  });
});
