import { z } from "zod";
import type { SheetQuestion } from "#casework";
import type { Finding } from "#numeric";
import type { Family } from "#vehicle";
import { isObject } from "../doors/loose-corner.ts";
import { readJson } from "../read-json.ts";
import { type Parsed, parseReading } from "../refusal.ts";
import { carWire, checkCarWire, formatCar, readCar } from "./car-wire.ts";
import { checkFaultWire, faultWire, formatFaultQuestion, readFaultQuestion } from "./fault-wire.ts";
import { formatHold, holdWire, readHold } from "./hold-wire.ts";
import { checkLayoutWire, formatLayoutQuestion, layoutPath, layoutWire, readLayoutQuestion } from "./layout-wire.ts";
import { formatMatch, matchPath, matchWire, readMatch } from "./match-wire.ts";
import { formatShake, readShake, shakeWire } from "./shake-wire.ts";
import { checkTravelWire, formatTravel, readTravel, travelWire } from "./travel-wire.ts";

const wire = z.discriminatedUnion("sheet", [
  faultWire,
  holdWire,
  carWire,
  travelWire,
  shakeWire,
  matchWire,
  layoutWire,
]);

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
  const reading = readJson(text);
  const own = reading.readable ? checkWire(reading.value) : [];
  const parsed = parseReading(wire, reading, own);
  if ("findings" in parsed) return parsed;
  const asked = parsed.value;
  if (asked.sheet === "layout") {
    const question = readLayoutQuestion(asked);
    return "findings" in question ? question : { value: { families: [], withFamilies: () => question.value } };
  }
  const beside = asked.sheet === "travel" ? asked.beside : undefined;
  return {
    value: {
      families: [
        { path: "family", id: asked.family },
        ...(beside === undefined ? [] : [{ path: "beside", id: beside }]),
      ],
      withFamilies: (found) => {
        const family = familyOf(found, 0);
        switch (asked.sheet) {
          case "fault":
            return readFaultQuestion(asked, family);
          case "hold":
            return readHold(asked, family);
          case "car":
            return readCar(asked, family);
          case "shake":
            return readShake(asked, family);
          case "match":
            return readMatch(asked, family);
          case "travel":
            return readTravel(asked, family, beside === undefined ? null : familyOf(found, 1));
        }
      },
    },
  };
};

/** What no schema sees, whatever sheet is asked for. */
function checkWire(raw: unknown): readonly Finding[] {
  if (!isObject(raw)) return [];
  if (raw.sheet === "fault") return checkFaultWire(raw);
  if (raw.sheet === "car") return checkCarWire(raw);
  if (raw.sheet === "layout") return checkLayoutWire(raw);
  return raw.sheet === "travel" ? checkTravelWire(raw) : [];
}

function familyOf(found: readonly Family[], index: number): Family {
  const family = found[index];
  if (family === undefined) throw new RangeError("a car line of the question is not given");
  return family;
}

/** The question of a printed sheet as it is sent. */
export const formatSheetQuestion = (question: SheetQuestion): SheetQuestionWire => {
  switch (question.kind) {
    case "fault":
      return formatFaultQuestion(question);
    case "hold":
      return formatHold(question);
    case "car":
      return formatCar(question);
    case "shake":
      return formatShake(question);
    case "match":
      return formatMatch(question);
    case "travel":
      return formatTravel(question);
    case "layout":
      return formatLayoutQuestion(question);
  }
};

/** Path inside the question of a hold as casework names it -> the key a sender wrote. */
const wirePaths: Readonly<Record<string, string>> = {
  position: "hand.position",
  "fault.play": "hand.fault.play_mm",
  "fault.grade": "hand.fault.grade",
  way: "hand.way",
  "way.moment": "hand.way.moment_nm",
  "way.force": "hand.way.force_n",
};

/** The same of a sheet of a fault, of shake, of the whole car, and over travel, where they differ. */
const otherPaths: Readonly<Record<string, string>> = {
  "fault.play": "fault.play_mm",
  "fault.hardness.from": "fault.old_hardness_shore_a",
  "fault.hardness.to": "fault.new_hardness_shore_a",
  variation: "variation_mm",
  "motion.by": "motion",
  "condition.contactRise": "condition.contact_rise_mm",
  "condition.rack": "condition.rack_mm",
  "condition.braking": "condition.braking_n",
  "condition.lateral": "condition.lateral_n",
  "condition.drive": "condition.drive_n",
};

/** Over travel each line has a key of its own. */
const travelPaths: Readonly<Record<string, string>> = {
  ...otherPaths,
  "fault.grade": "torn.grade",
  "fault.factor": "firmer.factor",
  "fault.hardness.from": "firmer.old_hardness_shore_a",
  "fault.hardness.to": "firmer.new_hardness_shore_a",
};

/** Findings about the question of a sheet with the paths a sender knows. */
export const formatSheetFindings = (kind: SheetQuestion["kind"], findings: readonly Finding[]): readonly Finding[] => {
  if (kind === "match") return findings.map((finding) => ({ ...finding, path: matchPath(finding.path) }));
  if (kind === "layout") return findings.map((finding) => ({ ...finding, path: layoutPath(finding.path) }));
  const paths = kind === "hold" ? wirePaths : kind === "travel" ? travelPaths : otherPaths;
  return findings.map((finding) => ({ ...finding, path: paths[finding.path] ?? finding.path }));
};
