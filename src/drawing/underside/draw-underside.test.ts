import { describe, expect, it } from "vitest";
import { type Family, familyFromSilhouette, positionsOf } from "#vehicle";
import { layoutFamily, sampleFamily } from "../../../test/samples/sample-family.ts";
import { belowView } from "../below/below-view.ts";
import type { PositionStates } from "../below/position-state.ts";
import { countCrossings } from "../labels/place-labels.ts";
import { badTargets, flatMarks, leadersOf, overlappingTargets, textsOf } from "../scene-checks.ts";
import { computeStyleWidth } from "../text-width.ts";
import { groupOfTarget } from "./car-targets.ts";
import { drawUnderside, type UndersideOptions } from "./draw-underside.ts";

const scaled = (front: "strut" | "five-link", rear: "trailing-arm" | "five-link"): Family => {
  const made = familyFromSilhouette({ name: "Scaled", frontLayout: front, rearLayout: rear });
  if ("findings" in made) throw new Error("the silhouette of the test is wrong");
  return made.family;
};
const families = [sampleFamily, scaled("strut", "trailing-arm"), scaled("five-link", "five-link"), layoutFamily];

/** Every fourth position found worn, every third not looked at: more findings than any car has. */
const manyFindings = (family: Family): PositionStates =>
  Object.fromEntries(
    positionsOf(family).flatMap(({ id }, i) => {
      if (i % 3 === 0) return [];
      const grade = i % 4 === 0 ? ((((i / 4) % 4) + 1) as 1 | 2 | 3 | 4) : 0;
      return [[id, { grade, sign: "worn past its limit", lines: ["4.6 mm", "limit 3.2, general practice"] }]];
    }),
  );

const rooms: readonly Pick<UndersideOptions, "width" | "height" | "type">[] = [
  { width: 1040, height: 800 },
  { width: 820, height: 560, type: "touch" },
  { width: 820, height: 1000, type: "touch" },
  { width: 1024, height: 640, type: "touch" },
  { width: 390, height: 560, type: "touch" },
];

