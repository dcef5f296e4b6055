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

/**
 * A text broken at blanks into lines no wider than `width` page units; a single word that is wider stays whole.
 * No text gives no line.
 */
export function wrapText(text: string, width: number, style: TextStyle, type: TypeScale = "desk"): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ").filter((w) => w !== "")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && computeStyleWidth(longer, style, type) > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  if (line !== "") lines.push(line);
  return lines;
}
