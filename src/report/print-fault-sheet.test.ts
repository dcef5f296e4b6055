import { describe, expect, it } from "vitest";
import { type FaultEffect, formatBand, formatFigure, type RubberFault } from "#casework";
import { sampleFacts } from "../../test/samples/sample-fault-sheet.ts";
import type { FaultSheetFacts } from "./fault-sheet-facts.ts";
import { planSheet } from "./fault-sheet-plan.ts";
import { PAGE } from "./page-size.ts";
import { printFaultSheet } from "./print-fault-sheet.ts";
import { readPdf } from "./read-pdf.ts";

const squeezed = (texts: readonly string[]): string => texts.join(" ").replaceAll(/\s+/g, " ");

/** Fonts are read and cut for every file: room for a busy machine. */
const PATIENCE = { timeout: 60_000 };
const printed = printFaultSheet(sampleFacts);

describe("printFaultSheet", PATIENCE, () => {
  it("is one A4 page with real text, its fonts embedded", async () => {
    const { pages, raw, texts } = readPdf(await printed);
    expect(pages).toBe(1);
    expect(raw).toContain("/MediaBox [0 0 595.28 841.89]");
    expect([...raw.matchAll(/\/FontFile2 /g)].length).toBeGreaterThanOrEqual(3);
    const said = squeezed(texts);
    expect(said).not.toContain("\ufffd");
    const { effect, family } = sampleFacts;
    for (const words of [effect.sentence, effect.judgedAgainst, effect.howSure, effect.whatElse, effect.computedSo]) {
      expect(said).toContain(words);
    }
    for (const caution of effect.cautions) expect(said).toContain(caution);
    for (const words of [
      family.name,
      "12 March 2026",
      "1 of 1",
      "everything here is invented",
      "measured",
      "invented",
    ]) {
      expect(said).toContain(words);
    }
  });

  it("gives each figure with its plus or minus, and the reading that would settle one whose sign is not sure", async () => {
    const said = squeezed(readPdf(await printed).texts);
    for (const figure of sampleFacts.effect.figures) {
      const label = figure.label.replace("faulty", "torn");
      if (figure.signSure)
        expect(said).toContain(`${label} ${formatFigure(figure)} ${formatBand(figure) ?? ""}`.trim());
      else expect(said).toContain(`${label} not printed ${figure.settle}`);
    }
    expect(said).not.toContain("−0.01°");
  });

  it("says what it was looked at as, under which force, on which car line, and what next", async () => {
    const said = squeezed(readPdf(await printed).texts);
    for (const words of [
      "Torn, repair first: does not spring back, web torn, sleeve off centre",
      "2.0 kN of braking, rearward at the contact patch",
      "Wheelbase 2760 mm; track 1550 mm front, 1560 mm rear; tyres 225/50 R17; 1540 kg; 50 % on the front.",
      "What next Repair first",
    ]) {
      expect(said).toContain(words);
    }
  });

  it("names play in mm and a firmer part by its factor or hardness, and calls a firmer part neither faulty nor torn", async () => {
    const as = async (fault: RubberFault, firmness: FaultEffect["firmness"] = null) => {
      const question = { ...sampleFacts.effect.question, fault };
      const curves = sampleFacts.effect.curves.map((curve) => ({
        ...curve,
        lines: curve.lines.map((line) => (line.state === "torn" ? { ...line, state: fault.kind } : line)),
      }));
      const figures = sampleFacts.effect.figures.map((figure) => ({
        ...figure,
        label: figure.label.replace(", torn", `, ${fault.kind}`),
      }));
      const words = { sentence: "So it turns.", howSure: "Well known." };
      const inWords = fault.kind;
      const effect = { ...sampleFacts.effect, ...words, inWords, firmness, question, curves, figures };
      const { texts, raw } = readPdf(await printFaultSheet({ ...sampleFacts, effect }));
      return `${squeezed(texts)} ${[...raw.matchAll(/\/Alt \(.*/g)].join(" ")}`;
    };
    expect(await as({ kind: "loose", play: 0.0015 })).toContain("Loose, 1.5 mm of play from end to end");
    const firmer = await as({ kind: "firmer", factor: 2 });
    expect(firmer).toContain("Firmer, 2 times the sound rate; no fault.");
    expect(firmer).toContain("Toe, firmer less sound");
    expect(firmer).not.toMatch(/faulty|torn/i);
    const harder = await as(
      { kind: "firmer", hardness: { from: null, to: 65 } },
      { from: 55, to: 65, factor: 1.49, low: 1.07, high: 2.08, origin: "from the family sheet, invented" },
    );
    expect(harder).toContain("Rear left, trailing link, front bush: firmer, 65 Shore A");
    expect(harder).toContain(
      "Firmer, 65 Shore A: 1.49 times the sound rate, 1.07 to 2.08 (95 %); the old hardness 55 Shore A from the family sheet, invented; no fault.",
    );
    expect(harder).not.toMatch(/faulty|torn/i);
  });

  it("prints no headline whose sign is not sure", async () => {
    const headline = { ...sampleFacts.effect.headline, signSure: false, settle: "the toe link's inner joint to 1 mm" };
    const figures = sampleFacts.effect.figures.map((figure) => (figure.key === headline.key ? headline : figure));
    const facts: FaultSheetFacts = {
      ...sampleFacts,
      effect: { ...sampleFacts.effect, headline, figures, sentence: "Nobody can say yet." },
    };
    const said = squeezed(readPdf(await printFaultSheet(facts)).texts);
    expect(said).toContain("No figure: its sign is not sure.");
    expect(said).toContain("the toe link's inner joint to 1 mm");
    expect(said).not.toContain("0.22°");
  });

  it("is tagged: language, title, headings, table, and a text for each drawing; nothing drawn outside a tag", async () => {
    const { raw, tagged, texts } = readPdf(await printed);
    expect(squeezed(tagged.map(({ text }) => text)).length).toBeGreaterThanOrEqual(squeezed(texts).length);
    expect(raw).toContain("/Marked true");
    expect(raw).toContain("/StructTreeRoot");
    expect(raw).toContain("/Lang (en-GB)");
    expect(raw).toContain("/DisplayDocTitle true");
    expect(raw).toContain("<pdfuaid:part>1</pdfuaid:part>");
    const count = (type: string) => [...raw.matchAll(new RegExp(`/S /${type}\\n`, "g"))].length;
    expect(count("Document")).toBe(1);
    expect(count("H1")).toBe(1);
    expect(count("H2")).toBe(6);
    expect(count("Figure")).toBe(2);
    expect(count("Table")).toBe(1);
    expect(count("TR")).toBe(1 + sampleFacts.effect.figures.length);
    expect([...raw.matchAll(/\/Alt \(/g)]).toHaveLength(2);
    expect(tagged.find(({ tag }) => tag === "H1")?.text.trim()).toBe("Rear left, trailing link, front bush: torn");
    for (const { tag, text } of tagged) if (tag === "Artifact") expect(text).toBe("");
  });

  it("gives the same bytes for the same facts, others for others", async () => {
    const [first, second] = [await printed, await printFaultSheet(sampleFacts)];
    expect(Buffer.from(first).equals(Buffer.from(second))).toBe(true);
    const later = await printFaultSheet({ ...sampleFacts, date: "13 March 2026" });
    expect(Buffer.from(first).equals(Buffer.from(later))).toBe(false);
  });

  it("keeps a name with signs of its own out of the file's data", async () => {
    const family = { ...sampleFacts.family, name: "Rock & Roll <1>" };
    const { raw, texts } = readPdf(await printFaultSheet({ ...sampleFacts, family }));
    expect(texts).toContain("Rock & Roll <1>");
    expect(raw).toContain("Rock and Roll 1");
    expect(raw).not.toContain("Rock & Roll");
  });
});

describe("planSheet", () => {
  const inOrder = (facts: FaultSheetFacts) => {
    const plan = planSheet(facts);
    expect(plan.drawing.y).toBeGreaterThan(plan.sentenceY);
    expect(plan.curves.y).toBeGreaterThanOrEqual(plan.drawing.y + plan.drawing.height);
    expect(plan.tableY).toBeGreaterThanOrEqual(plan.curves.y + plan.curves.height);
    expect(plan.footY).toBeGreaterThan(plan.tableY);
    expect(plan.footY).toBeLessThan(PAGE.height - PAGE.margin);
    return plan;
  };

  it("stacks the parts without overlap", () => {
    expect(inOrder(sampleFacts).styles.body.size).toBe(13);
  });

  it("sets many words smaller rather than letting them run over", () => {
    const long =
      "Hard points are scaled from a template, so the height of each joint counts, and the rates with it. ".repeat(4);
    const effect = { ...sampleFacts.effect, howSure: long, computedSo: long, judgedAgainst: long };
    const plan = inOrder({ ...sampleFacts, effect });
    expect(plan.styles.body.size).toBeLessThan(13);
    expect(plan.drawing.height).toBeGreaterThan(200);
  });
});
