import { gatherRepeats } from "./gather-repeats.ts";
import type { OwnersPageFacts } from "./owners-page-facts.ts";
import {
  cautionWords,
  noteWords,
  type RemedyLine,
  reachOfPlan,
  remedyLines,
  sumWords,
  visitSums,
} from "./owners-page-words.ts";
import { CONTENT, PAGE } from "./page-size.ts";
import { heightOf, type Setting } from "./pdf-text.ts";

/** Columns of the table of remedies, from its left: number, mark, name with what was found, rule of distance, price. */
export const COLUMNS = { number: 12, mark: 41, words: 60, wordsWidth: 166, rule: 242, ruleWidth: 330 } as const;
export const SAID_WIDTH = CONTENT - COLUMNS.rule;
export const PRICE_WIDTH = CONTENT - COLUMNS.rule - COLUMNS.ruleWidth - 12;
export const DRAWING_WIDTH = 332;
export const BESIDE = { x: DRAWING_WIDTH + 28, width: CONTENT - DRAWING_WIDTH - 28 } as const;
export const TITLE_BLOCK = { width: 350, height: 154 } as const;
export const FOOT_WIDTH = CONTENT - TITLE_BLOCK.width - 28;
/** Height of the bar of a remedy, of the head of the table, and of a box to tick with the room above it. */
export const BAR_ROOM = 24;
export const TABLE_HEAD = 56;
export const BOX_ROOM = 22;
const ROW_PAD = 8;
/** The ring of a number is as high. */
const SHORT_ROOM = 26;
/** From a rule to what stands under it. */
const AFTER_RULE = 12;

export interface OwnersStyles {
  readonly title: Setting;
  readonly bold: Setting;
  readonly sub: Setting;
  readonly lead: Setting;
  readonly label: Setting;
  readonly said: Setting;
  readonly second: Setting;
  readonly price: Setting;
  readonly small: Setting;
  readonly heading: Setting;
}

/** Type of the page; `k` below 1 sets the table and the notes smaller. */
export function ownersStyles(k: number): OwnersStyles {
  const set = (size: number, weight: 300 | 400 | 600, colour: Setting["colour"], leading: number): Setting => ({
    size: size * k,
    weight,
    colour,
    leading: leading * k,
  });
  return {
    title: { size: 28, weight: 600, colour: "ink", leading: 33 },
    bold: { size: 15, weight: 600, colour: "ink", leading: 19 },
    sub: { size: 14.5, weight: 400, colour: "ink2", leading: 19 },
    lead: { size: 14.5, weight: 400, colour: "ink", leading: 20 },
    label: set(14, 600, "ink", 17.5),
    said: set(13, 400, "ink", 16.5),
    second: set(13, 400, "ink2", 16.5),
    price: set(15, 600, "ink", 18),
    small: set(12, 400, "ink2", 15),
    heading: set(13, 600, "ink3", 17),
  };
}

/**
 * How much is said: everything; what asks for nothing yet as one line, and what several remedies say in the same words once
 * for all of them; lists of the notes cut short as well, and the notes run together.
 */
type Brevity = "full" | "short" | "brief";

/** A remedy with where its row begins on its page. */
export interface PlacedRow {
  readonly line: RemedyLine;
  /** On one line, without its bar: nothing is to be done about it now. */
  readonly isShort: boolean;
  readonly y: number;
  readonly height: number;
}

export interface OwnersPage {
  readonly tableY: number;
  readonly rows: readonly PlacedRow[];
  /** Where sums, notes and cautions begin; null on pages before the last. */
  readonly endY: number | null;
}

export interface OwnersPlan {
  readonly styles: OwnersStyles;
  readonly reachKm: number;
  readonly pages: readonly OwnersPage[];
  readonly sums: readonly string[];
  readonly notes: readonly string[];
  /** So many of the notes stand over the whole width; the others beside the title block. */
  readonly wideNotes: number;
  readonly cautions: readonly string[];
  readonly headHeight: number;
  readonly drawingHeight: number;
}

