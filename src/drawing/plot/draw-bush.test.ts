import { describe, expect, it } from "vitest";
import { sampleShake } from "../../../test/samples/sample-shake.ts";
import { flatMarks, textsOf } from "../scene-checks.ts";
import { drawBush } from "./draw-bush.ts";

const scene = drawBush(sampleShake, { width: 320, height: 400 });
const paths = flatMarks(scene.marks).flatMap((mark) => (mark.kind === "path" ? [mark] : []));
const heights = (d: string): readonly number[] =>
  d
    .replace("z", "")
    .slice(1)
    .split("L")
    .map((pair) => Number(pair.split(" ")[1]));

describe("drawBush", () => {
  it("draws stiffness over loss angle, each sound and without the fluid with its band", () => {
    expect(paths.filter(({ opacity }) => opacity === 0.16)).toHaveLength(2);
    expect(paths.filter(({ opacity }) => opacity === 0.1)).toHaveLength(2);
    const words = textsOf(scene).map(({ text }) => text);
    expect(words).toEqual(expect.arrayContaining(["stiffness, N/mm", "loss angle, °", "sound", "fluid gone"]));
  });

  it("draws the rubber alone level and the sound one rising, and stays inside", () => {
    const [leaked] = paths.filter(({ stroke }) => stroke?.colour === "g3");
    const [sound] = paths.filter(({ stroke }) => stroke?.colour === "ink" && stroke.width === 2);
    expect(new Set(heights(leaked?.d ?? "")).size).toBe(1);
    const rising = heights(sound?.d ?? "");
    expect(rising).toEqual(rising.toSorted((a, b) => b - a));
    for (const { d } of paths)
      for (const y of heights(d)) {
        expect(y).toBeGreaterThanOrEqual(0);
        expect(y).toBeLessThanOrEqual(400);
      }
  });

  it("marks in both how often the disc comes by at the worst speed, and reads itself out", () => {
    expect(paths.filter(({ stroke }) => stroke?.colour === "accent")).toHaveLength(2);
    expect(scene.description).toContain("fluid gone: at 1 Hz 390 N/mm and 5°, at 20 Hz 390 N/mm and 5°");
  });
});
