import { z } from "zod";
import type { BodiesFault, SheetQuestion } from "#casework";
import type { Finding } from "#numeric";
import { metresFromMm, mmFromMetres } from "#quantity";
import { bodiesFile, checkBodiesFile, readBodiesFile } from "../doors/bodies-file.ts";
import { isObject, type Loose } from "../doors/loose-corner.ts";
import type { Parsed } from "../refusal.ts";
import { conditionWire, formatCondition, readCondition } from "./condition-wire.ts";

const place = { part: z.string().min(1), end: z.enum(["from", "to"]).optional() };
const factor = z.number().positive().max(100);

const fault = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("torn"), ...place }),
  z.strictObject({ kind: z.literal("firmer"), ...place, factor_low: factor, factor_high: factor }),
  z.strictObject({
    kind: z.literal("loose"),
    part: place.part,
    play_mm: z.number().positive().max(100),
    assumed: z.literal(true).optional(),
  }),
]);

/** What the sheet of a layout from a file is asked with, as it stands in JSON: the file as an object, keys with units. */
export const layoutWire = z.strictObject({
  sheet: z.literal("layout"),
  file: bodiesFile,
  fault: fault.optional(),
  condition: conditionWire.prefault({}),
});

type LayoutQuestion = Extract<SheetQuestion, { kind: "layout" }>;

/** What no schema sees in such a question: the whole file, each path under "file". */
export const checkLayoutWire = (raw: Loose): readonly Finding[] =>
  isObject(raw.file) ? checkBodiesFile(raw.file).map((finding) => ({ ...finding, path: `file.${finding.path}` })) : [];

const readFault = (wire: z.infer<typeof fault>): BodiesFault => {
  if (wire.kind === "loose")
    return {
      kind: "loose",
      part: wire.part,
      play: metresFromMm(wire.play_mm),
      ...(wire.assumed ? { assumed: true } : {}),
    };
  const at = { part: wire.part, end: wire.end ?? null };
  return wire.kind === "torn"
    ? { kind: "torn", place: at }
    : { kind: "firmer", place: at, low: wire.factor_low, high: wire.factor_high };
};

/** The question of a sheet of a layout; findings where its file holds things twice. */
export function readLayoutQuestion(wire: z.output<typeof layoutWire>): Parsed<LayoutQuestion> {
  const file = readBodiesFile(wire.file, JSON.stringify(wire.file));
  if ("findings" in file)
    return { findings: file.findings.map((finding) => ({ ...finding, path: `file.${finding.path}` })) };
  const question = {
    file: file.value,
    fault: wire.fault === undefined ? null : readFault(wire.fault),
    condition: readCondition(wire.condition),
  };
  return { value: { kind: "layout", question } };
}

const formatFault = (of: BodiesFault): z.input<typeof fault> => {
  if (of.kind === "loose")
    return {
      kind: "loose",
      part: of.part,
      play_mm: mmFromMetres(of.play),
      ...(of.assumed ? { assumed: true } : {}),
    };
  const { part, end } = of.place;
  const at = { part, ...(end === null ? {} : { end }) };
  return of.kind === "torn"
    ? { kind: "torn", ...at }
    : { kind: "firmer", ...at, factor_low: of.low, factor_high: of.high };
};

/** The same as it is sent. */
export const formatLayoutQuestion = ({
  question: { file, fault: of, condition },
}: LayoutQuestion): z.input<typeof layoutWire> => ({
  sheet: "layout",
  // Its text was read and found to be one before it became a question.
  file: JSON.parse(file.text) as z.input<typeof bodiesFile>,
  ...(of === null ? {} : { fault: formatFault(of) }),
  condition: formatCondition(condition),
});

/** Paths inside the question as casework names them -> as a sender wrote them. */
const PATHS: Readonly<Record<string, string>> = {
  "fault.play": "fault.play_mm",
  "fault.low": "fault.factor_low",
  "condition.contactRise": "condition.contact_rise_mm",
  "layout.spring": "file.layout.spring",
  "layout.damper": "file.layout.damper",
  unsprung_kg: "file.unsprung_kg",
};

/** A path of a finding about such a question as a sender knows it. */
export const layoutPath = (path: string): string => PATHS[path] ?? path;
