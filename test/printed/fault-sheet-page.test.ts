import { describe, expect, it } from "vitest";
import { computeFaultEffect, type FaultEffect, type RubberFault } from "#casework";
import { printFaultSheet } from "#report";
import { type AxleName, type Corner, type Family, familyFromSilhouette, type LayoutName, positionsOf } from "#vehicle";
import { outsideFrame, overlappingWords, struckWords } from "./crowding.ts";
import { type PageInk, readPageInk } from "./page-ink.ts";

/** Half an inch, points. */
const MARGIN = 36;
const LONG_NAME = "A car line whose name runs on to sixty letters, all in one go";

const familyOf = (frontLayout: LayoutName, rearLayout: LayoutName, name: string): Family => {
  const made = familyFromSilhouette({ name, frontLayout, rearLayout, drivenAxle: "both" });
  if ("findings" in made) throw new Error("the silhouette of the test is wrong");
  return made.family;
};

const LAYOUTS: readonly (readonly [AxleName, Family])[] = [
  ["front", familyOf("strut", "five-link", "Short")],
  ["front", familyOf("five-link", "five-link", LONG_NAME)],
  ["front", familyOf("double-wishbone", "five-link", LONG_NAME.replaceAll(" ", ""))],
  ["rear", familyOf("strut", "five-link", LONG_NAME)],
  ["rear", familyOf("strut", "trailing-arm", "Short")],
];
const FAULTS: readonly RubberFault[] = [
  { kind: "torn", grade: 3 },
  { kind: "firmer", factor: 2 },
  { kind: "torn", grade: 2 },
  { kind: "loose", play: 0.001 },
];

/** Sheets of an axle: its joints on alternating sides, faults and forces in turn; a mount has no play and is then torn. */
async function sheetsOf(axle: AxleName, family: Family) {
  const joints = positionsOf(family).filter((p) => p.axle === axle && p.side === "left" && p.joint !== null);
  const sheets: { readonly name: string; readonly bytes: Uint8Array }[] = [];
  for (const [i, { id }] of joints.entries()) {
    const corner: Corner = `${axle}-${i % 2 === 0 ? "left" : "right"}`;
    const position = id.replace(`${axle}-left`, corner);
    const [braking, lateral] = [i % 3 === 2 ? 0 : 2000, i % 3 === 0 ? 0 : 1500];
    const condition = { contactRise: 0, rack: 0, braking, lateral, drive: 0 };
    const answers = [...FAULTS.slice(i % FAULTS.length), ...FAULTS].map(
      (fault) => () => computeFaultEffect(family, { corner, position, fault, condition }),
    );
    const effect = firstEffect(answers);
    if (effect === null) continue;
    const bytes = await printFaultSheet({ family, effect, date: "12 March 2026" });
    sheets.push({ name: `${position} ${effect.question.fault.kind}`, bytes });
  }
  return sheets;
}

/** The first question that can be computed; null where none can. */
function firstEffect(asks: readonly (() => ReturnType<typeof computeFaultEffect>)[]): FaultEffect | null {
  for (const ask of asks) {
    const answer = ask();
    if ("effect" in answer) return answer.effect;
  }
  return null;
}

describe("what is looked for", () => {
  const word = { text: "word", size: 10, x: 100, width: 20, base: 100, order: 1 };
  const page: PageInk = { width: 595, height: 842, words: [word], strokes: [], covers: [] };
  const line = (order: number) => ({ from: [90, 97], to: [130, 97], order }) as const;

  it("sees a word that reaches out of the frame, a line that does, words on words", () => {
    expect(outsideFrame({ ...page, words: [{ ...word, x: 545 }] }, MARGIN)).toHaveLength(1);
    expect(outsideFrame({ ...page, strokes: [{ from: [30, 97], to: [130, 97], order: 2 }] }, MARGIN)).toHaveLength(1);
    expect(overlappingWords({ ...page, words: [word, { ...word, x: 115 }] })).toHaveLength(1);
    expect([...outsideFrame(page, MARGIN), ...overlappingWords(page), ...struckWords(page)]).toEqual([]);
  });

  it("sees a line through a word, unless a white field between them keeps it clear", () => {
    const field = { x: 98, y: 90, width: 24, height: 12, order: 0.5 };
    expect(struckWords({ ...page, strokes: [line(0)] })).toHaveLength(1);
    expect(struckWords({ ...page, strokes: [line(0)], covers: [field] })).toEqual([]);
    expect(struckWords({ ...page, strokes: [line(2)], covers: [field] })).toHaveLength(1);
  });
});

describe("the printed sheet of a fault", { timeout: 240_000 }, () => {
  it.each(LAYOUTS)(
    "keeps every word and line of the %s axle inside its frame and clear of each other",
    async (axle, family) => {
      const sheets = await sheetsOf(axle, family);
      expect(sheets.length).toBeGreaterThan(5);
      const all: string[] = [];
      for (const { name, bytes } of sheets) {
        const pages = readPageInk(bytes);
        expect(pages, name).toHaveLength(1);
        for (const page of pages) {
          const crowded = [...outsideFrame(page, MARGIN), ...overlappingWords(page), ...struckWords(page)];
          all.push(...crowded.map((c) => `${name}: ${c}`));
        }
      }
      expect(all).toEqual([]);
    },
  );
});
