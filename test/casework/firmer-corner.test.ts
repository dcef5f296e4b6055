import { describe, expect, it } from "vitest";
import {
  type Condition,
  computeTravelSheet,
  type FirmerRubber,
  type TravelFigure,
  type TravelLine,
  type TravelSheet,
} from "#casework";
import { askDoor, formatComplianceQuestion, parseFamily } from "#contract";
import { demoFamilySheets } from "#demo";

const parsed = parseFamily(structuredClone(demoFamilySheets["dunlin-hatch"]));
if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
const dunlin = parsed.family;
const condition: Condition = { contactRise: 0, rack: 0, braking: 2000, lateral: 0, drive: 0 };
const figures: readonly TravelFigure[] = ["toe", "camber"];

const ask = (fault: FirmerRubber, wanted: readonly TravelFigure[] = figures) =>
  computeTravelSheet({
    family: dunlin,
    corner: "front-left",
    condition,
    subjects: [{ kind: "sound" }, { kind: "every-rubber", fault }],
    figures: wanted,
  });
const sheetOf = (fault: FirmerRubber, wanted?: readonly TravelFigure[]): TravelSheet => {
  const answer = ask(fault, wanted);
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return answer.sheet;
};
const lineOf = (sheet: TravelSheet, figure: TravelFigure): TravelLine => {
  const line = sheet.plots.find((plot) => plot.figure === figure)?.lines[1];
  if (!line) throw new Error(`no line of ${figure}`);
  return line;
};
const harder = (from: number | null, to: number | null): FirmerRubber => ({ kind: "firmer", hardness: { from, to } });

interface RubberEntry {
  readonly link: string;
  readonly end?: string;
}

/** Toe and camber at the door with every bush of the strut corner `factor` times as firm; its ball joints stay. */
const atTheDoor = (factor: number): { readonly toe_deg: number; readonly camber_deg: number } => {
  const position = "front-left/lower-arm/rear-bush";
  const fault = { kind: "firmer", factor } as const;
  const question = formatComplianceQuestion(dunlin, { corner: "front-left", position, fault, condition }, null);
  const bushes = (question.rubber as readonly RubberEntry[]).filter(({ link, end }) => {
    const own = dunlin.front.links.find(({ name }) => name === link);
    return own === undefined || (end === "inner" ? own.innerJoint : own.outerJoint).kind !== "ball-joint";
  });
  expect(bushes.length).toBe(3);
  const faults = bushes.map(({ link, end }) => ({ kind: "soft", link, end: end ?? "inner", factor }));
  const answer = askDoor("linkage.compliance", { ...question, faults });
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  const [state] = (answer.output as { states: { toe_deg: number; camber_deg: number }[] }).states;
  if (!state) throw new Error("no state");
  return state;
};

describe("a corner with every rubber firmer", () => {
  it("stands as linkage.compliance says with every bush as firm, its ball joints as they are", () => {
    const sheet = sheetOf({ kind: "firmer", factor: 2.5 });
    const door = atTheDoor(2.5);
    const atRest = (figure: TravelFigure): number => {
      const { rises, values } = lineOf(sheet, figure);
      return values[rises.indexOf(0)] ?? Number.NaN;
    };
    expect(atRest("toe")).toBeCloseTo(door.toe_deg, 9);
    expect(atRest("camber")).toBeCloseTo(door.camber_deg, 9);
    const [row] = sheet.rubber;
    const change = row?.toe.find(({ travel }) => travel === 0);
    expect(change?.value).toBeCloseTo(door.toe_deg - atTheDoor(1).toe_deg, 9);
    expect(row?.means).toBe("2.50 times the sound rate is taken as exact.");
  });

  it("by hardness has the bands of both ends of the factor around it", () => {
    const sheet = sheetOf(harder(55, 65));
    const [, low, high] =
      /makes [\d.]+ times the sound rate, ([\d.]+) to ([\d.]+) \(95 %\)/.exec(sheet.rubber[0]?.means ?? "") ?? [];
    const ends = [low, high].map((factor) => sheetOf({ kind: "firmer", factor: Number(factor) }));
    for (const figure of figures) {
      const line = lineOf(sheet, figure);
      const [one, other] = ends.map((end) => lineOf(end, figure));
      line.low.forEach((bound, i) => {
        expect(bound).toBeCloseTo(Math.min(one?.low[i] ?? 0, other?.low[i] ?? 0), 2);
        expect(line.high[i]).toBeCloseTo(Math.max(one?.high[i] ?? 0, other?.high[i] ?? 0), 2);
      });
    }
  });

  it("changes toe less under braking from a sound corner the less it is firmer", () => {
    const at = (factor: number): number => {
      const { rises, values } = lineOf(sheetOf({ kind: "firmer", factor }), "toe");
      return values[rises.indexOf(0)] ?? Number.NaN;
    };
    const sound = at(1);
    expect(Math.abs(at(1.2) - sound)).toBeLessThan(Math.abs(at(2) - sound));
    expect(at(2) - sound).not.toBeCloseTo(0, 3);
  });

  it("has no line of a figure the rubber has no part in, and says so", () => {
    const [plot] = sheetOf({ kind: "firmer", factor: 2 }, ["roll-centre"]).plots;
    expect(plot?.lines).toHaveLength(1);
    expect(plot?.leftOut).toEqual(["every rubber firmer, 2 times: drawn for toe, camber and wheelbase only"]);
  });

  it("asks for one old hardness of all, and refuses a softer one", () => {
    expect(ask(harder(null, 65))).toMatchObject({
      findings: [{ code: "hardness-not-known", path: "fault.hardness.from" }],
    });
    expect(ask(harder(65, 55))).toMatchObject({ findings: [{ code: "not-consistent", path: "fault.hardness.to" }] });
  });
});
