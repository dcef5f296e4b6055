import type { Family, Variant } from "#vehicle";
import { drawCar } from "../below/draw-car.ts";
import { drawnFamily } from "../below/drawn-family.ts";
import { computeLooks } from "../below/looks.ts";
import { polyline } from "../path.ts";
import type { Mark, Scene, TypeScale } from "../scene.ts";
import { inkLine } from "../symbols/look.ts";
import { drawTitleBlock, type TitleBlock, titleBlockHeight } from "../symbols/title-block.ts";
import { LEAST_TARGET, strokes } from "../tokens.ts";
import { drawCentreLine, drawLeftOut, drawSides } from "../underside/draw-underside.ts";
import { familyRungWords } from "../underside/rung-words.ts";
import { brokenScale, layoutUnderside } from "../underside/underside-layout.ts";
import { drawVariant, drawVariantRule, variantHeight } from "./variants.ts";
import {
  CALENDAR_FOOT,
  CALENDAR_HEAD,
  type CalendarArea,
  drawWearCalendar,
  lifePositions,
  placeLifeRows,
} from "./wear-calendar.ts";

export interface FamilySheetOptions {
  readonly width: number;
  readonly height: number;
  readonly type?: TypeScale;
  /** A life entry's position, without its side. */
  readonly selected?: string | null;
  /** Drawn at the lower right where the sheet stands alone, as on paper. */
  readonly titleBlock?: TitleBlock;
}

const EDGE = 24;
const HEAD = 30;
const TITLE_WIDTH = 360;
const COLUMN_GAP = 40;
/** Height of a row: on a desk as the type needs, under a thumb a target. */
const ROW = { desk: { least: 27, most: 40 }, touch: { least: LEAST_TARGET, most: 56 } } as const;
const NAME_WIDTH = { desk: 222, touch: 196 } as const;
/** Narrower than this there is no room for a last column. */
const WIDE = 900;
/** Narrower than this the names of the calendar stand over their bars. */
const NAMES_BESIDE = 760;
const ROW_WITH_NAME_ABOVE = 46;
/** Words over and under the rows, those below on up to two lines. */
const CALENDAR_ROOM = CALENDAR_HEAD + CALENDAR_FOOT + 40;

/**
 * A car line on one sheet: both axles with the places that wear, the wear calendar along a scale of distance hung on them,
 * and the variants with what tells them apart. Bands come from practice and are marked so.
 * @returns a scene that may be higher than asked for where the rows need it; targets: one per calendar row
 */
export function drawFamilySheet(asked: Family, options: FamilySheetOptions): Scene {
  const { width, type = "desk", selected = null } = options;
  const drawn = drawnFamily(asked);
  const { family, positions } = drawn;
  const lives = lifePositions(family, positions);
  const foot = layoutFoot(family.variants, width, type, options.titleBlock);
  const rowRoom = (options.height - HEAD - CALENDAR_ROOM - foot.height) / Math.max(lives.length, 1);
  const namesAbove = width < NAMES_BESIDE;
  const least = namesAbove ? Math.max(ROW_WITH_NAME_ABOVE, ROW[type].least) : ROW[type].least;
  const row = Math.max(least, Math.min(ROW[type].most, rowRoom));
  const bodyHeight = Math.max(CALENDAR_ROOM + lives.length * row, 420, options.height - HEAD - foot.height);
  const carWidth =
    lives.length === 0 ? width - 2 * EDGE : Math.max(namesAbove ? 200 : 300, Math.min(width * 0.43, 560));
  const layout = layoutUnderside(family, {
    x: EDGE,
    y: HEAD,
    width: carWidth,
    height: bodyHeight,
    type,
    legend: false,
    labelWidth: 8,
  });
  const { view } = layout;
  const nameX = EDGE + carWidth + 44;
  const top = HEAD + CALENDAR_HEAD;
  const spare = Math.max(bodyHeight - CALENDAR_ROOM - lives.length * row, 0);
  const area: CalendarArea = {
    kneeX: nameX - 24,
    nameX,
    scaleLeft: nameX + (namesAbove ? 4 : NAME_WIDTH[type]),
    scaleRight: width - EDGE - (width < WIDE ? 12 : 72),
    namesAbove,
    right: width - EDGE,
    top,
    bottom: top + lives.length * row + 22 + Math.min(spare, lives.length * 6),
    saySource: width >= WIDE,
  };
  const entries = lives.map((entry) => ({ ...entry, point: view.spot(entry.position.at ?? [0, 0]) }));
  const calendar = drawWearCalendar(placeLifeRows(entries, area), area, selected, type);
  const footTop = HEAD + bodyHeight;
  return {
    width,
    height: Math.max(options.height, footTop + foot.height),
    type,
    title: `${family.name}: family sheet`,
    description: describe(family, lives.length),
    marks: [
      heading(EDGE, 22, "Where it sits"),
      ...(lives.length > 0 ? [heading(nameX, 22, "When it goes")] : []),
      ...drawCentreLine(layout),
      ...drawCar(view, drawn, computeLooks(family, positions, null, null)),
      ...drawLeftOut(family, layout),
      ...(lives.length > 0 ? calendar.marks : []),
      ...drawSides(family, layout),
      ...entries.flatMap(({ life, point: [cx, cy] }) => placeMarks(cx, cy, life.position === selected)),
      ...foot.draw(footTop),
    ],
    targets: calendar.targets,
    scale: brokenScale(layout),
  };
}

