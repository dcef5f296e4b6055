import { z } from "zod";
import { computeCasterFromSweep } from "#engines/alignment";
import { degreesFromRadians, radiansFromDegrees } from "#quantity";
import type { Door } from "../door.ts";

const camber = z.number().gt(-45).lt(45);
const input = z.strictObject({
  camber_in_deg: camber.meta({ description: "camber with the wheel turned in (toe-in) by the sweep" }),
  camber_out_deg: camber.meta({ description: "camber with the wheel turned out (toe-out) by the sweep" }),
  sweep_deg: z.number().min(1).max(60).meta({ description: "how far each way from straight ahead" }),
});
const output = z.strictObject({ caster_deg: z.number(), factor: z.number() });

export const alignmentCasterFromSweep: Door<z.output<typeof input>> = {
  id: "alignment.caster-from-sweep",
  summary: "Caster from the camber read with the wheel turned in and out by the same angle",
  input,
  output,
  relation: "caster = (camber out - camber in) x factor, factor = 1/(2 sin sweep)",
  source: "check-values-geometry",
  accuracy: "first order: 0.006 deg too much at 4 deg caster and 8 deg inclination, 0.014 deg at 6 and 12",
  compute(wire) {
    const { caster, factor } = computeCasterFromSweep(
      radiansFromDegrees(wire.camber_in_deg),
      radiansFromDegrees(wire.camber_out_deg),
      radiansFromDegrees(wire.sweep_deg),
    );
    return { output: { caster_deg: degreesFromRadians(caster), factor } };
  },
};
