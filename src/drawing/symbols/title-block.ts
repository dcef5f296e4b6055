import { polyline } from "../path.ts";
import type { Mark } from "../scene.ts";
import { computeStyleWidth, shortenText } from "../text-width.ts";
import { INVENTED_NOTE } from "../tokens.ts";
import { hairline, inkLine } from "./look.ts";

export interface TitleCell {
  readonly label: string;
  readonly value: string;
  /** Share of the row's width. */
  readonly share: number;
}

export interface TitleBlock {
  readonly name: string;
  /** True where what is drawn comes from demo data: the block then says so. */
  readonly invented: boolean;
  readonly rows: readonly (readonly TitleCell[])[];
}

const PAD = 8;
const HEAD_HEIGHT = 40;
const ROW_HEIGHT = 38;

/** Height of a title block in page units. */
export function titleBlockHeight(block: TitleBlock): number {
  return HEAD_HEIGHT + ROW_HEIGHT * block.rows.length;
}

/**
 * The title block of a drawing, its upper left corner at (x, y): name, what is invented, rows of label and value; a value
 * wider than its cell is shortened.
 */
export function drawTitleBlock(x: number, y: number, width: number, block: TitleBlock): readonly Mark[] {
  const bottom = y + titleBlockHeight(block);
  const rule = (at: number, stroke = hairline): Mark => ({
    kind: "path",
    d: polyline([
      [x, at],
      [x + width, at],
    ]),
    stroke,
  });
  const invented = block.invented ? computeStyleWidth(INVENTED_NOTE, "note") + PAD : 0;
  const name = shortenText(block.name, width - 2 * PAD - invented, "medium-bold");
  const marks: Mark[] = [rule(y, inkLine), { kind: "text", x: x + PAD, y: y + 26, text: name, style: "medium-bold" }];
  if (block.invented) {
    marks.push({ kind: "text", x: x + width - PAD, y: y + 26, text: INVENTED_NOTE, style: "note", anchor: "end" });
  }
  for (const [i, row] of block.rows.entries()) {
    const top = y + HEAD_HEIGHT + i * ROW_HEIGHT;
    marks.push(rule(top));
    let left = x;
    for (const [column, cell] of row.entries()) {
      const room = width * cell.share - 2 * PAD;
      if (column > 0) {
        const d = polyline([
          [left, top],
          [left, top + ROW_HEIGHT],
        ]);
        marks.push({ kind: "path", d, stroke: hairline });
      }
      marks.push(
        { kind: "text", x: left + PAD, y: top + 14, text: cell.label, style: "note" },
        { kind: "text", x: left + PAD, y: top + 31, text: shortenText(cell.value, room, "label"), style: "label" },
      );
      left += width * cell.share;
    }
  }
  marks.push(rule(bottom, inkLine));
  return marks;
}