/** What stands beside the box of a remedy: who agreed to it, or that it is still to be agreed. */
export const agreedWords = ({ agreed }: RemedyLine): string =>
  agreed.length === 0 ? "agreed" : `agreed: ${agreed.join("; ")}`;

/** A remedy that asks for nothing yet, on one line: what was found, and that it is looked at again. */
export const shortWords = ({ found }: RemedyLine): string =>
  `${found.join("; ")}. Nothing now; looked at again at each visit.`;

const asksForNothing = ({ cents, advisedKm }: RemedyLine): boolean => cents === null && advisedKm === null;

function rowHeight(line: RemedyLine, styles: OwnersStyles, isShort: boolean): number {
  if (isShort) {
    const label = heightOf(line.label, COLUMNS.wordsWidth, styles.label);
    return Math.max(label, heightOf(shortWords(line), SAID_WIDTH, styles.second), SHORT_ROOM) + ROW_PAD;
  }
  const box =
    line.cents === null
      ? 0
      : Math.max(BOX_ROOM, heightOf(agreedWords(line), COLUMNS.wordsWidth - BOX_ROOM, styles.small) + 9);
  const left =
    heightOf(line.label, COLUMNS.wordsWidth, styles.label) +
    line.found.reduce((sum, text) => sum + heightOf(text, COLUMNS.wordsWidth, styles.second), 0) +
    box;
  const right =
    BAR_ROOM +
    heightOf(line.sentence, SAID_WIDTH, styles.said) +
    (line.waiting === "" ? 0 : heightOf(line.waiting, SAID_WIDTH, styles.second));
  return Math.max(left, right) + ROW_PAD;
}

/** Sizes of the type, tried from the largest; the small ones only where saying less at a larger size does not do. */
const SHRINK = [
  [1, 0.95, 0.9],
  [0.86, 0.82],
] as const;
const BREVITIES: readonly Brevity[] = ["full", "short", "brief"];
/** So many of a list are named where it is cut short. */
const FEW = 3;
/** Heights of the drawing of the car, tried from the largest; without a car line its place is as high as the words beside it. */
const DRAWING_HEIGHTS = [290, 256, 226] as const;
const NO_DRAWING = 190;

/**
 * Lays the page out: on one page where the remedies allow it at a size that can be read, with what asks for nothing yet as
 * one line and long lists cut short where that makes it one; else on as few as they need.
 */
export function planOwnersPage(facts: OwnersPageFacts): OwnersPlan {
  const heights = facts.family === null ? [NO_DRAWING] : DRAWING_HEIGHTS;
  for (const sizes of SHRINK)
    for (const brevity of BREVITIES)
      for (const k of sizes)
        for (const height of heights) {
          const plan = planAt(facts, k, height, brevity);
          if (plan.pages.length === 1) return plan;
        }
  const [full, short] = (["full", "short"] as const).map((brevity) =>
    planAt(facts, 1, heights[0] ?? NO_DRAWING, brevity),
  );
  if (full === undefined || short === undefined) throw new RangeError("no size to set the page in");
  return short.pages.length < full.pages.length ? short : full;
}

/** Room under a paragraph of the notes. */
export const AFTER_NOTE = 5;

const wordsHeight = (texts: readonly string[], width: number, { small }: OwnersStyles): number =>
  texts.reduce((sum, text) => sum + heightOf(text, width, small) + AFTER_NOTE, 0);

/**
 * How many of the notes stand over the whole width, above the title block: as many as find no room beside it with the
 * cautions, which always stand there.
 */
function countWideNotes(plan: Pick<OwnersPlan, "styles" | "notes" | "cautions">): number {
  const { styles, notes, cautions } = plan;
  const besides = (from: number): number =>
    wordsHeight([...notes.slice(from), ...cautions], FOOT_WIDTH, styles) + styles.heading.leading;
  let wide = 0;
  while (wide < notes.length && besides(wide) > TITLE_BLOCK.height) wide++;
  return wide;
}

