import { z } from "zod";
import { decideConformity, decisions } from "#engines/metrology";
import type { Finding } from "#numeric";
import type { Door } from "../door.ts";
import { isNumber, isObject } from "./loose-corner.ts";

const input = z.strictObject({
  reading: z.number(),
  u: z.number().min(0).describe("standard uncertainty of the reading, in its unit"),
  lower: z.number().nullish(),
  upper: z.number().nullish(),
  confidence: z.number().gt(0.5).lt(1).default(0.95),
});
type Input = z.output<typeof input>;

const output = z.strictObject({
  probability_within: z.number().describe("chance that the true value lies within the limits"),
  accept_from: z
    .number()
    .nullable()
    .describe("smallest reading decided within; null: no lower limit, or no reading could be"),
  accept_to: z
    .number()
    .nullable()
    .describe("largest reading decided within; null: no upper limit, or no reading could be"),
  decision: z
    .enum(decisions)
    .describe("within or beyond where the chance of it reaches the confidence, else too close to call"),
});

/** A limit that is absent or null is none; one that is wrong in itself is the schema's to name. */
const isAbsent = (x: unknown): boolean => x === undefined || x === null;

function checkLimits(document: unknown): Finding[] {
  if (!isObject(document)) return [];
  const { lower, upper } = document;
  if (isAbsent(lower) && isAbsent(upper))
    return [
      {
        code: "missing-key",
        path: "lower",
        got: "neither lower nor upper",
        needed: "a lower limit, an upper limit or both",
        hint: "Without a limit there is nothing to decide.",
      },
    ];
  if (!isNumber(lower) || !isNumber(upper) || lower < upper) return [];
  return [
    {
      code: "not-consistent",
      path: "upper",
      got: String(upper),
      needed: `more than the lower limit, ${lower}`,
      hint: "Perhaps the two are exchanged.",
    },
  ];
}

export const metrologyConformity: Door<Input> = {
  id: "metrology.conformity",
  summary: "Whether a reading with its uncertainty lies within limits: within, beyond, or too close to call",
  input: input as unknown as z.ZodType<Input>,
  output,
  relation: "chance of a normal value about the reading between the limits; guarded by the confidence on either side",
  source: "JCGM 106 and ISO 14253-1 thinking, from memory; docs/method/metrology.md",
  accuracy: "1e-12 (docs/verification.md)",
  check: checkLimits,
  compute(wire) {
    const limits = { lower: wire.lower ?? null, upper: wire.upper ?? null };
    const c = decideConformity({ value: wire.reading, u: wire.u }, limits, wire.confidence);
    return {
      output: {
        probability_within: c.probabilityWithin,
        accept_from: c.acceptFrom,
        accept_to: c.acceptTo,
        decision: c.decision,
      },
    };
  },
};
