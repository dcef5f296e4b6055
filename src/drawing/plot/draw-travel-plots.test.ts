import { describe, expect, it } from "vitest";
import type { TravelLine } from "#casework";
import { boxesOverlap } from "../labels/crossing.ts";
import type { Scene } from "../scene.ts";
import { flatMarks, textBox, textsOf } from "../scene-checks.ts";
import { type DrawnSheet, drawTravelPlots } from "./draw-travel-plots.ts";

const rises = [-0.08, -0.04, 0, 0.04, 0.08];
const line = (words: string, subject: TravelLine["subject"], from: number, slope: number): TravelLine => {
  const values = rises.map((rise) => from + slope * rise);
  return {
    state: subject === "rubber" ? "torn" : "sound",
    words,
    subject,
    rises,
    values,
    low: values.map((v) => v - 0.05),
    high: values.map((v) => v + 0.05),
  };
};

const sheet: DrawnSheet = {
  plots: [
    {
      figure: "toe",
      title: "toe, °, in is +",
      unit: "deg",
      lines: [line("sound", "sound", 0.2, 2), line("torn: trailing link", "rubber", 0.6, 1)],
      leftOut: [],
    },
    {
      figure: "roll-centre",
      title: "roll centre, mm above ground",
      unit: "mm",
      lines: [line("sound", "sound", 90, -900)],
      leftOut: ["torn: trailing link: drawn for toe and camber only"],
    },
  ],
  rows: [],
  poses: [],
  sentences: ["Said."],
};

const draw = (width: number): Scene => drawTravelPlots(sheet, { width, height: 520, at: 0.04 });

describe("figures over travel", () => {
  it.each([700, 420, 330])("keep their words apart and inside at %s units", (width) => {
    const scene = draw(width);
    const texts = textsOf(scene).map((mark) => ({ text: mark.text, ...textBox(mark) }));
    for (const { text, x, y, ...box } of texts)
      expect(x >= -1 && x + box.width <= width + 1 && y >= 0 && y + box.height <= scene.height, text).toBe(true);
    const bold = textsOf(scene).filter(({ style }) => style === "label-bold");
    const overlaps = bold.flatMap((a, i) =>
      bold
        .slice(i + 1)
        .filter((b) => boxesOverlap(textBox(a), textBox(b)))
        .map((b) => `${a.text} | ${b.text}`),
    );
    expect(overlaps).toEqual([]);
  });

  it("put every value where its axis says, travel upright", () => {
    const scene = draw(700);
    const curves = flatMarks(scene.marks).flatMap((mark) =>
      mark.kind === "path" && mark.stroke?.width === 2 && mark.stroke.cap === "round" ? [mark.d] : [],
    );
    expect(curves).toHaveLength(3);
    const spots = (curves[0] ?? "")
      .slice(1)
      .split("L")
      .map((pair) => pair.split(" ").map(Number));
    expect(spots).toHaveLength(5);
    const ys = spots.map(([, y]) => y ?? 0);
    expect(ys).toEqual(ys.toSorted((a, b) => b - a));
    const ticks = textsOf(scene).filter(({ anchor, style }) => anchor === "middle" && style === "note");
    const [a, b] = ticks.filter(({ x }) => x < 380).map(({ x, text }) => [x, Number(text.replace("−", "-"))] as const);
    if (a === undefined || b === undefined) throw new Error("two ticks");
    const toX = (value: number) => a[0] + ((value - a[1]) / (b[1] - a[1])) * (b[0] - a[0]);
    spots.forEach(([x], i) => {
      expect(x).toBeCloseTo(toX(0.2 + 2 * (rises[i] ?? 0)), 1);
    });
  });

  it("draw no axis where there is no line, and say why", () => {
    const bare = {
      ...sheet,
      plots: [{ ...sheet.plots[0], lines: [], leftOut: ["sound: none"] } as DrawnSheet["plots"][0]],
    };
    const scene = drawTravelPlots(bare, { width: 420, height: 520, at: 0 });
    const said = textsOf(scene).map(({ text }) => text);
    expect(said.join(" ")).toContain("nothing to draw");
    expect(said.join(" ")).toContain("sound: none");
    expect(flatMarks(scene.marks).filter(({ kind }) => kind === "path")).toEqual([]);
  });

  it("say what is left out, and the sentences to who cannot see them", () => {
    const scene = draw(700);
    expect(
      textsOf(scene)
        .map(({ text }) => text)
        .join(" "),
    ).toContain("drawn for toe and camber only");
    expect(scene.description).toContain("Said.");
  });

  it("keep the line across inside the frame where the wheel is drawn further than the lines go", () => {
    const lowest = (at: number) =>
      textsOf(drawTravelPlots(sheet, { width: 700, height: 520, at }))
        .map(({ text }) => Number(text.replace("−", "-")))
        .filter((tick) => Number.isFinite(tick) && Math.abs(tick) >= 20 && Math.abs(tick) <= 120);
    expect(Math.min(...lowest(0))).toBe(-80);
    expect(Math.min(...lowest(-0.094))).toBeLessThanOrEqual(-94);
  });

  it.each([420, 330])("leave the figures of the upright axis uncovered at %s units", (width) => {
    const texts = textsOf(draw(width));
    const numbers = texts.filter(({ style, anchor, x }) => style === "note" && anchor === "end" && x < 60);
    expect(numbers.length).toBeGreaterThan(5);
    for (const label of texts.filter(({ style }) => style === "label-bold"))
      for (const number of numbers)
        expect(boxesOverlap(textBox(label), textBox(number)), `${label.text} | ${number.text}`).toBe(false);
  });
});
