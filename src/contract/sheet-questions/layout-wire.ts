import { z } from "zod";
import type { BodiesFault, SheetQuestion } from "#casework";
import type { Finding } from "#numeric";
import { metresFromMm, mmFromMetres } from "#quantity";
import { parseBodiesFile } from "../doors/bodies-file.ts";
import { isObject, type Loose } from "../doors/loose-corner.ts";
import type { Parsed } from "../refusal.ts";
import { conditionWire, formatCondition, readCondition } from "./condition-wire.ts";

const place = { part: z.string().min(1), end: z.enum(["from", "to"]).optional() };
const factor = z.number().positive().max(100);

const fault = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("torn"), ...place }),
  z.strictObject({
    kind: z.literal("firmer"),
    ...place,
    factor_low: factor.optional(),
    factor_high: factor.optional(),
    old_hardness_shore_a: z.number().optional(),
    new_hardness_shore_a: z.number().optional(),
  }),
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
  file: z.record(z.string(), z.unknown()),
  fault: fault.optional(),
  condition: conditionWire.prefault({}),
});

type LayoutQuestion = Extract<SheetQuestion, { kind: "layout" }>;

/** Findings about the file of a question, each path under "file". */
const findingsOf = (parsed: Parsed<unknown>): readonly Finding[] =>
  "findings" in parsed ? parsed.findings.map((finding) => ({ ...finding, path: `file.${finding.path}` })) : [];

/** What no schema of the question sees: the whole file, with rubber or a layout alone, and how firm a firmer part is. */
export const checkLayoutWire = (raw: Loose): readonly Finding[] => [
  ...(isObject(raw.file) ? findingsOf(parseBodiesFile(JSON.stringify(raw.file))) : []),
  ...(isObject(raw.fault) && raw.fault.kind === "firmer" ? checkHowFirm(raw.fault) : []),
];

const BY_FACTOR = ["factor_low", "factor_high"] as const;
const BY_HARDNESS = ["old_hardness_shore_a", "new_hardness_shore_a"] as const;

/** A firmer part is told in exactly one of two ways, each of two numbers. */
function checkHowFirm(fault: Loose): readonly Finding[] {
  const given = (keys: readonly string[]) => keys.filter((key) => fault[key] !== undefined);
  const [factors, hardnesses] = [given(BY_FACTOR), given(BY_HARDNESS)];
  if (factors.length > 0 === hardnesses.length > 0)
    return [
      {
        code: "one-of-two",
        path: "fault.factor_low",
        got: factors.length > 0 ? "both factors and a hardness" : "neither factors nor a hardness",
        needed: "factor_low with factor_high, or old_hardness_shore_a with new_hardness_shore_a",
        hint: "The factors say more than a hardness.",
      },
    ];
  const keys = factors.length > 0 ? BY_FACTOR : BY_HARDNESS;
  return keys
    .filter((key) => fault[key] === undefined)
    .map((key) => ({
      code: "missing-key",
      path: `fault.${key}`,
      got: "nothing",
      needed: keys.join(" and "),
      hint: factors.length > 0 ? "A range has two ends." : "A layout has no hardness on file: say both.",
    }));
}

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
    : wire.factor_low !== undefined && wire.factor_high !== undefined
      ? { kind: "firmer", place: at, low: wire.factor_low, high: wire.factor_high }
      : {
          kind: "firmer",
          place: at,
          hardness: { from: wire.old_hardness_shore_a ?? null, to: wire.new_hardness_shore_a ?? null },
        };
};

/** The question of a sheet of a layout; findings where its file cannot be used. */
export function readLayoutQuestion(wire: z.output<typeof layoutWire>): Parsed<LayoutQuestion> {
  const file = parseBodiesFile(JSON.stringify(wire.file));
  if ("findings" in file) return { findings: findingsOf(file) };
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
  if (of.kind === "torn") return { kind: "torn", ...at };
  if (!("hardness" in of)) return { kind: "firmer", ...at, factor_low: of.low, factor_high: of.high };
  const { from, to } = of.hardness;
  return {
    kind: "firmer",
    ...at,
    ...(from === null ? {} : { old_hardness_shore_a: from }),
    ...(to === null ? {} : { new_hardness_shore_a: to }),
  };
};

/** The same as it is sent. */
export const formatLayoutQuestion = ({
  question: { file, fault: of, condition },
}: LayoutQuestion): z.input<typeof layoutWire> => ({
  sheet: "layout",
  // Its text was read and found to be one before it became a question.
  file: JSON.parse(file.text) as Record<string, unknown>,
  ...(of === null ? {} : { fault: formatFault(of) }),
  condition: formatCondition(condition),
});

/** Paths inside the question as casework names them -> as a sender wrote them. */
const PATHS: Readonly<Record<string, string>> = {
  "fault.play": "fault.play_mm",
  "fault.low": "fault.factor_low",
  "fault.hardness.from": "fault.old_hardness_shore_a",
  "fault.hardness.to": "fault.new_hardness_shore_a",
  "condition.contactRise": "condition.contact_rise_mm",
  "layout.spring": "file.layout.spring",
  "layout.damper": "file.layout.damper",
  unsprung_kg: "file.unsprung_kg",
};

/** A path of a finding about such a question as a sender knows it. */
export const layoutPath = (path: string): string => PATHS[path] ?? path;
