import PDFDocument from "pdfkit";
import { describe, expect, it } from "vitest";
import { computeTextWidth } from "#drawing";
import { fontName, registerFonts } from "./fonts.ts";

describe("the width table of the drawings", { timeout: 60_000 }, () => {
  it("says what the font files say, letter by letter and in all three weights", () => {
    const doc = new PDFDocument({ autoFirstPage: false });
    registerFonts(doc);
    const letters = [
      ...Array.from({ length: 95 }, (_, i) => String.fromCodePoint(32 + i)),
      ..."äöüßéèñçØ°·±×÷µ−≤≥→′″–—’“”…Ω",
    ];
    for (const weight of [300, 400, 600] as const) {
      doc.font(fontName(weight)).fontSize(1000);
      for (const letter of letters) {
        expect(computeTextWidth(letter, 1000, weight), `${letter} at ${weight}`).toBeCloseTo(
          doc.widthOfString(letter),
          6,
        );
      }
    }
  });

  it("comes within a hundredth of a set line, kerning not counted", () => {
    const doc = new PDFDocument({ autoFirstPage: false });
    registerFonts(doc);
    const line = "Under firm braking the torn bush lets the rear left wheel turn in 0.22° further.";
    const set = doc.font(fontName(400)).fontSize(13).widthOfString(line);
    expect(Math.abs(computeTextWidth(line, 13, 400) / set - 1)).toBeLessThan(0.01);
  });
});
