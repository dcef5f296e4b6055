import { formatBandSizes } from "#casework";
import { INVENTED_NOTE } from "#drawing";
import type { FaultSheetFacts } from "./fault-sheet-facts.ts";
import {
  carLineName,
  carLineWords,
  type FigureRow,
  figureRows,
  forceWords,
  lookedAtWords,
  type Paragraph,
  paragraphsOf,
  settleWords,
  sheetTitle,
} from "./fault-sheet-words.ts";
import { CONTENT, PAGE } from "./page-size.ts";
import { heightOf, type Setting } from "./pdf-text.ts";

export const TITLE_BLOCK = { width: 372, height: 154 } as const;
export const COLUMN_GAP = 28;
/** The words at the left of the title block. */
export const FOOT_WIDTH = CONTENT - TITLE_BLOCK.width - COLUMN_GAP;
/** Width the labels take before what is asked. */
export const ASKED_LABEL = 120;
export const CURVES_WIDTH = 336;
export const BESIDE_WIDTH = CONTENT - CURVES_WIDTH - COLUMN_GAP;
/** The table of figures: widths and edges from its left. */
export const TABLE = { width: 452, label: 204, value: 276, band: 294 } as const;
/** The words beside the table. */
export const WORDS = { x: TABLE.width + COLUMN_GAP, width: CONTENT - TABLE.width - COLUMN_GAP } as const;
/** Scenes are drawn a little smaller than on a screen: paper is read from nearer. */
export const SCENE_SCALE = 0.86;

export interface SheetStyles {
  readonly title: Setting;
  readonly name: Setting;
  readonly sentence: Setting;
  /** Of several sentences below each other. */
  readonly lead: Setting;
  readonly heading: Setting;
  readonly body: Setting;
  readonly small: Setting;
  readonly figure: Setting;
  readonly big: Setting;
  readonly tableRow: number;
}

/** Type of the sheet; `k` below 1 sets it smaller where the words are many. */
export function stylesOf(k: number): SheetStyles {
  const set = (size: number, weight: 300 | 400 | 600, colour: Setting["colour"], leading: number): Setting => ({
    size: size * k,
    weight,
    colour,
    leading: leading * k,
  });
  return {
    title: set(25, 600, "ink", 30),
    name: set(14.5, 600, "ink", 18),
    sentence: set(20.5, 400, "ink", 27),
    lead: set(17, 400, "ink", 22),
    heading: set(13, 600, "ink3", 17),
    body: set(13, 400, "ink", 16.5),
    small: set(12, 400, "ink2", 15),
    figure: set(13, 600, "ink", 16.5),
    big: set(46, 300, "ink", 50),
    tableRow: 20 * k,
  };
}

/** Where the parts of the sheet lie, all in page units from the upper left corner. */
export interface SheetPlan {
  readonly styles: SheetStyles;
  readonly title: string;
  /** The car line by name, then what is known of it, under the title. */
  readonly nameY: number;
  readonly carY: number;
  readonly carName: string;
  readonly carWords: string;
  readonly rows: readonly FigureRow[];
  /** The words that explain the figures, by where they stand: beside the curves, beside the table, at the title block. */
  readonly beside: readonly Paragraph[];
  readonly words: readonly Paragraph[];
  readonly foot: readonly Paragraph[];
  readonly sentenceY: number;
  /** What it is looked at as and under which force: words after a label each. */
  readonly asked: readonly (Paragraph & { readonly y: number })[];
  readonly drawing: { readonly y: number; readonly height: number };
  /** Curves at the left, the headline with its words at the right. */
  readonly curves: { readonly y: number; readonly height: number };
  /** The table of figures, and the words beside it. */
  readonly tableY: number;
  readonly footY: number;
}

/** Height of a row of the table: a long label takes more lines, a reading that would settle it stands under it. */
export function rowHeight(row: FigureRow, styles: SheetStyles): number {
  const label = heightOf(row.label, TABLE.label, styles.body);
  const settle = row.settle === null ? 0 : heightOf(row.settle, TABLE.width, styles.small);
  return label + settle + styles.tableRow - styles.body.leading;
}

const SHRINK = [1, 0.95, 0.9, 0.85, 0.8, 0.75, 0.7, 0.65] as const;
/** The drawing is never lower than this. */
const LEAST_DRAWING = 210;
const MOST_DRAWING = 330;
const LEAST_CURVES = 216;

/** How many of the paragraphs stand beside the curves, and how many of the rest beside the table; the others at the foot. */
const SHARES = [
  [2, 2],
  [3, 2],
  [2, 3],
  [3, 1],
  [4, 1],
] as const;

