import { z } from "zod";
import type { RubberFault, SheetQuestion } from "#casework";
import { metresFromMm, mmFromMetres } from "#quantity";
import type { Family } from "#vehicle";
import { conditionWire, formatCondition, readCondition } from "./condition-wire.ts";
import { cornerSchema, gradeSchema } from "./place-schema.ts";

const fault = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("torn"), grade: gradeSchema }),
  z.strictObject({ kind: z.literal("loose"), play_mm: z.number().positive(), assumed: z.literal(true).optional() }),
  z.strictObject({ kind: z.literal("firmer"), factor: z.number().positive() }),
]);

/** What the sheet of one fault is asked with, as it stands in JSON: keys with units. */
export const faultWire = z.strictObject({
  sheet: z.literal("fault"),
  family: z.string(),
  corner: cornerSchema,
  position: z.string(),
  fault,
  condition: conditionWire,
});

type AskedFault = Extract<SheetQuestion, { kind: "fault" }>;

const readFault = (wire: z.infer<typeof fault>): RubberFault =>
  wire.kind === "loose"
    ? { kind: "loose", play: metresFromMm(wire.play_mm), ...(wire.assumed ? { assumed: true } : {}) }
    : wire;

/** The question of a sheet of one fault, its family found. */
export const readFaultQuestion = (
  { corner, position, condition, fault: wire }: z.infer<typeof faultWire>,
  family: Family,
): AskedFault => ({
  kind: "fault",
  family,
  question: { corner, position, fault: readFault(wire), condition: readCondition(condition) },
});

/** The same as it is sent. */
export const formatFaultQuestion = ({ family, question }: AskedFault): z.input<typeof faultWire> => {
  const { corner, position, condition, fault: asked } = question;
  return {
    sheet: "fault",
    family: family.id,
    corner,
    position,
    fault:
      asked.kind === "loose"
        ? { kind: "loose", play_mm: mmFromMetres(asked.play), ...(asked.assumed ? { assumed: true } : {}) }
        : asked,
    condition: formatCondition(condition),
  };
};
