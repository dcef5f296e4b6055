import { formatFigure } from "#casework";
import { assumedMark, drawCurves, drawGeometry, drawTitleBlock, type Mark, type Scene } from "#drawing";
import type { ScenePainter } from "./draw-scene-pdf.ts";
import type { FaultSheetFacts } from "./fault-sheet-facts.ts";
import {
  ASKED_LABEL,
  BESIDE_WIDTH,
  COLUMN_GAP,
  CURVES_WIDTH,
  FOOT_WIDTH,
  headlineHeight,
  headlineWords,
  rowHeight,
  SCENE_SCALE,
  type SheetPlan,
  TABLE,
  TITLE_BLOCK,
  WORDS,
} from "./fault-sheet-plan.ts";
import { type Paragraph, rungWord } from "./fault-sheet-words.ts";
import { CONTENT, PAGE } from "./page-size.ts";
import { firstBase, heightOf, setBlock, setLine } from "./pdf-text.ts";
import { structureElement } from "./structure.ts";

/** A document of one page, scaled to page units, and what is to be drawn on it. */
export interface FaultSheetPage {
  readonly doc: PDFKit.PDFDocument;
  readonly painter: ScenePainter;
  /** Points per page unit. */
  readonly points: number;
  readonly facts: FaultSheetFacts;
  readonly plan: SheetPlan;
}

/** Margin a scene keeps at its sides. */
const SCENE_EDGE = 24;

/** Draws the sheet in reading order, each part under its own element of the structure. */
export function drawFaultSheet(page: FaultSheetPage): void {
  const { doc, facts, plan } = page;
  const sheet = structureElement(doc, "Document");
  doc.addStructure(sheet);
  const say: Say = (type, draw) => {
    sheet.add(structureElement(doc, type, {}, draw));
  };
  drawHead(page, say);
  drawRule(page, plan.sentenceY - 10, "ink");
  say("P", () => setBlock(doc, facts.effect.sentence, PAGE.margin, plan.sentenceY, CONTENT, plan.styles.sentence));
  drawAsked(page, say);
  drawFigures(page, sheet, say);
  drawRule(page, plan.tableY - 8, "ink");
  drawTable(page, sheet);
  let y = plan.tableY;
  for (const paragraph of plan.words) {
    y = drawParagraph(page, say, paragraph, { x: PAGE.margin + WORDS.x, y, width: WORDS.width });
  }
  drawRule(page, plan.footY - 10, "ink");
  drawFoot(page, say);
  drawTitle(page, say);
  sheet.end();
}

type Say = (type: string, draw: () => void) => void;

function drawRule(page: FaultSheetPage, y: number, colour: "ink" | "hair"): void {
  const d = `M${PAGE.margin} ${y}H${PAGE.width - PAGE.margin}`;
  drawArtifact(page, [{ kind: "path", d, stroke: { colour, width: 1 } }]);
}

/** Lines that say nothing to a reader: left out of the structure. */
function drawArtifact({ doc, painter }: FaultSheetPage, marks: readonly Mark[]): void {
  doc.markContent("Artifact", { type: "Layout" });
  painter.drawMarks(marks);
  doc.endMarkedContent();
}

function drawHead({ doc, plan }: FaultSheetPage, say: Say): void {
  const { styles, title, nameY, carY, carName, carWords } = plan;
  say("H1", () => setBlock(doc, title, PAGE.margin, PAGE.margin, CONTENT, styles.title));
  say("P", () => setBlock(doc, carName, PAGE.margin, nameY, CONTENT, styles.name));
  say("P", () => setBlock(doc, carWords, PAGE.margin, carY, CONTENT, styles.small));
}

/** What the part is looked at as and the force it stands under, each after its label. */
function drawAsked({ doc, plan: { styles, asked } }: FaultSheetPage, say: Say): void {
  for (const { heading, text, y } of asked) {
    say("P", () => {
      setLine(doc, heading, PAGE.margin, y + firstBase(styles.body), styles.heading);
      setBlock(doc, text, PAGE.margin + ASKED_LABEL, y, CONTENT - ASKED_LABEL, styles.body);
    });
  }
}

