import { describe, expect, it } from "vitest";
import { compareDerivatives, differentiateAll, makeRandom } from "../../../test/fuzz/differences.ts";
import { readCorners } from "../../../test/fuzz/reference-corners.ts";
import { buildCornerLinkage } from "./corner-linkage.ts";
import { MeasureEvaluator } from "./measures.ts";
import { advancePose, clonePose, designPose, type Pose } from "./pose.ts";

const random = makeRandom(20_240_501);
const step = (): Float64Array => Float64Array.from({ length: 6 }, (_, i) => (random() - 0.5) * (i < 3 ? 0.06 : 0.2));

/** A pose away from design. */
function somePose(): Pose {
  const pose = designPose(1);
  advancePose(pose, step());
  return pose;
}

describe.each(readCorners())("the joints of $name", ({ geometry }) => {
  const { mechanism } = buildCornerLinkage(geometry);
  const count = mechanism.constraints.length;
  const evaluator = new MeasureEvaluator(mechanism, mechanism.constraints);
  const valuesAt = (pose: Pose, rack: number): number[] => {
    const values = new Float64Array(count);
    evaluator.evaluate(pose, rack, values, new Float64Array(6 * count));
    return [...values];
  };

  it("have gradients that agree with differences and are not made of them", () => {
    for (let trial = 0; trial < 5; trial++) {
      const pose = somePose();
      const rows = new Float64Array(6 * count);
      evaluator.evaluate(pose, 0.01, new Float64Array(count), rows);
      for (let j = 0; j < 6; j++) {
        const along = Float64Array.from({ length: 6 }, (_, i) => (i === j ? 1 : 0));
        const differences = differentiateAll(
          (x) => {
            const moved = clonePose(pose);
            advancePose(moved, along, x);
            return valuesAt(moved, 0.01);
          },
          0,
          4e-3,
        );
        const exact = Array.from({ length: count }, (_, i) => rows[6 * i + j] as number);
        const { worst, identical, entries } = compareDerivatives(exact, differences);
        expect(worst).toBeLessThan(1e-11);
        expect(identical).toBeLessThan(Math.max(1, entries));
      }
    }
  });

  it("have rack rates that agree with differences", () => {
    const pose = somePose();
    const rates = new Float64Array(count);
    evaluator.rackRates(pose, 0.01, rates);
    const differences = differentiateAll((rack) => valuesAt(pose, rack), 0.01, 4e-3);
    expect(compareDerivatives([...rates], differences).worst).toBeLessThan(1e-11);
    expect(rates.some((r) => r !== 0)).toBe(geometry.links.some((l) => l.steered));
  });

  it("are five, so that one motion is left", () => {
    expect(count).toBe(5);
  });
});
