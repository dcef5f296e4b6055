import { drawTitleBlock, type Mark } from "#drawing";
import type { ScenePainter } from "../draw-scene-pdf.ts";
import { FOOT_WIDTH, SCENE_SCALE, TITLE_BLOCK } from "../fault-sheet-plan.ts";
import { CONTENT, PAGE } from "../page-size.ts";
import { firstBase, heightOf, setBlock, setLine } from "../pdf-text.ts";
import { structureElement } from "../structure.ts";
import type { ComputedSheet, SheetTable } from "./computed-sheet.ts";
import { ASKED_LABEL, type ComputedPlan, cellWidth, rowHeight } from "./plan-computed-sheet.ts";

/** A document of one page, scaled to page units, and what is to be drawn on it. */
export interface ComputedPage {
  readonly doc: PDFKit.PDFDocument;
  readonly painter: ScenePainter;
  /** Points per page unit. */
  readonly points: number;
  readonly sheet: ComputedSheet;
  readonly plan: ComputedPlan;
}

type Say = (type: string, draw: () => void) => void;

/** Draws the sheet in reading order, each part under its own element of the structure. */
export function drawComputedSheet(page: ComputedPage): void {
  const { doc, sheet, plan } = page;
  const { styles } = plan;
  const root = structureElement(doc, "Document");
  doc.addStructure(root);
  const say: Say = (type, draw) => {
    root.add(structureElement(doc, type, {}, draw));
  };
  say("H1", () => setBlock(doc, sheet.title, PAGE.margin, PAGE.margin, CONTENT, styles.title));
  say("P", () => setBlock(doc, plan.carName, PAGE.margin, plan.nameY, CONTENT, styles.name));
  say("P", () => setBlock(doc, plan.carWords, PAGE.margin, plan.carY, CONTENT, styles.small));
  drawRule(page, (plan.sentences[0]?.y ?? plan.askedY) - 8);
  for (const { text, y } of plan.sentences) say("P", () => setBlock(doc, text, PAGE.margin, y, CONTENT, styles.lead));
  drawAsked(page, say);
  drawDrawings(page, root);
  for (const { table, y } of plan.tables) drawTable(page, root, say, table, y);
  for (const { heading, text, x, y, width } of plan.words) {
    say("H2", () => setLine(doc, heading, x, y + firstBase(styles.heading), styles.heading));
    say("P", () => setBlock(doc, text, x, y + styles.heading.leading, width, styles.small));
  }
  drawRule(page, plan.footY - 8);
  drawCautions(page, say);
  drawBlock(page, say);
  root.end();
}

function drawArtifact({ doc, painter }: ComputedPage, marks: readonly Mark[]): void {
  doc.markContent("Artifact", { type: "Layout" });
  painter.drawMarks(marks);
  doc.endMarkedContent();
}

function drawRule(page: ComputedPage, y: number, colour: "ink" | "hair" = "ink"): void {
  const d = `M${PAGE.margin} ${y}H${PAGE.width - PAGE.margin}`;
  drawArtifact(page, [{ kind: "path", d, stroke: { colour, width: 1 } }]);
}

function drawAsked({ doc, sheet, plan: { styles, askedY } }: ComputedPage, say: Say): void {
  let y = askedY;
  for (const { heading, text } of sheet.asked) {
    const top = y;
    say("P", () => {
      setLine(doc, heading, PAGE.margin, top + firstBase(styles.body), styles.heading);
      setBlock(doc, text, PAGE.margin + ASKED_LABEL, top, CONTENT - ASKED_LABEL, styles.body);
    });
    y += heightOf(text, CONTENT - ASKED_LABEL, styles.body) + 2;
  }
}