/** Lays the sheet out on one page: the words first, the drawing takes the rest; many words are set smaller. */
export function planSheet(facts: FaultSheetFacts): SheetPlan {
  const plans = SHRINK.map((k) => tallestDrawing(SHARES.map((shares) => planAt(facts, k, shares))));
  const fitting = plans.find((plan) => plan !== undefined && plan.drawing.height >= LEAST_DRAWING) ?? plans.at(-1);
  if (fitting === undefined) throw new RangeError("no size to set the sheet in");
  return fitting;
}

const tallestDrawing = (plans: readonly SheetPlan[]): SheetPlan | undefined =>
  plans.toSorted((a, b) => b.drawing.height - a.drawing.height)[0];

function planAt(facts: FaultSheetFacts, k: number, [besideCurves, besideTable]: readonly [number, number]): SheetPlan {
  const styles = stylesOf(k);
  const title = sheetTitle(facts);
  const carName = carLineName(facts.family);
  const invented = facts.family.invented ? [`${INVENTED_NOTE.charAt(0).toUpperCase()}${INVENTED_NOTE.slice(1)}.`] : [];
  const carWords = [carLineWords(facts.family), ...invented].join(" ");
  const nameY = PAGE.margin + heightOf(title, CONTENT, styles.title) + 2;
  const carY = nameY + heightOf(carName, CONTENT, styles.name);
  const sentenceY = carY + heightOf(carWords, CONTENT, styles.small) + 18;
  const asked: (Paragraph & { readonly y: number })[] = [];
  let askedY = sentenceY + heightOf(facts.effect.sentence, CONTENT, styles.sentence) + 6;
  for (const paragraph of [
    { heading: "Looked at as", text: lookedAtWords(facts) },
    { heading: "Force at this wheel", text: forceWords(facts.effect.question.condition) },
  ]) {
    asked.push({ ...paragraph, y: askedY });
    askedY += heightOf(paragraph.text, CONTENT - ASKED_LABEL, styles.body) + 2;
  }
  const drawingY = askedY + 10;
  const rows = figureRows(facts.effect);
  const tableHeight = styles.tableRow + rows.reduce((sum, row) => sum + rowHeight(row, styles), 0);
  const paragraphs = paragraphsOf(facts);
  const beside = paragraphs.slice(0, besideCurves);
  const words = paragraphs.slice(besideCurves, besideCurves + besideTable);
  const foot = paragraphs.slice(besideCurves + besideTable);
  const heights = (list: readonly Paragraph[], width: number) =>
    list.reduce((sum, { text }) => sum + styles.heading.leading + heightOf(text, width, styles.body) + 8, 0);
  const curvesHeight = Math.max(LEAST_CURVES, headlineHeight(facts, styles) + heights(beside, BESIDE_WIDTH));
  const wordsHeight = heights(words, WORDS.width);
  const cautions = facts.effect.cautions.reduce((sum, text) => sum + heightOf(text, FOOT_WIDTH, styles.small) + 4, 0);
  const footHeight = Math.max(TITLE_BLOCK.height, heights(foot, FOOT_WIDTH) + cautions + styles.heading.leading);
  const footY = PAGE.height - PAGE.margin - footHeight;
  const tableY = footY - Math.max(tableHeight, wordsHeight) - 14;
  const spare = Math.max(0, tableY - 18 - curvesHeight - 10 - drawingY - LEAST_DRAWING);
  const curvesY = tableY - curvesHeight - spare / 2 - 18;
  const room = curvesY - 10 - drawingY;
  const drawn = Math.min(room, MOST_DRAWING);
  return {
    styles,
    title,
    nameY,
    carY,
    carName,
    carWords,
    rows,
    beside,
    words,
    foot,
    sentenceY,
    asked,
    drawing: { y: drawingY + (room - drawn) / 2, height: drawn },
    curves: { y: curvesY, height: curvesHeight + spare / 2 },
    tableY,
    footY,
  };
}

/** Words under the large figure. */
export function headlineWords({ effect }: FaultSheetFacts): readonly string[] {
  const { headline } = effect;
  if (!headline.signSure) return [settleWords(headline)];
  const { beyondTyre } = effect;
  return [
    `toe further ${headline.value < 0 ? "out" : "in"} than on a sound part; ${formatBandSizes(headline) ?? ""} with 95 %`,
    ...(beyondTyre === null ? [] : [beyondTyre]),
  ];
}

/** Height of the large figure with its words. */
export function headlineHeight(facts: FaultSheetFacts, styles: SheetStyles): number {
  const first = facts.effect.headline.signSure ? styles.big.leading : styles.figure.leading;
  return headlineWords(facts).reduce((sum, text) => sum + heightOf(text, BESIDE_WIDTH, styles.body), first) + 14;
}
