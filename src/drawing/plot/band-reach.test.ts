import { describe, expect, it } from "vitest";
import type { CurveLine } from "#casework";
import { clipBand, reachOfLines } from "./band-reach.ts";

const line = (state: CurveLine["state"], values: readonly number[], wide: number): CurveLine => ({
  state,
  values,
  low: values.map((value) => value - wide),
  high: values.map((value) => value + wide),
});
const sound = line("sound", [0.1, 0.2, 0.4], 0.05);

describe("reachOfLines", () => {
  it("holds the bands while they are not far wider than the lines", () => {
    const { low, high, beyond } = reachOfLines([sound, line("torn", [0.3, 0.4, 0.6], 0.2)], false);
    expect(low).toBeCloseTo(0.05, 12);
    expect(high).toBeCloseTo(0.8, 12);
    expect(beyond).toBeNull();
  });

  it("follows the lines where a band is tens of degrees wide, and says how far that band goes and whose it is", () => {
    const { low, high, beyond } = reachOfLines([sound, line("loose", [0.3, 0.4, 0.6], 24)], false);
    expect(high - low).toBeLessThan(4);
    expect(beyond?.state).toBe("loose");
    expect(beyond?.low).toBeCloseTo(-23.7, 9);
    expect(beyond?.high).toBeCloseTo(24.6, 9);
  });

  it("copes with values that are no numbers", () => {
    const broken = { ...sound, high: [Number.NaN, Number.POSITIVE_INFINITY, 0.5] };
    const { low, high } = reachOfLines([broken], true);
    expect(Number.isFinite(low) && Number.isFinite(high)).toBe(true);
    expect(reachOfLines([], false)).toEqual({ low: 0, high: 1, beyond: null });
  });
});

describe("clipBand", () => {
  it("keeps both edges inside the axis", () => {
    const band = clipBand(line("loose", [0, 0.1, 0.2], 20), [-10, 0, 10], { low: -1, high: 2 });
    expect(Math.min(...band.low)).toBe(-1);
    expect(Math.max(...band.high)).toBe(2);
    expect(band.at).toHaveLength(band.low.length);
  });
});