function drawDrawings({ doc, painter, points, sheet, plan }: ComputedPage, root: PDFKit.PDFStructureElement): void {
  const { y, height } = plan.drawing;
  let x: number = PAGE.margin;
  for (const { share, draw } of sheet.drawings) {
    const left = x;
    const scene = draw({ width: (share * CONTENT) / SCENE_SCALE, height: height / SCENE_SCALE });
    const alt = `${scene.title}. ${scene.description}`;
    const [right, bottom] = [left + scene.width * SCENE_SCALE, y + scene.height * SCENE_SCALE];
    const bbox = [left * points, y * points, right * points, bottom * points] as const;
    root.add(structureElement(doc, "Figure", { alt, bbox }, () => painter.draw(scene, left, y, SCENE_SCALE)));
    x += share * CONTENT;
  }
}

function drawTable(
  page: ComputedPage,
  root: PDFKit.PDFStructureElement,
  say: Say,
  table: SheetTable,
  top: number,
): void {
  const { doc, plan } = page;
  const { styles } = plan;
  let y = top;
  if (table.caption !== "") {
    say("H2", () => setLine(doc, table.caption, PAGE.margin, top + firstBase(styles.heading), styles.heading));
    y += styles.heading.leading;
  }
  const element = structureElement(doc, "Table");
  root.add(element);
  const edges = table.columns.map((_, i) =>
    table.columns.slice(0, i).reduce<number>((sum, { share }) => sum + share * CONTENT, PAGE.margin),
  );
  const setCell = (text: string, i: number, at: number, head: boolean): void => {
    const width = cellWidth(table, i);
    const style = head ? { ...styles.small, weight: 600 as const, colour: "ink3" as const } : styles.small;
    if (table.columns[i]?.anchor === "end")
      setLine(doc, text, (edges[i] ?? 0) + width, at + firstBase(style), style, "end");
    else setBlock(doc, text, edges[i] ?? 0, at, width, style);
  };
  const addRow = (cells: readonly string[], head: boolean): void => {
    const row = structureElement(doc, "TR");
    element.add(row);
    const at = y;
    for (const [i, text] of cells.entries()) {
      const type = head || i === 0 ? "TH" : "TD";
      const scope = head ? ({ scope: "Column" } as const) : i === 0 ? ({ scope: "Row" } as const) : {};
      row.add(structureElement(doc, type, scope, () => setCell(text, i, at, head)));
    }
    y += rowHeight(table, cells, styles);
  };
  addRow(
    table.columns.map(({ title }) => title),
    true,
  );
  drawRule(page, y - 2, "hair");
  for (const cells of table.rows) addRow(cells, false);
}

function drawCautions({ doc, sheet, plan: { styles, footY } }: ComputedPage, say: Say): void {
  say("H2", () => setLine(doc, "Take care", PAGE.margin, footY + firstBase(styles.heading), styles.heading));
  let y = footY + styles.heading.leading;
  for (const caution of sheet.cautions) {
    const top = y;
    say("P", () => setBlock(doc, caution, PAGE.margin, top, FOOT_WIDTH, styles.small));
    y += heightOf(caution, FOOT_WIDTH, styles.small) + 4;
  }
}

function drawBlock(page: ComputedPage, say: Say): void {
  const { painter, sheet } = page;
  const { subject, date, by } = sheet;
  const rows = [
    [{ label: subject.label, value: subject.blockName, share: 1 }],
    [
      { label: "Date", value: date, share: by === undefined ? 0.72 : 0.4 },
      ...(by === undefined ? [] : [{ label: "By", value: by, share: 0.32 }]),
      { label: "Page", value: "1 of 1", share: 0.28 },
    ],
    [...sheet.cells],
  ];
  const x = PAGE.width - PAGE.margin - TITLE_BLOCK.width;
  const y = PAGE.height - PAGE.margin - TITLE_BLOCK.height;
  const block = { name: sheet.blockName, invented: subject.invented, rows };
  const marks = drawTitleBlock(x, y, TITLE_BLOCK.width, block);
  drawArtifact(
    page,
    marks.filter((mark) => mark.kind !== "text"),
  );
  say("P", () => painter.drawMarks(marks.filter((mark) => mark.kind === "text")));
}
