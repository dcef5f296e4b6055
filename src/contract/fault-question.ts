import { z } from "zod";
import type { FaultQuestion, RubberFault } from "#casework";
import type { Finding } from "#numeric";
import { metresFromMm, mmFromMetres } from "#quantity";
import { readJson } from "./read-json.ts";
import { type Parsed, parseReading } from "./refusal.ts";

const fault = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("torn"), grade: z.union([z.literal(1), z.literal(2), z.literal(3)]) }),
  z.strictObject({ kind: z.literal("loose"), play_mm: z.number().positive(), assumed: z.literal(true).optional() }),
  z.strictObject({ kind: z.literal("firmer"), factor: z.number().positive() }),
]);

const condition = z.strictObject({
  contact_rise_mm: z.number().default(0),
  rack_mm: z.number().default(0),
  braking_n: z.number().default(0),
  lateral_n: z.number().default(0),
  drive_n: z.number().default(0),
});

const sheetQuestion = z.strictObject({
  family: z.string(),
  corner: z.enum(["front-left", "front-right", "rear-left", "rear-right"]),
  position: z.string(),
  fault,
  condition,
});

/** What the sheet of a fault is asked with, as it stands in JSON: keys with units. */
export type FaultQuestionSheet = z.input<typeof sheetQuestion>;

/** A question about one family. */
export interface AskedFault {
  readonly family: string;
  readonly question: FaultQuestion;
}

const readFault = (wire: z.infer<typeof fault>): RubberFault =>
  wire.kind === "loose"
    ? { kind: "loose", play: metresFromMm(wire.play_mm), ...(wire.assumed ? { assumed: true } : {}) }
    : wire;

/** Reads the question of a fault sheet from a JSON text; every finding at once. */
export const parseFaultQuestion = (text: string): Parsed<AskedFault> => {
  const parsed = parseReading(sheetQuestion, readJson(text));
  if ("findings" in parsed) return parsed;
  const { family, corner, position, condition: at, fault: wire } = parsed.value;
  return {
    value: {
      family,
      question: {
        corner,
        position,
        fault: readFault(wire),
        condition: {
          contactRise: metresFromMm(at.contact_rise_mm),
          rack: metresFromMm(at.rack_mm),
          braking: at.braking_n,
          lateral: at.lateral_n,
          drive: at.drive_n,
        },
      },
    },
  };
};

/** The question of a fault sheet as the server is asked it. */
export const formatFaultQuestion = ({ family, question }: AskedFault): FaultQuestionSheet => {
  const { corner, position, condition: at, fault: asked } = question;
  return {
    family,
    corner,
    position,
    fault:
      asked.kind === "loose"
        ? { kind: "loose", play_mm: mmFromMetres(asked.play), ...(asked.assumed ? { assumed: true } : {}) }
        : asked,
    condition: {
      contact_rise_mm: mmFromMetres(at.contactRise),
      rack_mm: mmFromMetres(at.rack),
      braking_n: at.braking,
      lateral_n: at.lateral,
      drive_n: at.drive,
    },
  };
};

/** Path inside a question as casework names it -> the key a sender wrote. */
const wirePaths: Readonly<Record<string, string>> = {
  "fault.play": "fault.play_mm",
  "condition.contactRise": "condition.contact_rise_mm",
  "condition.rack": "condition.rack_mm",
  "condition.braking": "condition.braking_n",
  "condition.lateral": "condition.lateral_n",
  "condition.drive": "condition.drive_n",
};

/** Findings about a question with the paths a sender knows. */
export const formatQuestionFindings = (findings: readonly Finding[]): readonly Finding[] =>
  findings.map((finding) => ({ ...finding, path: wirePaths[finding.path] ?? finding.path }));
