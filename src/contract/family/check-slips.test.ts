import { describe, expect, it } from "vitest";
import { demoSheetText, editSheet } from "../../../test/family-sheets/edit-sheet.ts";
import { placesOf } from "./axle-places.ts";
import { checkFamily } from "./check-family.ts";
import { formatFamily, parseFamilyText, parseSilhouette, type SilhouetteSheet } from "./index.ts";
import { looseAxle } from "./loose-axle.ts";
import { computeWheelMotion, straying } from "./wheel-motion.ts";

const demo = (name: Parameters<typeof demoSheetText>[0]): unknown => JSON.parse(demoSheetText(name));
const scaled = (sheet: SilhouetteSheet): unknown => {
  const made = parseSilhouette(sheet);
  if ("findings" in made) throw new Error(JSON.stringify(made.findings));
  return JSON.parse(JSON.stringify(formatFamily(made.family)));
};
const struts = scaled({ front_layout: "strut", rear_layout: "five-link" });

/** [sheet, place, what was typed, a word of the hint]: slips whose point still lies near its wheel. */
const SLIPS: readonly (readonly [string, unknown, string, readonly number[], string])[] = [
  ["a digit too many on a leg of an arm", struts, "front.links[0].inner_mm", [-389, 353.8, 193.6], "x -38.9"],
  ["the sign of a leg", demo("ouzel-saloon"), "front.links[2].inner_mm", [-134, 386, 194.4], "x 134"],
  [
    "a leg's end at the middle of the car",
    demo("ouzel-saloon"),
    "front.links[3].inner_mm",
    [-216, 39.8, 212.9],
    "y 398",
  ],
  ["a metre on a leg", demo("dunlin-hatch"), "front.links[0].inner_mm", [998, 346, 191.1], "x -2"],
  ["a digit too few of a height", demo("dunlin-hatch"), "front.links[1].inner_mm", [-312, 372, 19.15], "z 191.5"],
  ["the sign of one end of a tie rod", demo("dunlin-hatch"), "front.links[2].inner_mm", [118, 319.9, 233.1], "x -118"],
  ["a strut that lies down", demo("dunlin-hatch"), "front.strut.top_mm", [-660, 546.2, 836], "x -66"],
  [
    "an upper joint under a lower one",
    demo("ouzel-saloon"),
    "rear.links[0].outer_mm",
    [-2748, 694, 102],
    "Check the numbers",
  ],
  ["a spring beside its seat", demo("ouzel-saloon"), "rear.spring.body_mm", [-1866, 546, 462], "x -2866"],
  ["a trailing link held behind", demo("ouzel-saloon"), "rear.links[3].inner_mm", [-3272, 590.5, 286.5], "x -2272"],
  [
    "a trailing arm held at the middle",
    demo("dunlin-hatch"),
    "rear.trailing_arm.bush_mm",
    [-2104, 60.4, 237.6],
    "y 604",
  ],
];

describe("a mistyped hard point that still lies near its wheel", () => {
  it.each(SLIPS)("%s is found at its place, with what was probably meant", (_, sheet, path, typed, hint) => {
    expect(checkFamily(sheet)).toEqual([]);
    const edited = editSheet(sheet, [{ set: path, to: typed }]);
    const findings = checkFamily(edited);
    expect(findings.map((finding) => finding.path)).toEqual([path]);
    expect(findings[0]?.hint).toContain(hint);
  });

  it.each(SLIPS)(
    "%s is taken as it is once somebody has confirmed the points of that axle, and stays so",
    (_, sheet, path, typed) => {
      const axle = path.startsWith("front") ? "front" : "rear";
      const other = axle === "front" ? "rear" : "front";
      const edited = editSheet(sheet, [{ set: path, to: typed }]);
      expect(checkFamily(editSheet(edited, [{ set: `${other}.points_confirmed`, to: true }]))).not.toEqual([]);
      const confirmed = parseFamilyText(
        JSON.stringify(editSheet(edited, [{ set: `${axle}.points_confirmed`, to: true }])),
      );
      if ("findings" in confirmed) throw new Error(JSON.stringify(confirmed.findings));
      expect(formatFamily(confirmed.family)[axle].points_confirmed).toBe(true);
    },
  );

  it("that makes the wheel run off is found by what single slip would put it right", () => {
    const [finding, ...others] = checkFamily(
      editSheet(demo("ouzel-saloon"), [{ set: "rear.links[4].inner_mm", to: [-2608, 273.9, 413.3] }]),
    );
    expect(others).toEqual([]);
    expect(finding).toMatchObject({
      code: "wheel-runs-off",
      path: "rear.links[4].inner_mm",
      hint: expect.stringContaining("Were y and z exchanged?"),
    });
  });
});

describe("what is no slip", () => {
  it("is every car the templates make at the ends of what may be entered, lowered and raised", () => {
    const pairs = [
      ["five-link", "five-link"],
      ["double-wishbone", "trailing-arm"],
      ["strut", "five-link"],
    ] as const;
    for (const [front_layout, rear_layout] of pairs)
      for (const wheelbase_mm of [1800, 3400])
        for (const track of [1250, 1850])
          for (const tyre_size of ["155/65 R13", "275/45 R21"])
            for (const lowered of [-30, 40]) {
              const entries = { front_layout, rear_layout, wheelbase_mm, tyre_size };
              const heights = { front_lowered_mm: lowered, rear_lowered_mm: lowered };
              const sheet = scaled({ ...entries, front_track_mm: track, rear_track_mm: track, ...heights });
              expect(checkFamily(sheet), JSON.stringify({ ...entries, track, lowered })).toEqual([]);
            }
  });

  it("is every invented car line, whose wheels stray less than half of what no car's do", () => {
    for (const car of ["dunlin-hatch", "ouzel-saloon", "siskin-coupe"] as const) {
      const sheet = demo(car) as Record<"front" | "rear", unknown>;
      for (const name of ["front", "rear"] as const) {
        const axle = looseAxle(name, sheet[name]);
        const motion = computeWheelMotion(axle, placesOf(axle));
        expect(motion === null ? 1 : straying(motion)).toBeLessThan(0.5);
      }
    }
  });

  it("is a point measured 20 mm off in any direction", () => {
    for (const [x, y, z] of [
      [20, 0, 0],
      [0, -20, 0],
      [0, 0, 20],
      [-20, 20, -20],
    ] as const) {
      const moved = [-216 + x, 398 + y, 212.9 + z];
      expect(checkFamily(editSheet(demo("ouzel-saloon"), [{ set: "front.links[3].inner_mm", to: moved }]))).toEqual([]);
    }
  });

  it("is an odd motion that no single slip explains", () => {
    // Both ends of the toe link raised: a car somebody built so, however it drives.
    const odd = editSheet(demo("ouzel-saloon"), [
      { set: "rear.links[4].inner_mm[2]", to: 373.9 },
      { set: "rear.links[4].outer_mm[2]", to: 258 },
    ]);
    const axle = looseAxle("rear", (odd as Record<string, unknown>).rear);
    expect(straying(computeWheelMotion(axle, placesOf(axle)) ?? "ends")).toBeGreaterThan(1);
    expect(checkFamily(odd)).toEqual([]);
  });
});
