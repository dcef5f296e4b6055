import { z } from "zod";
import { computeHardnessFactor, computeShearModulus, HARDNESS_RANGE } from "#engines/rubber";
import type { Finding } from "#numeric";
import type { Door } from "../door.ts";
import { isNumber, isObject } from "./loose-corner.ts";

const hardness = z.number().min(HARDNESS_RANGE[0]).max(HARDNESS_RANGE[1]);

const input = z.strictObject({
  old_hardness_shore_a: hardness,
  new_hardness_shore_a: hardness.meta({ description: "more than old_hardness_shore_a" }),
});
type Input = z.output<typeof input>;

const output = z.strictObject({
  factor: z
    .number()
    .meta({ description: "of every rate, dimensions being the same: for the faults of linkage.compliance" }),
  factor_low: z.number().meta({ description: "95 % with factor_high" }),
  factor_high: z.number(),
  surely_firmer: z.boolean().meta({ description: "whether factor_low is more than 1" }),
  old_shear_modulus_n_per_mm2: z.number(),
  new_shear_modulus_n_per_mm2: z.number(),
});

function checkHarder(document: unknown): readonly Finding[] {
  if (!isObject(document)) return [];
  const { old_hardness_shore_a: old, new_hardness_shore_a: fitted } = document;
  if (!isNumber(old) || !isNumber(fitted) || fitted > old) return [];
  return [
    {
      code: "not-consistent",
      path: "new_hardness_shore_a",
      got: String(fitted),
      needed: `more than the old hardness, ${old}`,
      hint:
        fitted === old
          ? "Both are of one hardness: the new part is as firm as the old one."
          : "The new part is softer, not firmer; perhaps the two are exchanged.",
    },
  ];
}

export const rubberFirmer: Door<Input> = {
  id: "rubber.firmer",
  summary:
    "How many times the rates of a rubber part are, by the hardness of the old part and of the new, with its range",
  input,
  output,
  relation: "G(new)/G(old) by Gent's relation; log-normal spread by two readings and two compounds, 95 %",
  source: "gent-hardness, hardness-scatter; docs/method/rubber.md",
  accuracy: "ratio that of rubber.rate, 1e-9; range to first order, within 1.6 % of drawn readings and compounds",
  check: checkHarder,
  compute({ old_hardness_shore_a: old, new_hardness_shore_a: fitted }) {
    const { factor, low, high } = computeHardnessFactor(old, fitted);
    return {
      output: {
        factor,
        factor_low: low,
        factor_high: high,
        surely_firmer: low > 1,
        old_shear_modulus_n_per_mm2: computeShearModulus(old) / 1e6,
        new_shear_modulus_n_per_mm2: computeShearModulus(fitted) / 1e6,
      },
    };
  },
};
