import { gradeWords } from "#vehicle";
import type { Mark, TypeScale } from "../scene.ts";
import { computeStyleWidth } from "../text-width.ts";
import { NOT_LOOKED_AT, TOO_CLOSE } from "../tokens.ts";

const GRADES = [0, 1, 2, 3, 4] as const;

/** The marks and their words in one line, from x, centred on the height of `y` (base line); it is as wide as its words. */
export function drawLegend(x: number, y: number, width: number, type: TypeScale): readonly Mark[] {
  const entries = [
    ...GRADES.map((grade) => ({ word: gradeWords[grade], grade, close: false })),
    { word: TOO_CLOSE, grade: 1 as const, close: true },
    { word: NOT_LOOKED_AT, grade: null, close: false },
  ];
  const widths = entries.map(({ word, close }) => (close ? 26 : 20) + computeStyleWidth(word, "label-second", type));
  const total = widths.reduce((sum, w) => sum + w, 0);
  const gap = Math.min(22, Math.max(8, (width - total) / (entries.length - 1)));
  let left = x;
  return entries.flatMap(({ word, grade, close }, i): Mark[] => {
    const indent = close ? 26 : 20;
    const marks: Mark[] = [
      { kind: "grade", grade, close, cx: left + indent / 2 - 2, cy: y - 5, size: 15 },
      { kind: "text", x: left + indent, y, text: word, style: "label-second" },
    ];
    left += (widths[i] ?? 0) + gap;
    return marks;
  });
}
