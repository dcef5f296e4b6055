import { z } from "zod";
import { computeAxleToe } from "#engines/alignment";
import { degreesFromRadians, metresFromMm, mmFromMetres, radiansFromDegrees } from "#quantity";
import type { Door } from "../door.ts";

const toe = z.number().gt(-45).lt(45).meta({ description: "positive in" });
const input = z.strictObject({
  left_toe_deg: toe,
  right_toe_deg: toe,
  rim_diameter_mm: z.number().positive().meta({ description: "the diameter toe is read over as a length" }),
});
const output = z.strictObject({
  total_toe_deg: z.number(),
  total_toe_mm: z.number(),
  thrust_angle_deg: z.number().meta({ description: "positive where the axle points to the left" }),
});

export const alignmentAxle: Door<z.output<typeof input>> = {
  id: "alignment.axle",
  summary: "Total toe of an axle in degrees and as a length, and where the axle points",
  input,
  output,
  relation: "total = left + right; as a length: rim diameter x (sin left + sin right); thrust = (right - left)/2",
  source: "check-values-geometry; sign of the thrust angle: definition in docs/method/linkage.md",
  accuracy: "closed form",
  compute(wire) {
    const { total, totalLength, thrust } = computeAxleToe(
      radiansFromDegrees(wire.left_toe_deg),
      radiansFromDegrees(wire.right_toe_deg),
      metresFromMm(wire.rim_diameter_mm),
    );
    return {
      output: {
        total_toe_deg: degreesFromRadians(total),
        total_toe_mm: mmFromMetres(totalLength),
        thrust_angle_deg: degreesFromRadians(thrust),
      },
    };
  },
};