/** The three views over the whole width; under them the curves, beside these the headline and what it is judged against. */
function drawFigures(page: FaultSheetPage, sheet: PDFKit.PDFStructureElement, say: Say): void {
  const { doc, painter, points, facts, plan } = page;
  const { styles, drawing, curves } = plan;
  const figure = (scene: Scene, x: number, y: number) => {
    const alt = `${scene.title}. ${scene.description}`;
    const [right, bottom] = [x + scene.width * SCENE_SCALE, y + scene.height * SCENE_SCALE];
    const bbox = [x * points, y * points, right * points, bottom * points] as const;
    sheet.add(structureElement(doc, "Figure", { alt, bbox }, () => painter.draw(scene, x, y, SCENE_SCALE)));
  };
  figure(geometryOf(page), PAGE.margin - SCENE_EDGE * SCENE_SCALE, drawing.y);
  const [width, height] = [CURVES_WIDTH / SCENE_SCALE, curves.height / SCENE_SCALE];
  const curveOptions = { width, height, format: formatFigure };
  figure(drawCurves(facts.effect, curveOptions), PAGE.margin, curves.y);
  const x = PAGE.margin + CURVES_WIDTH + COLUMN_GAP;
  say("P", () => drawHeadline(page, x));
  let y = curves.y + headlineHeight(facts, styles);
  for (const paragraph of plan.beside) {
    y = drawParagraph(page, say, paragraph, { x, y, width: BESIDE_WIDTH });
  }
}

function geometryOf({ facts, plan }: FaultSheetPage): Scene {
  return drawGeometry(facts.family, facts.effect, {
    width: CONTENT / SCENE_SCALE + 2 * SCENE_EDGE,
    height: plan.drawing.height / SCENE_SCALE,
    arrangement: "row",
    format: formatFigure,
    ghosts: facts.ghosts ?? facts.effect.travels,
  });
}

/** The figure the sheet is about, large, with what it means; or the reading that would settle it. */
function drawHeadline({ doc, facts, plan: { styles, curves } }: FaultSheetPage, x: number): void {
  const { headline } = facts.effect;
  let top = curves.y;
  if (headline.signSure) {
    const number = formatFigure({ ...headline, value: Math.abs(headline.value) });
    setLine(doc, number, x, top + styles.big.size * 0.78, styles.big);
    top += styles.big.leading;
  } else top = setBlock(doc, "No figure: its sign is not sure.", x, top, BESIDE_WIDTH, styles.figure);
  for (const text of headlineWords(facts)) top = setBlock(doc, text, x, top, BESIDE_WIDTH, styles.body);
}

function drawTable({ doc, facts: { effect }, plan }: FaultSheetPage, sheet: PDFKit.PDFStructureElement): void {
  const { styles } = plan;
  const x = PAGE.margin;
  const table = structureElement(doc, "Table");
  sheet.add(table);
  const tableRow = (): PDFKit.PDFStructureElement => {
    const row = structureElement(doc, "TR");
    table.add(row);
    return row;
  };
  const head = tableRow();
  const headBase = plan.tableY + firstBase(styles.heading);
  const heading = (text: string, at: number, anchor: "start" | "end") =>
    head.add(
      structureElement(doc, "TH", { scope: "Column" }, () =>
        setLine(doc, text, x + at, headBase, styles.heading, anchor),
      ),
    );
  const known = effect.headline.rung === "scaled" ? "scaled from a template" : rungWord(effect.headline);
  heading(`geometry ${known}`, 0, "start");
  heading("value", TABLE.value, "end");
  heading("lies with 95 % at", TABLE.band, "start");
  let top = plan.tableY + styles.tableRow;
  for (const row of plan.rows) {
    const line = tableRow();
    const [rowTop, base] = [top, top + firstBase(styles.body)];
    const label = () => setBlock(doc, row.label, x, rowTop, TABLE.label, styles.body);
    line.add(structureElement(doc, "TH", { scope: "Row" }, label));
    const cell = (draw: () => void) => line.add(structureElement(doc, "TD", {}, draw));
    cell(() => setLine(doc, row.value, x + TABLE.value, base, styles.figure, "end"));
    const { settle } = row;
    const settleTop = rowTop + heightOf(row.label, TABLE.label, styles.body);
    // Every row has as many cells as the head: what would settle a figure stands in the place of its band.
    if (settle === null) cell(() => setLine(doc, row.band, x + TABLE.band, base, styles.body));
    else cell(() => setBlock(doc, settle, x, settleTop, TABLE.width, styles.small));
    top += rowHeight(row, styles);
  }
}

