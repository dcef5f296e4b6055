import { describe, expect, it } from "vitest";
import { metresPerSecondFromKmPerHour } from "#quantity";
import { sampleShake } from "../../../test/samples/sample-shake.ts";
import { boxesOverlap } from "../labels/crossing.ts";
import type { Scene } from "../scene.ts";
import { flatMarks, textBox, textsOf } from "../scene-checks.ts";
import { computeStyleWidth } from "../text-width.ts";
import { faces } from "../tokens.ts";
import { drawShake } from "./draw-shake.ts";

const draw = (width: number, height: number): Scene => drawShake(sampleShake, { width, height });
const pathsOf = (scene: Scene) => flatMarks(scene.marks).flatMap((mark) => (mark.kind === "path" ? [mark] : []));
const spotsOf = (d: string): readonly (readonly number[])[] =>
  d
    .slice(1)
    .split("L")
    .map((pair) => pair.split(" ").map(Number));

describe("drawShake", () => {
  it("draws sound in ink and the one without fluid in the colour of a finding, each with a band", () => {
    for (const colour of ["ink", "g3"] as const) {
      expect(pathsOf(draw(900, 600)).some(({ stroke }) => stroke?.colour === colour && stroke.width === 2)).toBe(true);
      expect(pathsOf(draw(900, 600)).some(({ fill, opacity }) => fill === colour && (opacity ?? 1) < 0.3)).toBe(true);
    }
  });

  it("puts greater speed further right and more movement higher, the worst on its line", () => {
    const scene = draw(900, 600);
    const leaked = pathsOf(scene).find(({ stroke }) => stroke?.colour === "g3" && stroke.width === 2);
    const spots = spotsOf(leaked?.d ?? "");
    const xs = spots.map(([x]) => x ?? Number.NaN);
    expect(xs).toEqual([...xs].sort((a, b) => a - b));
    const top = spots.reduce((best, spot) => ((spot[1] ?? 0) < (best[1] ?? 0) ? spot : best));
    const across = pathsOf(scene).find(({ stroke }) => stroke?.colour === "accent");
    expect(spotsOf(across?.d ?? "")[0]?.[0]).toBeCloseTo(top[0] ?? Number.NaN, 1);
  });

  it("names both lines, both axes and the worst speed, and says its sentence to who cannot see it", () => {
    const words = textsOf(draw(900, 600)).map(({ text }) => text);
    expect(words).toEqual(expect.arrayContaining(["sound", "fluid gone", "worst at 120 km/h", "road speed, km/h"]));
    expect(draw(900, 600).description).toContain(sampleShake.sentence);
  });

  it("marks the speed at which it is felt with a point on either line, where somebody said one", () => {
    const scene = drawShake({ ...sampleShake, felt: metresPerSecondFromKmPerHour(100) }, { width: 900, height: 600 });
    expect(textsOf(scene).map(({ text }) => text)).toContain("felt at 100 km/h");
    const points = scene.marks.flatMap((mark) => (mark.kind === "circle" ? [mark] : []));
    const spots = pathsOf(scene)
      .filter(({ stroke }) => stroke?.width === 2)
      .flatMap(({ d }) => spotsOf(d));
    expect(points).toHaveLength(2);
    for (const { cx, cy } of points)
      expect(spots.some(([x, y]) => Math.hypot((x ?? 0) - cx, (y ?? 0) - cy) < 0.1)).toBe(true);
    expect(draw(900, 600).marks.some(({ kind }) => kind === "circle")).toBe(false);
  });

  it("sets the name of a flat line above or below it, never on it", () => {
    const scene = draw(640, 460);
    const name = textsOf(scene).find(({ text }) => text === "sound");
    if (name === undefined) throw new Error("the sound line has no name");
    const { x, y, width, height } = textBox(name);
    const sound = pathsOf(scene).find(({ stroke }) => stroke?.colour === "ink" && stroke.width === 2);
    const crossed = spotsOf(sound?.d ?? "").filter(
      ([a = 0, b = 0]) => a > x && a < x + width && b > y && b < y + height,
    );
    expect(crossed).toEqual([]);
  });

  it.each([
    [1042, 640],
    [640, 460],
    [820, 680],
  ])("keeps its words apart and inside at %d x %d", (width, height) => {
    const boxes = textsOf(draw(width, height)).map(({ text, x, y, anchor, style }) => {
      const wide = computeStyleWidth(text, style);
      const { size } = faces.desk[style];
      return {
        x: anchor === "end" ? x - wide : anchor === "middle" ? x - wide / 2 : x,
        y: y - size,
        width: wide,
        height: size,
      };
    });
    for (const [i, box] of boxes.entries()) {
      expect(box.x).toBeGreaterThanOrEqual(0);
      expect(box.x + box.width).toBeLessThanOrEqual(width);
      expect(box.y + box.height).toBeLessThanOrEqual(height);
      expect(boxes.slice(i + 1).filter((other) => boxesOverlap(box, other))).toEqual([]);
    }
  });
});
