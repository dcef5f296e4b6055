import { z } from "zod";
import type { RubberFault, SheetQuestion } from "#casework";
import type { Finding } from "#numeric";
import type { Family } from "#vehicle";
import { isObject } from "../doors/loose-corner.ts";
import { conditionWire, formatCondition, readCondition } from "./condition-wire.ts";
import { checkFirmerWire, firmnessKeys, formatFirmer, readFirmer } from "./firmer-wire.ts";
import { formatLoose, looseKeys, readLoose } from "./loose-wire.ts";
import { cornerSchema, gradeSchema } from "./place-schema.ts";

/** What is wrong or different with one joint, as it stands in JSON. */
export const rubberFaultWire = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("torn"), grade: gradeSchema }),
  z.strictObject({ kind: z.literal("loose"), ...looseKeys }),
  z.strictObject({ kind: z.literal("firmer"), ...firmnessKeys }),
]);

/** What the sheet of one fault is asked with, as it stands in JSON: keys with units. */
export const faultWire = z.strictObject({
  sheet: z.literal("fault"),
  family: z.string(),
  corner: cornerSchema,
  position: z.string(),
  fault: rubberFaultWire,
  condition: conditionWire,
});

type AskedFault = Extract<SheetQuestion, { kind: "fault" }>;

/** A fault of a joint from JSON; of a firmer one what checkFirmerWire has let pass. */
export const readFault = (wire: z.infer<typeof rubberFaultWire>): RubberFault => {
  switch (wire.kind) {
    case "torn":
      return wire;
    case "loose":
      return readLoose(wire);
    case "firmer":
      return readFirmer(wire);
  }
};

/** The same as it is sent. */
export const formatFault = (asked: RubberFault): z.input<typeof rubberFaultWire> => {
  switch (asked.kind) {
    case "torn":
      return asked;
    case "loose":
      return { kind: "loose", ...formatLoose(asked) };
    case "firmer":
      return { kind: "firmer", ...formatFirmer(asked) };
  }
};

/** What no schema sees of the question of a fault, said of a document that may be wrong elsewhere. */
export const checkFaultWire = (raw: unknown): readonly Finding[] =>
  isObject(raw) && isObject(raw.fault) && raw.fault.kind === "firmer" ? checkFirmerWire(raw.fault, "fault") : [];

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
    fault: formatFault(asked),
    condition: formatCondition(condition),
  };
};
