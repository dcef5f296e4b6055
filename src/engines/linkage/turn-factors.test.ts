import { describe, expect, it } from "vitest";
import { differentiate } from "../../../test/fuzz/differences.ts";
import { angleOverSine, rotationVectorFactor } from "./turn-factors.ts";

const angles = [1e-9, 1e-4, 0.03, 0.2, 0.7, 1.2, 1.9];

describe("angle over sine", () => {
  it("is the closed form, and one at no angle", () => {
    expect(angleOverSine(1)[0]).toBe(1);
    for (const angle of angles.slice(2))
      expect(Math.abs(angleOverSine(Math.cos(angle))[0] - angle / Math.sin(angle))).toBeLessThan(4e-15 * 2);
  });

  it("has derivatives that satisfy (1 - c^2) f' = c f - 1 and what follows from it", () => {
    for (const angle of angles) {
      const c = Math.cos(angle);
      const [f, f1, f2, f3] = angleOverSine(c);
      expect(Math.abs((1 - c * c) * f1 - (c * f - 1))).toBeLessThan(1e-14);
      expect(Math.abs((1 - c * c) * f2 - (f + 3 * c * f1))).toBeLessThan(2e-13 * (1 + f2));
      expect(Math.abs((1 - c * c) * f3 - (4 * f1 + 5 * c * f2))).toBeLessThan(2e-13 * (1 + Math.abs(f3)));
    }
  });
});

describe("the factor of a rotation vector's change", () => {
  it("is the closed form, and a twelfth at no angle", () => {
    expect(rotationVectorFactor(0)[0]).toBeCloseTo(1 / 12, 16);
    for (const x of angles.slice(3)) {
      const closed = (1 - (x / 2) * (Math.cos(x / 2) / Math.sin(x / 2))) / (x * x);
      expect(Math.abs(rotationVectorFactor(x * x)[0] - closed)).toBeLessThan(1e-14);
    }
  });

  it("has derivatives that agree with differences", () => {
    for (const x of angles) {
      const z = x * x;
      const exact = rotationVectorFactor(z);
      for (const k of [0, 1, 2] as const) {
        const difference = differentiate((y) => rotationVectorFactor(y)[k], z, 0.05);
        expect(Math.abs(difference - (exact[k + 1] as number))).toBeLessThan(1e-12);
      }
    }
  });
});