/** A remedy with what it does and what waiting does as one paragraph; that it is done now is not said twice. */
const inOneBreath = (line: RemedyLine): RemedyLine => ({
  ...line,
  sentence: `${line.sentence} ${line.waiting.replace(/^Now\. /, "")}`.trim(),
  waiting: "",
});

/** The same with the notes over the whole width as one paragraph, which takes the least room. */
function runTogether<Said extends Pick<OwnersPlan, "notes" | "wideNotes">>(said: Said): Said {
  const { notes, wideNotes } = said;
  if (wideNotes < 2) return said;
  return { ...said, notes: [notes.slice(0, wideNotes).join(" "), ...notes.slice(wideNotes)], wideNotes: 1 };
}

/** Height of sums, notes and cautions above and beside the title block. */
function endHeight(plan: Pick<OwnersPlan, "styles" | "sums" | "notes" | "cautions" | "wideNotes">): number {
  const { styles, notes, cautions, wideNotes } = plan;
  const sums = plan.sums.reduce((sum, text) => sum + heightOf(text, CONTENT, styles.label), 0);
  const wide = wordsHeight(notes.slice(0, wideNotes), CONTENT, styles);
  const beside = wordsHeight([...notes.slice(wideNotes), ...cautions], FOOT_WIDTH, styles) + styles.heading.leading;
  return sums + AFTER_RULE + AFTER_RULE + wide + Math.max(beside, TITLE_BLOCK.height);
}

function planAt(facts: OwnersPageFacts, k: number, drawingHeight: number, brevity: Brevity): OwnersPlan {
  const styles = ownersStyles(k);
  const reachKm = reachOfPlan(facts);
  const every = remedyLines(facts);
  const { lines: apart, notes } = brevity === "full" ? { lines: every, notes: [] } : gatherRepeats(every);
  const lines = brevity === "brief" ? apart.map(inOneBreath) : apart;
  const said = {
    styles,
    sums: visitSums(facts).map((sum) => sumWords(sum, facts.rates)),
    notes: [...notes, ...noteWords(facts, brevity === "brief" ? FEW : Number.POSITIVE_INFINITY)],
    cautions: cautionWords(facts),
  };
  const wideNotes = countWideNotes(said);
  const words = brevity === "brief" ? runTogether({ ...said, wideNotes }) : { ...said, wideNotes };
  const headHeight = 33 + 19 + 12;
  const bottom = PAGE.height - PAGE.margin;
  const lastEnd = endHeight(words);
  const firstTable = PAGE.margin + headHeight + drawingHeight + 2 * AFTER_RULE;
  const laterTable = PAGE.margin + headHeight + AFTER_RULE;
  const pages: OwnersPage[] = [];
  let rows: PlacedRow[] = [];
  let tableY = firstTable;
  let y = tableY + TABLE_HEAD;
  const turn = (): void => {
    pages.push({ tableY, rows, endY: null });
    rows = [];
    tableY = laterTable;
    y = tableY + TABLE_HEAD;
  };
  // A page that is not the last keeps the title block and one line that says where it goes on.
  const keep = TITLE_BLOCK.height + 2 * AFTER_RULE;
  for (const line of lines) {
    const isShort = brevity !== "full" && asksForNothing(line);
    const height = rowHeight(line, styles, isShort);
    if (y + height > bottom - keep && rows.length > 0) turn();
    rows.push({ line, isShort, y, height });
    y += height;
  }
  if (y + lastEnd > bottom && rows.length > 0) {
    // The last remedy goes along, so that no page holds sums alone.
    const last = rows.length > 1 ? rows.at(-1) : undefined;
    if (last !== undefined) rows = rows.slice(0, -1);
    turn();
    if (last !== undefined) {
      rows.push({ ...last, y });
      y += last.height;
    }
  }
  pages.push({ tableY, rows, endY: Math.max(y, bottom - lastEnd) });
  return { ...words, reachKm, pages, headHeight, drawingHeight };
}
