import { describe, expect, it } from "vitest";
import { computeScaledNormalProbability, computeScaledNormalQuantile, type ScaledNormal } from "./scaled-normal.ts";
import { computeNormalProbability } from "./special.ts";

/** The two-fold integral by brute force on a fine grid over both standard normals. */
const byGrid = ({ mean, sd, logSd }: ScaledNormal, x: number): number => {
  const step = 0.01;
  let sum = 0;
  for (let z1 = -8; z1 <= 8; z1 += step) {
    const normal = mean + sd * z1;
    const density = (step * Math.exp((-z1 * z1) / 2)) / Math.sqrt(2 * Math.PI);
    const below =
      normal === 0 ? (x >= 0 ? 1 : 0) : x / normal <= 0 ? (normal > 0 ? 0 : 1) : Math.log(x / normal) / logSd;
    const chance =
      x / normal > 0 ? computeNormalProbability(normal > 0 ? below : -below) : (x >= 0 ? normal <= 0 : false) ? 1 : 0;
    sum += density * chance;
  }
  return sum;
};

describe("a normal quantity times a log-normal factor", () => {
  const cases: readonly ScaledNormal[] = [
    { mean: 1, sd: 0.1, logSd: 0.4 },
    { mean: 1, sd: 0.45, logSd: 0.4 },
    { mean: -0.3, sd: 0.05, logSd: 0.4 },
    { mean: 2, sd: 1.5, logSd: 0.1 },
    { mean: 0.2, sd: 0.4, logSd: 0.7 },
  ];
  it.each(cases)("has the chance of the two-fold integral: %o", (of) => {
    for (const share of [-0.5, 0.2, 0.7, 1, 1.6, 3]) {
      const x = share * of.mean;
      expect(computeScaledNormalProbability(of, x)).toBeCloseTo(byGrid(of, x), 5);
    }
  });

  it.each(cases)("is below its quantile with the chance asked: %o", (of) => {
    for (const p of [0.025, 0.5, 0.975])
      expect(computeScaledNormalProbability(of, computeScaledNormalQuantile(of, p))).toBeCloseTo(p, 7);
  });

  it("keeps the sign of the normal part: the lower quantile is above nought exactly where that part is sure", () => {
    for (const sigmas of [1.9, 1.95, 1.97, 2.5]) {
      const lower = computeScaledNormalQuantile({ mean: 1, sd: 1 / sigmas, logSd: 0.5 }, 0.025);
      expect(lower > 0, `${sigmas} standard deviations`).toBe(computeNormalProbability(sigmas) > 0.975);
    }
  });

  it("is the plain normal and the plain log-normal at its ends", () => {
    expect(computeScaledNormalQuantile({ mean: 1, sd: 0.2, logSd: 0 }, 0.975)).toBeCloseTo(1 + 0.2 * 1.959964, 6);
    expect(computeScaledNormalQuantile({ mean: -2, sd: 0, logSd: 0.3 }, 0.025)).toBeCloseTo(
      -2 * Math.exp(0.3 * 1.959964),
      5,
    );
    expect(computeScaledNormalQuantile({ mean: 3, sd: 0, logSd: 0 }, 0.5)).toBeCloseTo(3, 6);
  });

  it("turns round with its sign", () => {
    const low = computeScaledNormalQuantile({ mean: 0.4, sd: 0.1, logSd: 0.4 }, 0.025);
    const high = computeScaledNormalQuantile({ mean: -0.4, sd: 0.1, logSd: 0.4 }, 0.975);
    expect(high).toBeCloseTo(-low, 8);
  });
});
