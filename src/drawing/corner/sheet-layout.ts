import type { TypeScale } from "../scene.ts";
import { LEAST_TARGET } from "../tokens.ts";

/** What one sheet must hold. */
export interface SheetNeed {
  readonly rows: number;
  /** Extent of the drawing, metres. */
  readonly wide: number;
  readonly long: number;
}

/** Where one sheet lies and how its rows stand beside the drawing. */
export interface SheetPlace {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** Columns of rows at the left and at the right, 0 to 2 each. */
  readonly left: number;
  readonly right: number;
}

export interface SheetPlan {
  readonly sheets: readonly SheetPlace[];
  readonly rowWidth: number;
  /** From row to row; a row is as high as this less the gap beneath it. */
  readonly pitch: number;
  readonly gap: number;
  /** Page units per metre, the same on all sheets; 0 = there is room for the rows only, nothing is drawn. */
  readonly scale: number;
  readonly height: number;
}

/** Room over a sheet for its name, at its foot, and between rows and drawing. */
export const SHEET_HEAD = 34;
export const SHEET_FOOT = 6;
export const KNEE_ROOM = 30;
/** Between two columns of rows on one side. */
export const COLUMN_GAP = 10;
/** Between rows where leaders of the outer column run through. */
const LEADER_GAP = 6;
const MOST_PITCH = 60;
const FOLD = 24;
const EDGE = 24;
/** Smaller than this nobody sees what a drawing shows, page units per metre; plans of less width are no plans. */
const LEAST_SCALE = 110;
const ROW_WIDTH = { desk: { least: 156, most: 220 }, touch: { least: 164, most: 204 } } as const;

interface Room {
  readonly width: number;
  readonly height: number;
  readonly type: TypeScale;
}

interface Arrangement {
  readonly stacked: boolean;
  readonly left: number;
  readonly right: number;
}

/** Rows one over the other that `rows` need in so many columns; two columns on a side stand half a row apart. */
function rowsHigh(rows: number, { left, right }: Arrangement): number {
  const high = Math.ceil(rows / (left + right));
  return left === 2 || right === 2 ? high + 0.5 : high;
}

/** One way to lay the sheets out; height is what it needs at the least. */
function plan(needs: readonly SheetNeed[], room: Room, arrangement: Arrangement): SheetPlan {
  const { stacked, left, right } = arrangement;
  const widths = ROW_WIDTH[room.type];
  const gap = left === 2 || right === 2 ? LEADER_GAP : 0;
  const overhead = SHEET_HEAD + SHEET_FOOT;
  const rows = needs.map((need) => rowsHigh(need.rows, arrangement));
  const counted = stacked ? rows.reduce((sum, n) => sum + n, 0) : Math.max(...rows);
  const heads = stacked ? overhead * needs.length : overhead;
  const least = LEAST_TARGET + gap;
  const pitch = Math.max(least, Math.min(MOST_PITCH, Math.floor((room.height - heads) / Math.max(counted, 1))));
  const height = Math.max(room.height, heads + counted * pitch);
  const across = stacked ? 1 : needs.length;
  const sheetWidth = (room.width - 2 * EDGE - FOLD * (across - 1)) / across;
  const columns = left + right;
  const gaps = COLUMN_GAP * (Math.max(left - 1, 0) + Math.max(right - 1, 0));
  const spare = height - heads - counted * pitch;
  let top = 0;
  const sheets = needs.map((_, i): SheetPlace => {
    const own = rows[i] ?? 0;
    const tall = stacked ? overhead + own * pitch + (spare * own) / Math.max(counted, 1) : height;
    const place = {
      x: stacked ? EDGE : EDGE + i * (sheetWidth + FOLD),
      y: top,
      width: sheetWidth,
      height: tall,
      left,
      right,
    };
    if (stacked) top += tall;
    return place;
  });
  const free = sheetWidth - gaps - 2 * KNEE_ROOM;
  const byHeight = Math.min(...needs.map((need, i) => ((sheets[i]?.height ?? height) - overhead - 8) / need.long));
  const wide = Math.max(...needs.map((need) => need.wide));
  const rowWidth = Math.max(widths.least, Math.min(widths.most, (free - byHeight * wide) / columns));
  const drawn = free - columns * rowWidth;
  const scale = Math.min(byHeight, drawn / wide);
  return { sheets, rowWidth, pitch, gap, scale, height };
}

/**
 * The arrangement of the sheets (one over the other or side by side; one or two columns of rows at either side) that
 * shows the drawing largest while every row keeps its least height; where nothing fits, the lowest one, higher than asked.
 * @param outer the side on which the wheel stands; a single column goes there; null = rows on both sides only
 */
export function planSheets(needs: readonly SheetNeed[], room: Room, outer: "left" | "right" | null): SheetPlan {
  const single = outer === null ? [] : [{ left: outer === "left" ? 1 : 0, right: outer === "right" ? 1 : 0 }];
  const all = [true, false].flatMap((stacked) =>
    [...single, { left: 1, right: 1 }, { left: 2, right: 2 }].map((columns) =>
      plan(needs, room, { stacked, ...columns }),
    ),
  );
  const plans = all.filter(({ scale }) => scale > LEAST_SCALE);
  const fitting = plans.filter(({ height }) => height <= room.height + 1e-9);
  const [best] =
    fitting.length > 0
      ? fitting.toSorted((a, b) => b.scale - a.scale)
      : plans.toSorted((a, b) => a.height - b.height || b.scale - a.scale);
  return best ?? planRows(needs, room);
}

/** Rows alone, over the whole width, one sheet under the other. */
function planRows(needs: readonly SheetNeed[], room: Room): SheetPlan {
  const pitch = LEAST_TARGET;
  const width = room.width - 2 * EDGE;
  let y = 0;
  const sheets = needs.map(({ rows }): SheetPlace => {
    const height = SHEET_HEAD + SHEET_FOOT + rows * pitch;
    y += height;
    return { x: EDGE, y: y - height, width, height, left: 0, right: 1 };
  });
  return { sheets, rowWidth: width, pitch, gap: 0, scale: 0, height: y };
}
