import { describe, expect, it } from "vitest";
import type { FaultEffect } from "#casework";
import { sampleEffect, sampleFormat } from "../../../test/samples/sample-effect.ts";
import { boxesOverlap } from "../labels/crossing.ts";
import type { Scene } from "../scene.ts";
import { flatMarks, textsOf } from "../scene-checks.ts";
import { computeStyleWidth } from "../text-width.ts";
import { faces } from "../tokens.ts";
import { chooseCurve, drawCurves, interpolate } from "./draw-curves.ts";

const options = { width: 420, height: 640, format: sampleFormat };
const wordsOf = (scene: Scene) => textsOf(scene).map(({ text }) => text);
const withToe = (drawable: boolean, change: boolean): FaultEffect => ({
  ...sampleEffect,
  curves: sampleEffect.curves.map((curve) => {
    if (curve.quantity === "toe") return { ...curve, drawable, settle: "height of the toe link's inner joint to 1 mm" };
    return curve.quantity === "toe-change" ? { ...curve, drawable: change } : curve;
  }),
});

describe("drawCurves", () => {
  it("writes the difference at the state asked for as the figure says it", () => {
    expect(wordsOf(drawCurves(sampleEffect, options))).toContain("0.22°");
  });

  it("draws sound in ink and the fault in the colour of a finding, each with a band", () => {
    const paths = flatMarks(drawCurves(sampleEffect, options).marks).filter((mark) => mark.kind === "path");
    for (const colour of ["ink", "g3"] as const) {
      expect(paths.some((mark) => mark.stroke?.colour === colour && mark.stroke.width === 2)).toBe(true);
      expect(paths.some((mark) => mark.fill === colour && (mark.opacity ?? 1) < 0.3)).toBe(true);
    }
  });

  it("puts greater travel higher and larger values further right", () => {
    const toe = flatMarks(drawCurves(sampleEffect, options).marks).find(
      (mark) => mark.kind === "path" && mark.stroke?.colour === "ink" && mark.stroke.width === 2,
    );
    if (toe?.kind !== "path") throw new Error("no curve");
    const spots = toe.d
      .slice(1)
      .split("L")
      .map((pair) => pair.split(" ").map(Number));
    const [first, last] = [spots[0], spots.at(-1)];
    expect(first?.[1]).toBeGreaterThan(last?.[1] ?? Number.NaN);
    expect(first?.[0]).toBeLessThan(last?.[0] ?? Number.NaN);
  });

  it("draws the change in place of a curve whose sign is not sure, and names the reading where neither is sure", () => {
    expect(chooseCurve(withToe(false, true), "toe")?.quantity).toBe("toe-change");
    expect(wordsOf(drawCurves(withToe(false, true), options))).toContain("toe less sound, °, in is +");
    const headless = withToe(false, true);
    const unsure = headless.figures.map((figure) =>
      figure.key === "toe-change" ? { ...figure, signSure: false } : figure,
    );
    expect(chooseCurve({ ...headless, figures: unsure }, "toe")?.drawable).toBe(false);
    const said = wordsOf(drawCurves(withToe(false, false), options)).join(" ");
    expect(said).toContain("toe not drawn");
    expect(said).toContain("height of the toe link's inner joint to 1 mm");
    expect(said).not.toContain("0.22°");
  });

  it("never breaks off what would settle a curve: without room it says how much it takes", () => {
    const all =
      "To settle it takes 2 readings. Heights over a level plane: the upper link's inner joint, the tie rod's outer one.";
    const unsure = withToe(false, false);
    const long = { ...unsure, curves: unsure.curves.map((curve) => ({ ...curve, settle: all })) };
    const said = (height: number) => wordsOf(drawCurves(long, { ...options, height })).join(" ");
    expect(said(640)).toContain("the tie rod's outer one.");
    const low = said(240);
    expect(low).toContain("takes 2 readings.");
    expect(low).not.toMatch(/…|Heights over/);
  });

  it("labels curves that run nearly alike together", () => {
    const said = wordsOf(drawCurves(sampleEffect, options)).join(" ");
    expect(said).toMatch(/sound and torn,? nearly the same|sound and torn, nearly the same/);
  });

  it("has no two words that overlap", () => {
    for (const width of [300, 420, 520]) {
      const scene = drawCurves(sampleEffect, { ...options, width });
      const boxes = textsOf(scene).map((mark) => {
        const { size } = faces.desk[mark.style];
        const wide = computeStyleWidth(mark.text, mark.style);
        const x = mark.anchor === "middle" ? mark.x - wide / 2 : mark.anchor === "end" ? mark.x - wide : mark.x;
        return { text: mark.text, x, y: mark.y - size * 0.7, width: wide, height: size * 0.72 };
      });
      const pairs = boxes.flatMap((box, i) =>
        boxes.slice(i + 1).flatMap((other) => (boxesOverlap(box, other) ? [`${box.text} | ${other.text}`] : [])),
      );
      expect(pairs).toEqual([]);
    }
  });
});

describe("interpolate", () => {
  it("goes straight between entries and holds the ends", () => {
    expect(interpolate([0, 10, 20], [1, 3, 2], 5)).toBe(2);
    expect(interpolate([0, 10, 20], [1, 3, 2], -4)).toBe(1);
    expect(interpolate([0, 10, 20], [1, 3, 2], 25)).toBe(2);
    expect(interpolate([0, 10, 20], [1, 3, 2], 10)).toBe(3);
  });
});
