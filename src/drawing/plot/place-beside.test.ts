import { describe, expect, it } from "vitest";
import type { Spot } from "../path.ts";
import { type Plot, placeBeside } from "./place-beside.ts";

const heights = [0, 60, 120, 180, 240, 300];
const uprightAt = (x: number): readonly Spot[] => heights.map((y) => [x, y]);
const plot: Plot = { x: 58, width: 142, top: 0, bottom: 300, toX: (value) => value, toY: (rise) => rise };
const place = (own: readonly Spot[], other: readonly Spot[]) =>
  placeBeside(["the name"], own, [{ spots: own }, { spots: other }], plot, "ink", "desk", []);

describe("the name beside a curve", () => {
  it("is led to its own curve where another one runs between the two", () => {
    const marks = place(uprightAt(170), uprightAt(155));
    const dot = marks.find(({ kind }) => kind === "circle");
    expect(dot).toMatchObject({ cx: 170 });
    expect(marks.some(({ kind }) => kind === "path")).toBe(true);
  });

  it("has no leader where nothing runs between, nor where two curves are one to the eye", () => {
    expect(place(uprightAt(155), uprightAt(170)).map(({ kind }) => kind)).toEqual(["text"]);
    expect(place(uprightAt(170), uprightAt(168)).map(({ kind }) => kind)).toEqual(["text"]);
  });

  it("stands above or below a flat curve, not on it", () => {
    const flat: readonly Spot[] = [60, 90, 120, 150, 180, 200].map((x) => [x, 150]);
    const [name] = place(flat, uprightAt(400));
    if (name?.kind !== "text") throw new Error("a curve has no name");
    expect(name.y < 150 || name.y > 165).toBe(true);
  });
});
