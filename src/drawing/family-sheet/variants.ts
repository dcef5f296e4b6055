import type { Variant } from "#vehicle";
import { polyline } from "../path.ts";
import type { Mark, TypeScale } from "../scene.ts";
import { hairline, inkLine } from "../symbols/look.ts";
import { computeStyleWidth, wrapText } from "../text-width.ts";
import { faces } from "../tokens.ts";

const FORK = 42;
const NAME_SHARE = 0.38;
const PAD = 14;
/** Between two choices, on top of the line height. */
const CHOICE_GAP = 4;

const lineHeight = (type: TypeScale): number => Math.round(faces[type].label.size * 1.24);

interface VariantLines {
  readonly name: readonly string[];
  readonly key: readonly string[];
  readonly choices: readonly { readonly lines: readonly string[]; readonly code: string }[];
}

/** The words of a variant, wrapped into its two columns. */
function linesOf(variant: Variant, width: number, type: TypeScale): VariantLines {
  const nameWidth = width * NAME_SHARE;
  const codes = Math.max(0, ...variant.choices.map(({ code }) => computeStyleWidth(code, "note", type)));
  const room = width - nameWidth - FORK - 26 - codes;
  return {
    name: wrapText(variant.label, nameWidth, "label-bold", type),
    key: wrapText(variant.key, nameWidth, "label-second", type),
    choices: variant.choices.map(({ label, code }) => ({ lines: wrapText(label, room, "label", type), code })),
  };
}

/** Height of one variant: name and key at the left, its choices at the right. */
export function variantHeight(variant: Variant, width: number, type: TypeScale): number {
  const { name, key, choices } = linesOf(variant, width, type);
  const pitch = lineHeight(type);
  const right = choices.reduce((sum, { lines }) => sum + lines.length * pitch + CHOICE_GAP, 0);
  return Math.max((name.length + key.length) * pitch, right) + PAD;
}

/** A variant as a fork: what tells it stands at the root, the choices with their codes at the prongs. */
export function drawVariant(variant: Variant, x: number, y: number, width: number, type: TypeScale): readonly Mark[] {
  const { size } = faces[type].label;
  const pitch = lineHeight(type);
  const { name, key, choices } = linesOf(variant, width, type);
  const root = x + width * NAME_SHARE + 6;
  const tips = root + FORK;
  const first = y + size;
  const marks: Mark[] = [
    ...name.map((text, i): Mark => ({ kind: "text", x, y: first + i * pitch, text, style: "label-bold" })),
    ...key.map(
      (text, i): Mark => ({ kind: "text", x, y: first + (name.length + i) * pitch, text, style: "label-second" }),
    ),
  ];
  let base = first;
  const placed = choices.map(({ lines, code }) => {
    const at = base;
    base += lines.length * pitch + CHOICE_GAP;
    return { lines, code, at, tip: at - size * 0.34 };
  });
  const middle = ((placed[0]?.tip ?? y) + (placed.at(-1)?.tip ?? y)) / 2;
  for (const { lines, code, at, tip } of placed) {
    const prong = polyline([
      [root, middle],
      [root + FORK * 0.4, middle],
      [root + FORK * 0.7, tip],
      [tips - 4, tip],
    ]);
    marks.push({ kind: "path", d: prong, stroke: inkLine });
    marks.push({ kind: "circle", cx: tips, cy: tip, r: 3.4, stroke: inkLine, fill: "paper" });
    for (const [i, text] of lines.entries()) {
      marks.push({ kind: "text", x: tips + 10, y: at + i * pitch, text, style: "label" });
    }
    marks.push({ kind: "text", x: x + width, y: at, text: code, style: "note", anchor: "end" });
  }
  return marks;
}

/** The rule between two variants. */
export function drawVariantRule(x: number, y: number, width: number): Mark {
  const d = polyline([
    [x, y],
    [x + width, y],
  ]);
  return { kind: "path", d, stroke: hairline };
}
