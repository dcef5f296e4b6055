import { describe, expect, it } from "vitest";
import { type Corner, type Family, familyFromSilhouette, positionsOf } from "#vehicle";
import { layoutFamily, sampleFamily } from "../../../test/samples/sample-family.ts";
import type { PositionStates } from "../below/position-state.ts";
import { countCrossings } from "../labels/place-labels.ts";
import { nearestPoint } from "../nearest-point.ts";
import type { Scene } from "../scene.ts";
import { badTargets, leadersOf, overlappingTargets, textsOf } from "../scene-checks.ts";
import { computeStyleWidth } from "../text-width.ts";
import { groupOf } from "../underside/car-targets.ts";
import { axlePositionsOf, drawAxle } from "./draw-axle.ts";
import { type CornerOptions, cornerPositions, drawCorner } from "./draw-corner.ts";

const scaled = (front: "strut" | "five-link", rear: "trailing-arm" | "five-link"): Family => {
  const made = familyFromSilhouette({ frontLayout: front, rearLayout: rear, drivenAxle: "both" });
  if ("findings" in made) throw new Error("the silhouette of the test is wrong");
  return made.family;
};
const families = [sampleFamily, scaled("strut", "trailing-arm"), scaled("five-link", "five-link"), layoutFamily];
const corners: readonly Corner[] = ["front-left", "front-right", "rear-left", "rear-right"];
const rooms: readonly Pick<CornerOptions, "width" | "height" | "type">[] = [
  { width: 820, height: 1180, type: "touch" },
  { width: 820, height: 900, type: "touch" },
  { width: 1024, height: 768, type: "touch" },
  { width: 1040, height: 800 },
];
const states: PositionStates = {
  "rear-left/trailing-link/inner-bush": { grade: 3, sign: "torn", lines: ["4.6 mm", "limit 3.2, general practice"] },
  "rear-left/pads/thickness": { grade: 2, lines: ["3.4 mm"] },
};

/** Words that begin in a row and reach out of it. */
function wordsOutside(scene: Scene): readonly string[] {
  return textsOf(scene).flatMap(({ x, y, text, style }) => {
    const row = scene.targets.find((t) => x > t.x && x < t.x + t.width && y > t.y && y < t.y + t.height);
    const end = x + computeStyleWidth(text, style, scene.type);
    return row !== undefined && end > row.x + row.width + 1 ? [text] : [];
  });
}

describe("drawCorner", { timeout: 60_000 }, () => {
  it("gives every position of the corner a row of at least 48, none overlapping, no leaders crossing", () => {
    for (const family of families) {
      for (const corner of corners) {
        const positions = cornerPositions(family, corner);
        for (const room of rooms) {
          const scene = drawCorner(family, corner, { ...room, states, selected: positions[0]?.id ?? null });
          expect(scene.height).toBe(room.height);
          expect(scene.targets.map(({ id }) => id).toSorted()).toEqual(positions.map(({ id }) => id).toSorted());
          expect(overlappingTargets(scene)).toEqual([]);
          expect(badTargets(scene)).toEqual([]);
          if (family !== layoutFamily) expect(leadersOf(scene)).toHaveLength(positions.length);
          expect(wordsOutside(scene)).toEqual([]);
          expect(countCrossings(leadersOf(scene))).toBe(0);
        }
      }
    }
  });

  it("lets every drawn place be pressed where it lies; of two that lie close the nearer one is meant", () => {
    for (const family of families) {
      for (const corner of corners) {
        const scene = drawCorner(family, corner, { width: 1024, height: 768, type: "touch", states });
        const placed = cornerPositions(family, corner).filter(({ at }) => at !== null);
        // Of a car known by its layout alone not every place is drawn.
        if (family !== layoutFamily) expect(scene.points).toHaveLength(placed.length);
        expect(scene.points?.length).toBeGreaterThan(4);
        for (const { id, x, y } of scene.points ?? []) {
          const same = scene.points?.filter((other) => Math.hypot(other.x - x, other.y - y) < 0.5) ?? [];
          expect(same.map((other) => other.id)).toContain(nearestPoint(scene, x, y));
          expect(scene.targets.some((t) => t.id === id)).toBe(true);
          const covered = scene.targets.find((t) => x > t.x && x < t.x + t.width && y > t.y && y < t.y + t.height);
          expect(covered?.id).toBeUndefined();
        }
        expect(nearestPoint(scene, -100, -100)).toBeNull();
      }
    }
  });

  it("grows instead of letting rows overlap where the room is too low", () => {
    const scene = drawCorner(sampleFamily, "rear-left", { width: 820, height: 300, type: "touch", states });
    expect(scene.height).toBeGreaterThan(300);
    expect(overlappingTargets(scene)).toEqual([]);
    expect(badTargets(scene)).toEqual([]);
  });

  it("keeps the rows and leaves the drawing out where there is no room for one", () => {
    const scene = drawCorner(sampleFamily, "rear-left", { width: 280, height: 600, type: "touch", states });
    expect(scene.targets).toHaveLength(cornerPositions(sampleFamily, "rear-left").length);
    expect(overlappingTargets(scene)).toEqual([]);
    expect(badTargets(scene)).toEqual([]);
    expect(leadersOf(scene)).toEqual([]);
    expect(scene.scale).toBeUndefined();
  });

  it("writes mark and reading at the rows that have one", () => {
    const scene = drawCorner(sampleFamily, "rear-left", { width: 820, height: 900, type: "touch", states });
    const said = textsOf(scene).map(({ text }) => text);
    expect(said.some((text) => text.includes("torn"))).toBe(true);
    expect(said.some((text) => text.includes("3.4 mm"))).toBe(true);
    const row = scene.targets.find(({ id }) => id === "rear-left/trailing-link/inner-bush");
    expect(row?.name).toBe(
      "Rear left, trailing link, front bush: repair first, torn, 4.6 mm, limit 3.2, general practice",
    );
  });

  it("says on which rung a corner stands that is not measured", () => {
    const note = (family: Family) =>
      textsOf(drawCorner(family, "front-left", { width: 1040, height: 800, states: {} }))
        .map(({ text }) => text)
        .join(" ");
    expect(note(scaled("strut", "five-link"))).toMatch(/scaled from a template/);
    expect(note(layoutFamily)).toMatch(/drawn from layout/);
  });
});

describe("drawAxle", { timeout: 60_000 }, () => {
  it("gives every position of the axle a row with its side, those that lie nowhere too", () => {
    for (const family of families) {
      for (const axle of ["front", "rear"] as const) {
        for (const room of rooms) {
          const scene = drawAxle(family, axle, { ...room, states });
          const own = axlePositionsOf(family, axle);
          expect(scene.targets).toHaveLength(own.length);
          expect(overlappingTargets(scene)).toEqual([]);
          expect(badTargets(scene)).toEqual([]);
          expect(countCrossings(leadersOf(scene))).toBe(0);
        }
      }
    }
  });

  it("and the corners together hold every position of the car once", () => {
    for (const family of families) {
      const opened = [
        ...corners.flatMap((corner) => cornerPositions(family, corner)),
        ...axlePositionsOf(family, "front"),
        ...axlePositionsOf(family, "rear"),
      ];
      expect(opened.map(({ id }) => id).toSorted()).toEqual(
        positionsOf(family)
          .map(({ id }) => id)
          .toSorted(),
      );
      expect(new Set(opened.map(groupOf)).size).toBe(6);
    }
  });
});
