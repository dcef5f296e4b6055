import { describe, expect, it } from "vitest";
import { computeFaultEffect, type FaultQuestion, formatFigure } from "#casework";
import { askDoor, formatComplianceQuestion, parseFamily } from "#contract";
import { demoFamilySheets } from "#demo";
import { degreesFromRadians } from "#quantity";
import { printFaultSheet } from "#report";
import { type Family, positionsOf } from "#vehicle";
import { modelCorner, softFaults } from "../../src/casework/fault/corner-model.ts";
import { CornerState, loadOf } from "../../src/casework/fault/fault-states.ts";
import { flatten, readPdfWords } from "../e2e/pdf-words.ts";

/** Reads a demo sheet, changed by the test first. */
function readFamily(id: string, change: (sheet: Record<string, unknown>) => void = () => {}): Family {
  const sheet = structuredClone(demoFamilySheets[id]) as Record<string, unknown>;
  change(sheet);
  const parsed = parseFamily(sheet);
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  return parsed.family;
}

const question: FaultQuestion = {
  corner: "rear-left",
  position: "rear-left/trailing-link/inner-bush",
  fault: { kind: "torn", grade: 3 },
  condition: { contactRise: 0, rack: 0, braking: 2000, lateral: 0, drive: 0 },
};

function effectOf(family: Family, q: FaultQuestion = question) {
  const answer = computeFaultEffect(family, q);
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return answer.effect;
}

interface DoorState {
  readonly toe_deg: number;
  readonly camber_deg: number;
}

/** The same question asked at the door. */
function doorState(family: Family, q: FaultQuestion, factor: number | null): DoorState {
  const answer = askDoor("linkage.compliance", formatComplianceQuestion(family, q, factor));
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return (answer.output as { states: DoorState[] }).states[0] as DoorState;
}

function expectChain(family: Family, q: FaultQuestion = question): void {
  const effect = effectOf(family, q);
  const share = effect.tornShare;
  if (!share) throw new Error("a torn bush has a torn share");
  const sound = doorState(family, q, null);
  const torn = doorState(family, q, Math.sqrt(share.low * share.high));
  expect(effect.headline.value).toBeCloseTo(torn.toe_deg - sound.toe_deg, 9);
  const toe = effect.curves.find((c) => c.quantity === "toe-change");
  const atRest = effect.rises.findIndex((r) => Math.abs(r) < 1e-9);
  expect(toe?.lines[0]?.values[atRest]).toBeCloseTo(torn.toe_deg - sound.toe_deg, 9);
  const shown = formatFigure({ ...effect.headline, value: Math.abs(torn.toe_deg - sound.toe_deg) });
  if (!effect.sentence.includes("less than")) expect(effect.sentence).toContain(shown);
  const low = doorState(family, q, share.low);
  const high = doorState(family, q, share.high);
  const ends = [low.toe_deg - sound.toe_deg, high.toe_deg - sound.toe_deg];
  expect(effect.headline.range?.[0]).toBeCloseTo(Math.min(...ends), 9);
  expect(effect.headline.range?.[1]).toBeCloseTo(Math.max(...ends), 9);
}

/** Far enough that the digits that are shown change, mm. */
const MOVED = 12;

type Loose = Record<string, unknown>;
const rearLinks = (sheet: Loose): Loose[] => (sheet.rear as Loose).links as Loose[];
const linkNamed = (sheet: Loose, name: string): Loose => {
  const link = rearLinks(sheet).find((l) => l.name === name);
  if (!link) throw new Error(`no link ${name}`);
  return link;
};

