import { type Colour, colours, computeTextWidth, type FontWeight, shortenMeasured, wrapMeasured } from "#drawing";
import { fontName } from "./fonts.ts";

/** How a run of text is set, in page units. */
export interface Setting {
  readonly size: number;
  readonly weight: FontWeight;
  readonly colour: Exclude<Colour, "none">;
  /** From base line to base line. */
  readonly leading: number;
}

/** A text broken into lines no wider than `width`. */
export function wrapSet(text: string, width: number, setting: Setting): readonly string[] {
  return wrapMeasured(text, width, (part) => computeTextWidth(part, setting.size, setting.weight));
}

/** A text no wider than `width`: whole, or shortened to end in an ellipsis. */
export const shortenSet = (text: string, width: number, setting: Setting): string =>
  shortenMeasured(text, width, (part) => computeTextWidth(part, setting.size, setting.weight));

/** Height a wrapped text takes. */
export const heightOf = (text: string, width: number, setting: Setting): number =>
  wrapSet(text, width, setting).length * setting.leading;

/** One line with its base line at y. */
export function setLine(
  doc: PDFKit.PDFDocument,
  text: string,
  x: number,
  y: number,
  setting: Setting,
  anchor: "start" | "end" = "start",
): void {
  doc.font(fontName(setting.weight)).fontSize(setting.size).fillColor(colours.print[setting.colour]);
  const left = anchor === "end" ? x - doc.widthOfString(text) : x;
  doc.text(text, left, y, { lineBreak: false, baseline: "alphabetic" });
}

/** From the top edge of a block to its first base line. */
export const firstBase = (setting: Setting): number => setting.size * 0.92;

/** A wrapped text whose first line begins at the top edge y; returns the y under its last line. */
export function setBlock(
  doc: PDFKit.PDFDocument,
  text: string,
  x: number,
  y: number,
  width: number,
  setting: Setting,
): number {
  let base = y + firstBase(setting);
  for (const line of wrapSet(text, width, setting)) {
    setLine(doc, line, x, base, setting);
    base += setting.leading;
  }
  return y + heightOf(text, width, setting);
}