describe("drawUnderside", { timeout: 60_000 }, () => {
  it("has no two targets that overlap and none smaller than a thumb, however much is marked", () => {
    for (const family of families) {
      const states = manyFindings(family);
      const selected =
        positionsOf(family).find(({ id }) => id.includes("lower") || id.includes("trailing"))?.id ?? null;
      for (const room of rooms) {
        const scene = drawUnderside(family, { ...room, states, selected });
        expect(overlappingTargets(scene)).toEqual([]);
        expect(badTargets(scene)).toEqual([]);
        expect(countCrossings(leadersOf(scene))).toBe(0);
      }
    }
  });

  it("offers every corner and both axles", () => {
    const { targets } = drawUnderside(sampleFamily, { width: 820, height: 560, type: "touch", states: {} });
    const groups = targets.map(({ id }) => groupOfTarget(id)).filter((group) => group !== null);
    expect(groups.toSorted()).toEqual(["front", "front-left", "front-right", "rear", "rear-left", "rear-right"]);
  });

  it("puts a label with a target at every position with a mark, and at the selected one", () => {
    const states: PositionStates = {
      "rear-left/trailing-link/inner-bush": { grade: 3, sign: "torn" },
      "front-right/pads/thickness": { grade: 2, lines: ["3.4 mm"] },
      "front-left/tyre/tread": { grade: 0 },
    };
    const scene = drawUnderside(sampleFamily, { width: 1040, height: 800, states, selected: "rear-right/spring" });
    const ids = scene.targets.map(({ id }) => id).filter((id) => groupOfTarget(id) === null);
    expect(ids.toSorted()).toEqual([
      "front-right/pads/thickness",
      "rear-left/trailing-link/inner-bush",
      "rear-right/spring",
    ]);
    const said = textsOf(scene).map(({ text }) => text);
    expect(said).toContain("Trailing link");
    expect(said).toContain("front bush, torn");
    expect(said).toContain("not looked at");
    expect(scene.targets.find(({ id }) => id === "rear-right/spring")?.selected).toBe(true);
  });

  it("writes the sides, the tracks and the wheelbase out", () => {
    const said = textsOf(drawUnderside(sampleFamily, { width: 1040, height: 800, states: null })).map(
      ({ text }) => text,
    );
    for (const words of ["Front left", "Front right", "Rear left", "Rear right", "1550", "1560"]) {
      expect(said).toContain(words);
    }
    expect(said.some((text) => text.includes("wheelbase 2760"))).toBe(true);
  });

  it("says that an axle is scaled from a template, or drawn from its layout alone, and nothing where it is measured", () => {
    const noteOf = (family: Family) =>
      textsOf(drawUnderside(family, { width: 1040, height: 800, states: null }))
        .map(({ text }) => text)
        .join(" ");
    expect(noteOf(sampleFamily)).not.toMatch(/template|layout/);
    expect(noteOf(scaled("strut", "five-link"))).toMatch(/scaled from a template/);
    expect(noteOf(layoutFamily)).toMatch(/drawn from layout, wheelbase, track and tyre only/);
  });

  it("draws an axle on rung layout from layout, wheelbase, track and tyre alone", () => {
    const options = { width: 1040, height: 800, states: null };
    const [first, ...others] = layoutFamily.front.links;
    if (first === undefined) throw new Error("the test family has links");
    const [x, y, z] = first.inner.at;
    const links = [{ ...first, inner: { ...first.inner, at: [x + 0.08, y, z] as const } }, ...others];
    const moved: Family = { ...layoutFamily, front: { ...layoutFamily.front, links } };
    expect(drawUnderside(moved, options).marks).toEqual(drawUnderside(layoutFamily, options).marks);
    const wider: Family = { ...layoutFamily, front: { ...layoutFamily.front, track: 1.6 } };
    expect(drawUnderside(wider, options).marks).not.toEqual(drawUnderside(layoutFamily, options).marks);
    const measured: Family = { ...sampleFamily, front: { ...sampleFamily.front, links } };
    expect(drawUnderside(measured, options).marks).not.toEqual(drawUnderside(sampleFamily, options).marks);
  });

  it("hatches what nobody has looked at and nothing else", () => {
    const hatched = (states: PositionStates | null) =>
      flatMarks(drawUnderside(sampleFamily, { width: 1040, height: 800, states }).marks).filter(
        (mark) => mark.kind === "path" && mark.fill === "hatch-unseen",
      ).length;
    const all = Object.fromEntries(positionsOf(sampleFamily).map(({ id }) => [id, { grade: 0 as const }]));
    expect(hatched(null)).toBe(0);
    expect(hatched(all)).toBe(0);
    expect(hatched({})).toBeGreaterThan(20);
  });

  it("rings the selected position where it lies: front up, the car's left at page right, to scale", () => {
    const ringOf = (selected: string) => {
      const scene = drawUnderside(sampleFamily, { width: 1040, height: 800, states: {}, selected });
      const ring = flatMarks(scene.marks).find(
        (mark) => mark.kind === "circle" && mark.stroke?.colour === "accent" && mark.stroke.width === 3,
      );
      if (ring?.kind !== "circle") throw new Error("no ring");
      return ring;
    };
    const left = ringOf("front-left/lower-arm/front-bush");
    const right = ringOf("front-right/lower-arm/front-bush");
    const rear = ringOf("front-left/lower-arm/rear-bush");
    expect(left.cx - 520).toBeCloseTo(520 - right.cx, 6);
    expect(left.cy).toBeCloseTo(right.cy, 6);
    expect(left.cx).toBeGreaterThan(520);
    expect(rear.cy).toBeGreaterThan(left.cy);
    const scale = (left.cx - 520) / 0.372;
    expect(rear.cy - left.cy).toBeCloseTo((0.168 + 0.182) * scale, 6);
  });
});

describe("the detail of the selected place", () => {
  const big = (selected: string | null, states: PositionStates = {}) =>
    flatMarks(
      drawUnderside(sampleFamily, {
        width: 1040,
        height: 800,
        states,
        selected,
        detail: { fault: "torn", words: "4.6 mm" },
      }).marks,
    ).filter((mark) => mark.kind === "circle" && mark.r > 40);

  it("grows beside a bush or a joint, and beside nothing else", () => {
    expect(big("rear-left/trailing-link/inner-bush")).toHaveLength(1);
    expect(big("front-right/lower-arm/ball-joint")).toHaveLength(1);
    expect(big("front-right/pads/thickness").filter((mark) => mark.kind === "circle" && mark.fill === "paper")).toEqual(
      [],
    );
    expect(big(null)).toEqual([]);
  });

  it("pushes the words of the left-out stretch aside", () => {
    const said = textsOf(
      drawUnderside(sampleFamily, {
        width: 1040,
        height: 800,
        states: {},
        selected: "rear-left/trailing-link/inner-bush",
        detail: { fault: null },
      }),
    ).find(({ text }) => text.includes("wheelbase"));
    expect(said?.anchor).toBe("start");
    expect((said?.x ?? 0) + computeStyleWidth(said?.text ?? "", "note")).toBeLessThan(520 - 54);
  });
});

describe("belowView", () => {
  it("leaves the stretch between the axles out and keeps the scale on both sides of it", () => {
    const view = belowView(100, 20, 0.4, 300, { front: -0.4, rear: -2.2, gap: 44 });
    expect(view.spot([0.4, 0.5])).toEqual([250, 20]);
    expect(view.y(-2.2) - view.y(-0.4)).toBeCloseTo(44, 9);
    expect(view.y(-3.2) - view.y(-2.2)).toBeCloseTo(300, 9);
  });
});
