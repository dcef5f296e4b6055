import { describe, expect, it } from "vitest";
import type { Vector } from "#numeric";
import { compareDerivatives, differentiateAll, makeRandom } from "../../../test/fuzz/differences.ts";
import { readElasticCorners, readVoidedCorners } from "../../../test/fuzz/reference-corners.ts";
import type { EndRate } from "./elastic-corner.ts";
import { buildElasticTerms, computeLinkRate } from "./elastic-terms.ts";
import { advancePose, clonePose, designPose, type Pose } from "./pose.ts";

const random = makeRandom(7);

function somePose(): Pose {
  const pose = designPose(1);
  advancePose(
    pose,
    Float64Array.from({ length: 6 }, (_, i) => (random() - 0.5) * (i < 3 ? 0.06 : 0.2)),
  );
  return pose;
}

const axis = (j: number): Float64Array => Float64Array.from({ length: 6 }, (_, i) => (i === j ? 1 : 0));

const moved = (pose: Pose, j: number, x: number): Pose => {
  const next = clonePose(pose);
  advancePose(next, axis(j), x);
  return next;
};

describe.each([...readElasticCorners(), ...readVoidedCorners()])("the elastic terms of $name", ({ corner }) => {
  const terms = buildElasticTerms(corner);

  it("have gradients that agree with differences of their values and are not made of them", () => {
    const pose = somePose();
    for (const term of terms) {
      const differences = [0, 1, 2, 3, 4, 5].map(
        (j) => differentiateAll((x) => [term.at(moved(pose, j, x), 0.005).value], 0, 4e-3)[0] as number,
      );
      const { worst, identical, entries } = compareDerivatives([...term.at(pose, 0.005).row], differences);
      expect(worst, term.name).toBeLessThan(1e-11);
      expect(identical, term.name).toBeLessThan(entries);
    }
  });

  it("turn their gradients as differences of the gradients say, and not by those", () => {
    const pose = somePose();
    for (const term of terms) {
      const { turning } = term.at(pose, 0);
      for (let j = 0; j < 6; j++) {
        const differences = differentiateAll((x) => [...term.at(moved(pose, j, x), 0).row], 0, 4e-3);
        const exact = [0, 1, 2, 3, 4, 5].map((i) => turning[6 * i + j] as number);
        const { worst, size, identical, entries } = compareDerivatives(exact, differences);
        expect(worst, term.name).toBeLessThan(1e-10 * Math.max(1, size));
        if (entries > 3) expect(identical, term.name).toBeLessThan(entries);
      }
    }
  });

  it("are six where the wheel load is carried", () => {
    expect(terms.filter((t) => t.carriesPreload).length).toBe(6);
  });
});

describe("the rate of a link", () => {
  const u = [1, 0, 0] as const;

  it("is that of its parts in series", () => {
    expect(computeLinkRate(u, [{ radial: 3000 }], 6000)).toBeCloseTo(2000, 10);
  });

  it("takes the axial rate along the axis and the radial rate across it", () => {
    expect(computeLinkRate(u, [{ radial: 3000, axial: 500, axis: [5, 0, 0] }], null)).toBeCloseTo(500, 10);
    expect(computeLinkRate(u, [{ radial: 3000, axial: 500, axis: [0, 2, 0] }], null)).toBeCloseTo(3000, 10);
    const slanted = computeLinkRate(u, [{ radial: 3000, axial: 500, axis: [3, 4, 0] }], null);
    expect(1 / slanted).toBeCloseTo(0.36 / 500 + 0.64 / 3000, 15);
  });

  it("takes the rate of the voids along them, and turned by a right angle the other one", () => {
    const bush = (radial: number, through: Vector, voided: number): EndRate => ({
      radial,
      axial: 500,
      axis: [0, 0, 3],
      voided: { rate: voided, through },
    });
    expect(computeLinkRate(u, [bush(3000, [1, 0, 5], 900)], null)).toBeCloseTo(900, 10);
    expect(computeLinkRate(u, [bush(3000, [0, 1, -2], 900)], null)).toBeCloseTo(3000, 10);
    for (const angle of [0, 0.3, 1.1, 2.5]) {
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      const one = computeLinkRate(u, [bush(3000, [c, s, 0], 900)], null);
      expect(1 / one).toBeCloseTo(c ** 2 / 900 + s ** 2 / 3000, 15);
      expect(computeLinkRate(u, [bush(900, [-s, c, 0], 3000)], null)).toBeCloseTo(one, 9);
    }
  });

  it("is infinite where nothing gives", () => {
    expect(computeLinkRate(u, [], null)).toBe(Number.POSITIVE_INFINITY);
  });
});
