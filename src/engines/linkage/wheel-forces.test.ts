import { describe, expect, it } from "vitest";
import { compareDerivatives, differentiateAll } from "../../../test/fuzz/differences.ts";
import { readElasticCorners } from "../../../test/fuzz/reference-corners.ts";
import { buildCornerLinkage } from "./corner-linkage.ts";
import { advancePose, clonePose, designPose } from "./pose.ts";
import { computeWheelWrench, contactWithChange } from "./wheel-forces.ts";

const load = { lateral: 900, braking: 2100, drive: -400, aligning: 60, contactRise: 0, rack: 0 };

describe.each(readElasticCorners())("the forces on the wheel of $name", ({ corner }) => {
  const linkage = buildCornerLinkage(corner.geometry);
  const pose = designPose(1);
  advancePose(pose, Float64Array.of(0.01, -0.02, 0.03, 0.05, -0.08, 0.06));
  const turned = (j: number, x: number) => {
    const next = clonePose(pose);
    advancePose(
      next,
      Float64Array.from({ length: 6 }, (_, i) => (i === j ? 1 : 0)),
      x,
    );
    return next;
  };

  it("turn with the wheel as differences say, and not by those", () => {
    const { turning } = computeWheelWrench(linkage, pose, load, 4000);
    for (let j = 0; j < 6; j++) {
      const differences = differentiateAll(
        (x) => computeWheelWrench(linkage, turned(j, x), load, 4000).wrench,
        0,
        4e-3,
      );
      const exact = [0, 1, 2, 3, 4, 5].map((i) => turning[6 * i + j] as number);
      const { worst, identical, entries } = compareDerivatives(exact, differences);
      expect(worst).toBeLessThan(1e-7);
      expect(identical).toBeLessThan(Math.max(1, entries));
    }
  });

  it("act at a contact patch whose move is that of the lowest point", () => {
    const { change } = contactWithChange(linkage, pose);
    for (let j = 0; j < 3; j++) {
      const differences = differentiateAll((x) => contactWithChange(linkage, turned(j + 3, x)).offset, 0, 4e-3);
      const exact = [change[j] as number, change[3 + j] as number, change[6 + j] as number];
      expect(compareDerivatives(exact, differences).worst).toBeLessThan(1e-11);
    }
  });
});
