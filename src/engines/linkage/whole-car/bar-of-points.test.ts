import { describe, expect, it } from "vitest";
import { readCorners } from "../../../../test/fuzz/reference-corners.ts";
import {
  type BarPoints,
  computeDropLinkRatio,
  computeEndCompliance,
  computeTwistPerLean,
  modelBar,
} from "./bar-of-points.ts";
import { computeBar } from "./car-pose.ts";

const [corner] = readCorners();
if (!corner) throw new Error("no corner");
const { geometry } = corner;
const link = geometry.links.find(({ name }) => name.includes("lower")) ?? geometry.links[0];
if (!link) throw new Error("no link");
const half = (share: number): readonly [number, number, number] => [
  link.inner[0] + share * (link.outer[0] - link.inner[0]),
  link.inner[1] + share * (link.outer[1] - link.inner[1]),
  link.inner[2] + share * (link.outer[2] - link.inner[2]),
];

/** A bar as on paper: straight middle of half length `corner`, arms at right angles to it, bushes at `bush`. */
const square = (bush: number, cornerAt: number, arm: number, diameter: number): BarPoints => ({
  diameter,
  path: [
    [-0.3, 0, 0.3],
    [-0.3, cornerAt, 0.3],
    [-0.3 + arm, cornerAt, 0.3],
  ],
  bodyBush: [-0.3, bush, 0.3],
  linkUpper: [-0.3 + arm, cornerAt, 0.3],
  linkLower: half(0.7),
});

describe("a bar by its points", () => {
  it.each([
    [0.3, 0.45, 0.25, 0.022],
    [0.45, 0.45, 0.2, 0.018],
    [0.2, 0.5, 0.32, 0.025],
  ])("gives at its ends as the beams of a textbook do: bush at %s m, corner at %s m, arm %s m", (b, c, l, d) => {
    const bending = (206e9 * Math.PI * d ** 4) / 64;
    const torsion = (79e9 * Math.PI * d ** 4) / 32;
    // Arm as a cantilever, half middle in torsion, middle as a beam over its bushes with ends that reach past them.
    const expected = l ** 3 / (3 * bending) + (l ** 2 * c) / torsion + ((c - b) ** 2 * c) / (3 * bending);
    expect((computeEndCompliance(square(b, c, l, d)) ?? 0) / expected).toBeCloseTo(1, 12);
  });

  it("is what a torsion rate with levers does when arms do not bend", () => {
    const bar = square(0.4, 0.4, 0.25, 0.02);
    const model = modelBar(bar, geometry);
    const given = computeEndCompliance(bar);
    if (!model || given === null) throw new Error("no bar");
    expect(model.lever).toBeCloseTo(0.25, 12);
    expect(model.ratio).toBeCloseTo(computeDropLinkRatio(bar, geometry) ?? 0, 15);
    // Ends pushed apart by one metre altogether at the links: half of it each, over what one end gives.
    const { leftLink } = computeBar(model, 0.5 / model.ratio, -0.5 / model.ratio);
    expect(leftLink * given).toBeCloseTo(-0.5, 12);
  });

  it("turns its levers in inverse proportion to them, and its drop link rises with the share of its link", () => {
    const [long, short] = [0.3, 0.1].map((arm) => computeTwistPerLean(square(0.3, 0.45, arm, 0.02), geometry) ?? 0);
    expect((short ?? 0) / (long ?? 1)).toBeCloseTo(3, 12);
    const [near, far] = [0.3, 0.6].map(
      (share) => computeDropLinkRatio({ ...square(0.3, 0.45, 0.25, 0.02), linkLower: half(share) }, geometry) ?? 0,
    );
    expect((far ?? 0) / (near ?? 1)).toBeCloseTo(2, 12);
  });

  it("is none without a lever or without a bush beside its middle", () => {
    expect(modelBar(square(0.3, 0.45, 0, 0.02), geometry)).toBeNull();
    expect(computeEndCompliance({ ...square(0.3, 0.45, 0.25, 0.02), bodyBush: [0, 0.9, 0] })).toBeNull();
  });
});
