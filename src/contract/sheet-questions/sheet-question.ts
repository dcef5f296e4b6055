import { z } from "zod";
import type { SheetQuestion } from "#casework";
import type { Finding } from "#numeric";
import type { Family } from "#vehicle";
import { readJson } from "../read-json.ts";
import { type Parsed, parseReading } from "../refusal.ts";
import { formatHold, holdWire, readHold } from "./hold-wire.ts";

const wire = z.discriminatedUnion("sheet", [holdWire]);

/** What a printed sheet is asked with, as it stands in JSON: keys with units. */
export type SheetQuestionWire = z.input<typeof wire>;

/** The question of a sheet before its car lines are found. */
export interface AskedSheet {
  /** Where in the question each car line is named, and its id. */
  readonly families: readonly { readonly path: string; readonly id: string }[];
  /** The whole question; the car lines in the order they are named. */
  readonly withFamilies: (found: readonly Family[]) => SheetQuestion;
}

/** Reads the question of a printed sheet from a JSON text; every finding at once. */
export const parseSheetQuestion = (text: string): Parsed<AskedSheet> => {
  const parsed = parseReading(wire, readJson(text));
  if ("findings" in parsed) return parsed;
  const asked = parsed.value;
  return {
    value: {
      families: [{ path: "family", id: asked.family }],
      withFamilies: (found) => readHold(asked, familyOf(found, 0)),
    },
  };
};

function familyOf(found: readonly Family[], index: number): Family {
  const family = found[index];
  if (family === undefined) throw new RangeError("a car line of the question is not given");
  return family;
}

/** The question of a printed sheet as it is sent. */
export const formatSheetQuestion = (question: SheetQuestion): SheetQuestionWire => formatHold(question);

/** Path inside a question as casework names it -> the key a sender wrote. */
const wirePaths: Readonly<Record<string, string>> = {
  position: "hand.position",
  "fault.play": "hand.fault.play_mm",
  "fault.grade": "hand.fault.grade",
  way: "hand.way",
  "way.moment": "hand.way.moment_nm",
  "way.force": "hand.way.force_n",
};

/** Findings about the question of a sheet with the paths a sender knows. */
export const formatSheetFindings = (findings: readonly Finding[]): readonly Finding[] =>
  findings.map((finding) => ({ ...finding, path: wirePaths[finding.path] ?? finding.path }));
