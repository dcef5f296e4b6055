import { z } from "zod";
import { type SheetQuestion, type TravelFigure, type TravelSubject, travelFigureForms } from "#casework";
import type { Finding } from "#numeric";
import { metresFromMm, mmFromMetres } from "#quantity";
import type { Family } from "#vehicle";
import { isObject } from "../doors/loose-corner.ts";
import { conditionWire, formatCondition, readCondition } from "./condition-wire.ts";
import { checkFirmerWire, firmnessKeys, formatFirmer, readFirmer } from "./firmer-wire.ts";
import { formatLoose, looseKeys, readLoose } from "./loose-wire.ts";
import { cornerSchema, gradeSchema } from "./place-schema.ts";

const figures = travelFigureForms.map(({ figure }) => figure) as [TravelFigure, ...TravelFigure[]];

/** Stands in the place of a position where all rubber of the corner is firmer. */
const EVERY_RUBBER = "every-rubber" as const;

/** What the sheet over travel is asked with, as it stands in JSON: lines beside the sound one by their keys. */
export const travelWire = z.strictObject({
  sheet: z.literal("travel"),
  family: z.string(),
  corner: cornerSchema,
  condition: conditionWire,
  torn: z.strictObject({ position: z.string(), grade: gradeSchema }).optional(),
  loose: z.strictObject({ position: z.string(), ...looseKeys }).optional(),
  firmer: z.strictObject({ position: z.string(), ...firmnessKeys }).optional(),
  lowered_mm: z.number().positive().optional(),
  beside: z.string().optional(),
  figures: z.array(z.enum(figures)).min(1).max(2),
});

/** What no schema sees of the question over travel, said of a document that may be wrong elsewhere. */
export const checkTravelWire = (raw: unknown): readonly Finding[] =>
  isObject(raw) && isObject(raw.firmer) ? checkFirmerWire(raw.firmer, "firmer") : [];

type AskedTravel = Extract<SheetQuestion, { kind: "travel" }>;

/** The question of a sheet over travel, its car lines found; the second is the one beside. */
export const readTravel = (wire: z.infer<typeof travelWire>, family: Family, beside: Family | null): AskedTravel => {
  const { torn, loose, firmer, lowered_mm } = wire;
  const subjects: TravelSubject[] = [
    { kind: "sound" },
    ...(torn
      ? [{ kind: "rubber" as const, position: torn.position, fault: { kind: "torn" as const, grade: torn.grade } }]
      : []),
    ...(loose ? [{ kind: "rubber" as const, position: loose.position, fault: readLoose(loose) }] : []),
    ...(firmer
      ? [
          firmer.position === EVERY_RUBBER
            ? { kind: EVERY_RUBBER, fault: readFirmer(firmer) }
            : ({ kind: "rubber", position: firmer.position, fault: readFirmer(firmer) } as const),
        ]
      : []),
    ...(lowered_mm === undefined ? [] : [{ kind: "lowered" as const, by: metresFromMm(lowered_mm) }]),
    ...(beside === null ? [] : [{ kind: "beside" as const, family: beside }]),
  ];
  return {
    kind: "travel",
    question: {
      family,
      corner: wire.corner,
      condition: readCondition(wire.condition),
      subjects,
      figures: wire.figures,
    },
  };
};

/** The same as it is sent. */
export const formatTravel = ({ question }: AskedTravel): z.input<typeof travelWire> => {
  const { family, corner, condition, subjects } = question;
  const lines: Pick<z.input<typeof travelWire>, "torn" | "loose" | "firmer" | "lowered_mm" | "beside"> = {};
  for (const one of subjects) {
    if (one.kind === "rubber" && one.fault.kind === "torn")
      lines.torn = { position: one.position, grade: one.fault.grade };
    if (one.kind === "rubber" && one.fault.kind === "loose")
      lines.loose = { position: one.position, ...formatLoose(one.fault) };
    if (one.kind === "rubber" && one.fault.kind === "firmer")
      lines.firmer = { position: one.position, ...formatFirmer(one.fault) };
    if (one.kind === EVERY_RUBBER) lines.firmer = { position: EVERY_RUBBER, ...formatFirmer(one.fault) };
    if (one.kind === "lowered") lines.lowered_mm = mmFromMetres(one.by);
    if (one.kind === "beside") lines.beside = one.family.id;
  }
  return {
    sheet: "travel",
    family: family.id,
    corner,
    condition: formatCondition(condition),
    ...lines,
    figures: [...question.figures],
  };
};
