import { advanceRuns } from "./advance-widths.ts";
import type { TextStyle, TypeScale } from "./scene.ts";
import { type FontWeight, faces } from "./tokens.ts";

const UNITS_PER_EM = 1000;
/** Width taken for a character the table does not hold. */
const UNKNOWN = 560;

const tables = new Map<FontWeight, Map<number, number>>();
for (const weight of [300, 400, 600] as const) {
  const table = new Map<number, number>();
  for (const run of advanceRuns) for (const [i, width] of run.widths[weight].entries()) table.set(run.from + i, width);
  tables.set(weight, table);
}

/** Width of a text in page units at a size and weight of Source Sans 3, kerning not counted. */
export function computeTextWidth(text: string, size: number, weight: FontWeight): number {
  const table = tables.get(weight);
  let sum = 0;
  for (const character of text) sum += table?.get(character.codePointAt(0) ?? 0) ?? UNKNOWN;
  return (sum * size) / UNITS_PER_EM;
}

/** Width of a text in page units in a style of the type scale. */
export function computeStyleWidth(text: string, style: TextStyle, type: TypeScale = "desk"): number {
  const { size, weight } = faces[type][style];
  return computeTextWidth(text, size, weight);
}

/** A word broken by letters into pieces no wider than `width`, measured by `widthOf`; at least one letter each. */
function breakWord(word: string, width: number, widthOf: (text: string) => number): readonly string[] {
  if (widthOf(word) <= width) return [word];
  const pieces: string[] = [];
  let piece = "";
  for (const letter of word) {
    if (piece !== "" && widthOf(piece + letter) > width) {
      pieces.push(piece);
      piece = letter;
    } else piece += letter;
  }
  return [...pieces, piece];
}

/**
 * A text broken at blanks into lines no wider than `width`, as `widthOf` measures it; only a word that is wider by itself
 * is broken inside. No text gives no line.
 */
export function wrapMeasured(text: string, width: number, widthOf: (text: string) => number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ").filter((w) => w !== "")) {
    for (const [i, piece] of breakWord(word, width, widthOf).entries()) {
      const longer = line === "" ? piece : `${line} ${piece}`;
      if (line !== "" && (i > 0 || widthOf(longer) > width)) {
        lines.push(line);
        line = piece;
      } else line = longer;
    }
  }
  if (line !== "") lines.push(line);
  return lines;
}

/** A text broken into lines no wider than `width` page units in a style of the type scale. No text gives no line. */
export function wrapText(text: string, width: number, style: TextStyle, type: TypeScale = "desk"): readonly string[] {
  return wrapMeasured(text, width, (part) => computeStyleWidth(part, style, type));
}

/** Stands where a text goes on that had no room. */
const ELLIPSIS = "…";

/** A text no wider than `width` as `widthOf` measures it: whole, or shortened, after a word where that keeps half, to end in an ellipsis. */
export function shortenMeasured(text: string, width: number, widthOf: (text: string) => number): string {
  if (widthOf(text) <= width) return text;
  const letters = [...text];
  while (letters.length > 1 && widthOf(`${letters.join("").trimEnd()}${ELLIPSIS}`) > width) letters.pop();
  const kept = letters.join("").trimEnd();
  const blank = kept.lastIndexOf(" ");
  const insideWord = text[kept.length] !== " ";
  return `${insideWord && blank > kept.length / 2 ? kept.slice(0, blank) : kept}${ELLIPSIS}`;
}

/** A text no wider than `width` page units in a style of the type scale: whole, or shortened to end in an ellipsis. */
export function shortenText(text: string, width: number, style: TextStyle, type: TypeScale = "desk"): string {
  return shortenMeasured(text, width, (part) => computeStyleWidth(part, style, type));
}

/** Lines of a text, at most `most` of them; where it goes on the last one ends in an ellipsis. */
export function wrapToLines(
  text: string,
  width: number,
  most: number,
  style: TextStyle,
  type: TypeScale = "desk",
): readonly string[] {
  const lines = wrapText(text, width, style, type);
  if (lines.length <= most) return lines;
  return [
    ...lines.slice(0, most - 1),
    shortenText(`${lines[most - 1] ?? ""} ${lines[most] ?? ""}`, width, style, type),
  ];
}
