import { describe, expect, it } from "vitest";
import { sampleEffect } from "../../../test/samples/sample-effect.ts";
import { sampleFamily } from "../../../test/samples/sample-family.ts";
import type { Scene } from "../scene.ts";
import { crowdedTexts, flatMarks, textBox, textsOf } from "../scene-checks.ts";
import { drawMovingCorner } from "./draw-moving-corner.ts";

const standing = {
  family: sampleFamily,
  corner: "rear-left",
  pose: sampleEffect.sound,
  rack: 0,
  beside: [{ family: sampleFamily, pose: sampleEffect.faulty, rack: 0 }],
} as const;
const draw = (width: number, height: number, turn = 35, tilt = 20): Scene =>
  drawMovingCorner(standing, { width, height, eye: { turn, tilt } });
const words = (scene: Scene): readonly string[] => textsOf(scene).map(({ text }) => text);

/** Every point of every path and circle. */
const spotsOf = (scene: Scene): readonly (readonly [number, number])[] =>
  flatMarks(scene.marks).flatMap((mark) => {
    if (mark.kind === "circle") return [[mark.cx, mark.cy] as const];
    if (mark.kind !== "path" || /[AHV]/i.test(mark.d)) return [];
    const numbers = (mark.d.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);
    return numbers.flatMap((x, i) => (i % 2 === 0 ? [[x, numbers[i + 1] ?? 0] as const] : []));
  });

describe("a corner on three sheets and in space", () => {
  it.each([
    [540, 560],
    [385, 520],
    [330, 390],
  ])("stays in its frame, names each view, and its words do not run into each other (%s x %s)", (width, height) => {
    for (const turn of [-180, -60, 35, 120]) {
      const scene = draw(width, height, turn);
      const outside = spotsOf(scene).filter(([x, y]) => !(x >= 0 && y >= 0 && x <= width && y <= height));
      expect(outside, `turn ${turn}`).toEqual([]);
      expect(crowdedTexts(scene)).toEqual([]);
      for (const text of textsOf(scene)) expect(textBox(text).x + textBox(text).width).toBeLessThanOrEqual(width);
      expect(words(scene)).toEqual(expect.arrayContaining(["From behind", expect.stringMatching(/^From the left/)]));
      expect(words(scene).filter((text) => text.startsWith("From"))).toHaveLength(4);
    }
  });

  it("leaves the space out where its quarter is too small, and keeps the sheets", () => {
    expect(words(draw(200, 240)).filter((text) => text.startsWith("From"))).toHaveLength(3);
  });

  it("draws another state thin over it", () => {
    const alone = drawMovingCorner(
      { ...standing, beside: [] },
      { width: 540, height: 560, eye: { turn: 35, tilt: 20 } },
    );
    expect(flatMarks(draw(540, 560).marks).length).toBeGreaterThan(flatMarks(alone.marks).length);
  });
});
