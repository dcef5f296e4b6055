import { FOOT_WIDTH, type SheetStyles, stylesOf, TITLE_BLOCK } from "../fault-sheet-plan.ts";
import type { Paragraph } from "../fault-sheet-words.ts";
import { CONTENT, PAGE } from "../page-size.ts";
import { heightOf } from "../pdf-text.ts";
import type { ComputedSheet, SheetTable } from "./computed-sheet.ts";

export const ASKED_LABEL = 120;
export const WORD_GAP = 28;
export const WORD_WIDTH = (CONTENT - WORD_GAP) / 2;
export const CELL_GAP = 10;
const SHRINK = [1, 0.95, 0.9, 0.85, 0.8, 0.75, 0.7, 0.65, 0.6] as const;
const LEAST_DRAWING = 230;
const MOST_DRAWING = 430;

export interface PlacedParagraph extends Paragraph {
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

/** Where the parts of a computed sheet lie, page units from the upper left corner. */
export interface ComputedPlan {
  readonly styles: SheetStyles;
  readonly carName: string;
  readonly carWords: string;
  readonly nameY: number;
  readonly carY: number;
  readonly sentences: readonly { readonly text: string; readonly y: number }[];
  readonly askedY: number;
  readonly drawing: { readonly y: number; readonly height: number };
  readonly tables: readonly { readonly table: SheetTable; readonly y: number }[];
  readonly words: readonly PlacedParagraph[];
  readonly footY: number;
}

/** Lays a sheet out on one page: words and tables first, the drawings take the rest; many words are set smaller. */
export function planComputedSheet(sheet: ComputedSheet): ComputedPlan {
  const plans = SHRINK.map((k) => planAt(sheet, k));
  const least = sheet.drawings.length === 0 ? 0 : LEAST_DRAWING;
  const fitting = plans.find(({ drawing }) => drawing.height >= least) ?? plans.at(-1);
  if (fitting === undefined) throw new RangeError("no size to set the sheet in");
  return fitting;
}

export const cellWidth = (table: SheetTable, index: number): number =>
  (table.columns[index]?.share ?? 0) * CONTENT - CELL_GAP;

/** Height of a row: its highest cell. */
export const rowHeight = (table: SheetTable, cells: readonly string[], styles: SheetStyles): number =>
  Math.max(...cells.map((cell, i) => heightOf(cell, cellWidth(table, i), styles.small))) + 3;

export const tableHeight = (table: SheetTable, styles: SheetStyles): number =>
  rowHeight(
    table,
    table.columns.map(({ title }) => title),
    styles,
  ) +
  table.rows.reduce((sum, cells) => sum + rowHeight(table, cells, styles), 0) +
  (table.caption === "" ? 0 : styles.heading.leading) +
  8;

const paragraphHeight = ({ text }: Paragraph, width: number, styles: SheetStyles): number =>
  styles.heading.leading + heightOf(text, width, styles.small) + 6;

/** Paragraphs in two columns, in reading order, the first no lower than it must be. */
function placeWords(words: readonly Paragraph[], top: number, styles: SheetStyles) {
  const heights = words.map((one) => paragraphHeight(one, WORD_WIDTH, styles));
  const total = heights.reduce((sum, h) => sum + h, 0);
  let first = 0;
  let split = 0;
  while (split < words.length && first + (heights[split] ?? 0) / 2 <= total / 2) {
    first += heights[split] ?? 0;
    split += 1;
  }
  const placed = words.map((one, i): PlacedParagraph => {
    const from = i < split ? 0 : split;
    const y = top + heights.slice(from, i).reduce((sum, h) => sum + h, 0);
    return { ...one, x: PAGE.margin + (i < split ? 0 : WORD_WIDTH + WORD_GAP), y, width: WORD_WIDTH };
  });
  return { placed, height: Math.max(first, total - first) };
}

function planAt(sheet: ComputedSheet, k: number): ComputedPlan {
  const styles = stylesOf(k);
  const { name: carName, words: carWords } = sheet.subject;
  const nameY = PAGE.margin + heightOf(sheet.title, CONTENT, styles.title) + 2;
  const carY = nameY + heightOf(carName, CONTENT, styles.name);
  let y = carY + heightOf(carWords, CONTENT, styles.small) + 16;
  const sentences = sheet.sentences.map((text) => {
    const placed = { text, y };
    y += heightOf(text, CONTENT, styles.lead) + 2;
    return placed;
  });
  const askedY = y + 4;
  const askedHeight = sheet.asked.reduce(
    (sum, { text }) => sum + heightOf(text, CONTENT - ASKED_LABEL, styles.body) + 2,
    0,
  );
  const drawingY = askedY + askedHeight + 8;
  const cautions = sheet.cautions.reduce((sum, text) => sum + heightOf(text, FOOT_WIDTH, styles.small) + 4, 0);
  const footHeight = Math.max(TITLE_BLOCK.height, styles.heading.leading + cautions);
  const footY = PAGE.height - PAGE.margin - footHeight;
  const wordsHeight = placeWords(sheet.words, 0, styles).height;
  const wordsY = footY - 16 - wordsHeight;
  const tables: { table: SheetTable; y: number }[] = [];
  let tablesY = wordsY - 10 - sheet.tables.reduce((sum, table) => sum + tableHeight(table, styles), 0);
  const room = tablesY - 10 - drawingY;
  const height = Math.min(room, MOST_DRAWING);
  // What is left over goes between the drawing and the tables.
  for (const table of sheet.tables) {
    tables.push({ table, y: tablesY });
    tablesY += tableHeight(table, styles);
  }
  return {
    styles,
    carName,
    carWords,
    nameY,
    carY,
    sentences,
    askedY,
    drawing: { y: drawingY + Math.max(0, room - height) / 2, height },
    tables,
    words: placeWords(sheet.words, wordsY, styles).placed,
    footY,
  };
}