const heading = (x: number, y: number, text: string): Mark => ({ kind: "text", x, y, text, style: "medium-bold" });

/** The place of a row on the drawing: a dot, ringed where the row is selected. */
function placeMarks(cx: number, cy: number, selected: boolean): readonly Mark[] {
  const dot: Mark = { kind: "circle", cx, cy, r: selected ? 4 : 3, fill: selected ? "accent" : "ink" };
  const ring: Mark = { kind: "circle", cx, cy, r: 13, stroke: { colour: "accent", width: strokes.selected } };
  return selected ? [dot, ring] : [dot];
}

interface Foot {
  readonly height: number;
  readonly draw: (top: number) => readonly Mark[];
}

/** Variants in columns, and the title block at the lower right where one is wanted. */
function layoutFoot(variants: readonly Variant[], width: number, type: TypeScale, block: TitleBlock | undefined): Foot {
  const blockWidth = block === undefined ? 0 : TITLE_WIDTH + COLUMN_GAP;
  const room = width - 2 * EDGE - blockWidth;
  const columns = Math.max(1, Math.min(2, Math.floor((room + COLUMN_GAP) / 400)));
  const columnWidth = (room - (columns - 1) * COLUMN_GAP) / columns;
  const inColumn = Math.ceil(variants.length / columns);
  const stacks = Array.from({ length: columns }, (_, i) => variants.slice(i * inColumn, (i + 1) * inColumn));
  const stackHeight = (list: readonly Variant[]) =>
    list.reduce((sum, variant) => sum + variantHeight(variant, columnWidth, type) + 8, 0);
  const listed = variants.length === 0 ? 0 : 44 + Math.max(...stacks.map(stackHeight));
  const height = Math.max(listed, block === undefined ? 0 : titleBlockHeight(block) + 8);
  const draw = (top: number): readonly Mark[] => {
    const marks: Mark[] = [];
    if (variants.length > 0) {
      const rule = polyline([
        [EDGE, top],
        [EDGE + room, top],
      ]);
      const right = EDGE + room;
      marks.push({ kind: "path", d: rule, stroke: inkLine }, heading(EDGE, top + 26, "Which one stands there"));
      marks.push({
        kind: "text",
        x: right,
        y: top + 26,
        text: "code, or eye and calliper",
        style: "note",
        anchor: "end",
      });
    }
    for (const [i, stack] of stacks.entries()) {
      const x = EDGE + i * (columnWidth + COLUMN_GAP);
      let y = top + 42;
      for (const [k, variant] of stack.entries()) {
        if (k > 0) marks.push(drawVariantRule(x, y - 2, columnWidth));
        marks.push(...drawVariant(variant, x, y + 6, columnWidth, type));
        y += variantHeight(variant, columnWidth, type) + 8;
      }
    }
    if (block !== undefined) {
      marks.push(
        ...drawTitleBlock(width - EDGE - TITLE_WIDTH, top + height - titleBlockHeight(block), TITLE_WIDTH, block),
      );
    }
    return marks;
  };
  return { height, draw };
}

function describe(family: Family, rows: number): string {
  const years = family.fromYear === undefined ? "" : `, ${family.fromYear} to ${family.toYear ?? "today"}`;
  const rung = familyRungWords(family).join("; ");
  const parts = [
    `${family.name}${years}: both axles from below, front up, and ${rows} places that wear along a scale of distance, from practice, not counted`,
    `${family.variants.length} variants`,
    ...(rung === "" ? [] : [rung]),
  ];
  return `${parts.join("; ")}.`;
}