/** A heading with its words; gives the y under them. */
function drawParagraph(
  { doc, plan: { styles } }: FaultSheetPage,
  say: Say,
  { heading, text }: Paragraph,
  at: { readonly x: number; readonly y: number; readonly width: number },
): number {
  say("H2", () => setLine(doc, heading, at.x, at.y + firstBase(styles.heading), styles.heading));
  const top = at.y + styles.heading.leading;
  say("P", () => setBlock(doc, text, at.x, top, at.width, styles.body));
  return top + heightOf(text, at.width, styles.body) + 8;
}

/** What is left of the words, and what to take care of, at the left of the title block. */
function drawFoot(page: FaultSheetPage, say: Say): void {
  const { doc, facts, plan } = page;
  const { styles } = plan;
  let top = plan.footY;
  for (const paragraph of plan.foot) {
    top = drawParagraph(page, say, paragraph, { x: PAGE.margin, y: top, width: FOOT_WIDTH });
  }
  const headBase = top + firstBase(styles.heading);
  say("H2", () => setLine(doc, "Take care", PAGE.margin, headBase, styles.heading));
  top += styles.heading.leading;
  for (const caution of facts.effect.cautions) {
    const at = top;
    say("P", () => setBlock(doc, caution, PAGE.margin, at, FOOT_WIDTH, styles.small));
    top += heightOf(caution, FOOT_WIDTH, styles.small) + 4;
  }
}

function drawTitle(page: FaultSheetPage, say: Say): void {
  const { facts, painter } = page;
  const { family, effect, date, by } = facts;
  const layout = `${family[effect.axle].layout.replace("bodies", "several bodies").replaceAll("-", " ")}${assumedMark(family, `${effect.axle}-layout`)}`;
  const last = by === undefined ? 0.36 : 0.24;
  const rows = [
    [
      { label: "Family", value: family.name, share: 0.64 },
      { label: "Date", value: date, share: 0.36 },
    ],
    [
      { label: "Layout", value: `${effect.axle} ${layout}`, share: 0.64 },
      { label: "Rung", value: rungWord(effect.headline), share: 0.36 },
    ],
    [
      { label: "Units", value: "mm, °, kN", share: by === undefined ? 0.32 : 0.28 },
      { label: "Drawing", value: printedScale(geometryOf(page)), share: by === undefined ? 0.32 : 0.24 },
      ...(by === undefined ? [] : [{ label: "By", value: by, share: 0.24 }]),
      { label: "Page", value: "1 of 1", share: last },
    ],
  ];
  const x = PAGE.width - PAGE.margin - TITLE_BLOCK.width;
  const y = PAGE.height - PAGE.margin - TITLE_BLOCK.height;
  const block = {
    name: effect.question.fault.kind === "firmer" ? "What a firmer part does" : "What a fault does",
    invented: family.invented,
    rows,
  };
  const marks = drawTitleBlock(x, y, TITLE_BLOCK.width, block);
  drawArtifact(
    page,
    marks.filter((mark) => mark.kind !== "text"),
  );
  say("P", () => painter.drawMarks(marks.filter((mark) => mark.kind === "text")));
}

/** Scale of a scene as it is printed: the scene's own, made smaller with it. */
function printedScale(scene: Scene): string {
  const ratio = Number(scene.scale?.replace("1 : ", "")) / SCENE_SCALE;
  return Number.isFinite(ratio) ? `1 : ${ratio.toFixed(0)}` : "";
}