describe("the chain from a family's file to figure, curve and sentence", () => {
  it("equals the door's answer for the family as it stands", () => {
    expectChain(readFamily("ouzel-saloon"));
  });

  it("holds on every wheel, left and right, front and rear, under other forces", { timeout: 60_000 }, () => {
    const family = readFamily("ouzel-saloon");
    for (const corner of ["front-left", "front-right", "rear-left", "rear-right"] as const) {
      const torn = positionsOf(family).filter((p) => p.joint && p.kind === "bush" && p.id.startsWith(corner));
      for (const position of torn) {
        const effect = computeFaultEffect(family, { ...question, corner, position: position.id });
        expect("effect" in effect).toBe(true);
        expectChain(family, {
          ...question,
          corner,
          position: position.id,
          condition: { contactRise: 0, rack: 0, braking: 1500, lateral: 800, drive: 0 },
        });
      }
    }
  });

  it("moves everything when one rubber rate in the file is changed", () => {
    const before = effectOf(readFamily("ouzel-saloon"));
    const changed = readFamily("ouzel-saloon", (sheet) => {
      const joint = linkNamed(sheet, "trailing-link").inner_joint as Loose;
      joint.radial_n_per_mm = (joint.radial_n_per_mm as number) / 2;
    });
    const after = effectOf(changed);
    expectChain(changed);
    expect(Math.abs(after.headline.value)).toBeGreaterThan(1.3 * Math.abs(before.headline.value));
    expect(after.sentence).not.toBe(before.sentence);
    expect(after.curves[0]?.lines[1]?.values).not.toEqual(before.curves[0]?.lines[1]?.values);
  });

  it("moves by the sign and size the exact derivative says when one hard point is moved", () => {
    const family = readFamily("ouzel-saloon");
    const { slope } = exactSlope(family, "toe-link.inner", 2);
    const moveToeLink = (byMm: number) => (sheet: Loose) => {
      const at = linkNamed(sheet, "toe-link").inner_mm as number[];
      at[2] = (at[2] as number) + byMm;
    };
    const at = (byMm: number): number => effectOf(readFamily("ouzel-saloon", moveToeLink(byMm))).headline.value;
    expect(Math.sign(at(2) - at(-2))).toBe(Math.sign(slope));
    expect((at(0.05) - at(-0.05)) / 0.1).toBeCloseTo(slope, 6);
  });

  it("moves door, curve, sentence and sheet by that sign", async () => {
    const { slope } = exactSlope(readFamily("ouzel-saloon"), "toe-link.inner", 2);
    const movedBy = async (byMm: number) => {
      const family = readFamily("ouzel-saloon", (sheet) => {
        const at = linkNamed(sheet, "toe-link").inner_mm as number[];
        at[2] = (at[2] as number) + byMm;
      });
      expectChain(family);
      const effect = effectOf(family);
      const shown = formatFigure({ ...effect.headline, value: Math.abs(effect.headline.value) });
      const sheet = flatten(readPdfWords(Buffer.from(await printFaultSheet({ family, effect, date: "1 May 2026" }))));
      expect(sheet).toContain(flatten(effect.sentence));
      expect(sheet).toContain(flatten(`${shown} further`));
      return { effect, shown: Math.sign(effect.headline.value) * Number.parseFloat(shown) };
    };
    const [low, high] = [await movedBy(-MOVED), await movedBy(MOVED)];
    expect(Math.sign(high.effect.headline.value - low.effect.headline.value)).toBe(Math.sign(slope));
    expect(Math.sign(high.shown - low.shown)).toBe(Math.sign(slope));
    expect(high.effect.sentence).not.toBe(low.effect.sentence);
    const atRest = (effect: typeof low.effect): number => {
      const curve = effect.curves.find(({ quantity }) => quantity === "toe-change");
      return curve?.lines[0]?.values[effect.rises.findIndex((rise) => Math.abs(rise) < 1e-9)] ?? Number.NaN;
    };
    expect(Math.sign(atRest(high.effect) - atRest(low.effect))).toBe(Math.sign(slope));
  });
});

/** Exact derivative of the headline by one coordinate, degrees per mm, from the jets of both states. */
function exactSlope(family: Family, point: string, axis: 0 | 1 | 2): { slope: number } {
  const model = modelCorner(family, question.corner);
  const position = positionsOf(family).find((p) => p.id === question.position);
  if (!position) throw new Error("no position");
  const share = effectOf(family).tornShare;
  if (!share) throw new Error("no torn share");
  const torn = new CornerState(model, softFaults(model.assembly, position, Math.sqrt(share.low * share.high)));
  const load = loadOf(question.condition, false);
  const a = new CornerState(model, []).bandAt(load);
  const b = torn.bandAt(load);
  const { jets } = torn.band;
  const index = jets.parameters.findIndex(
    (p) => p.kind === "coordinate" && jets.linkage.mechanism.pointNames[p.point] === point && p.axis === axis,
  );
  if (!a || !b || index < 0) throw new Error("no derivative");
  const perMetre = (b.toe[index + 1] as number) - (a.toe[index + 1] as number);
  return { slope: degreesFromRadians(perMetre) / 1000 };
}
