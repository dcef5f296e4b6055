import { drawNumberRing, drawRemedyBar, type Mark } from "#drawing";
import { drawArtifact, type OwnersDocument } from "./owners-document.ts";
import {
  agreedWords,
  BAR_ROOM,
  BOX_ROOM,
  COLUMNS,
  type PlacedRow,
  PRICE_WIDTH,
  SAID_WIDTH,
  shortWords,
} from "./owners-page-plan.ts";
import { distanceIn } from "./owners-page-words.ts";
import { PAGE } from "./page-size.ts";
import { heightOf, setBlock, setLine, shortenSet } from "./pdf-text.ts";
import { structureElement } from "./structure.ts";

const X = PAGE.margin;
const RIGHT = PAGE.width - PAGE.margin;
const RULE_X = X + COLUMNS.rule;
/** Half height of a bar while the part is sure to last. */
const BAR_HALF = 8;
const BOX = 13;

/** Round distances along the rule: the first of these steps that leaves at most four is taken. */
const STEPS = [1000, 2000, 5000, 10_000, 20_000, 50_000] as const;

/** The head of the table: names of the columns, and the rule of distance from now. */
export function drawTableHead(page: OwnersDocument, table: PDFKit.PDFStructureElement, top: number): void {
  const { doc, facts, plan } = page;
  const { second } = plan.styles;
  const unit = facts.car.distanceUnit;
  const reach = distanceIn(plan.reachKm, unit);
  const step = STEPS.find((one) => reach / one <= 4.2) ?? reach;
  const ticks = Array.from({ length: Math.floor(reach / step) + 1 }, (_, i) => i * step);
  const at = (distance: number) => RULE_X + (distance / reach) * COLUMNS.ruleWidth;
  const line = top + 34;
  const marks: Mark[] = [
    { kind: "path", d: `M${RULE_X} ${line}H${RULE_X + COLUMNS.ruleWidth}`, stroke: { colour: "ink", width: 1.6 } },
    ...ticks.map(
      (tick): Mark => ({ kind: "path", d: `M${at(tick)} ${line - 6}V${line}`, stroke: { colour: "ink", width: 1.4 } }),
    ),
  ];
  const lines = visitsAhead(page).map(
    ({ x }): Mark => ({ kind: "path", d: `M${x} ${line}V${line + 20}`, stroke: { colour: "hair", width: 1 } }),
  );
  drawArtifact(page, [...lines, ...marks]);
  const row = structureElement(doc, "TR");
  table.add(row);
  const cell = (draw: () => void) => row.add(structureElement(doc, "TH", { scope: "Column" }, draw));
  cell(() => setLine(doc, "remedy", X, top + 24, second));
  cell(() => {
    for (const [i, tick] of ticks.entries()) {
      const whole = String(tick).replace(/\B(?=(\d{3})+(?!\d))/g, "\u00a0");
      const last = i === ticks.length - 1;
      const text = i === 0 ? "now" : last ? `${whole} ${unit}` : whole;
      const width = doc.font("source-sans-400").fontSize(second.size).widthOfString(text);
      setLine(doc, text, i === 0 ? at(tick) : at(tick) - width / 2, top + 24, second);
    }
  });
  cell(() => {
    const visits = visitsAhead(page);
    for (const [i, { label, x }] of visits.entries()) {
      const room = (visits[i + 1]?.x ?? RIGHT) - x - 10;
      setLine(doc, shortenSet(label, room, second), x + 5, line + 16, second);
    }
  });
  cell(() => setLine(doc, "price without tax", RIGHT, top + 24, second, "end"));
}

/** The visits of the plan after now that lie on the rule, with their place on it. */
function visitsAhead({ facts, plan }: OwnersDocument): readonly { readonly label: string; readonly x: number }[] {
  const { visits } = facts.appraisal.planDocument;
  const now = visits[0]?.odometerKm ?? 0;
  return visits.flatMap(({ label, odometerKm }) => {
    const share = (odometerKm - now) / plan.reachKm;
    return share > 0 && share <= 1 ? [{ label, x: RULE_X + share * COLUMNS.ruleWidth }] : [];
  });
}

/** One remedy: number and mark, what was found against which limit, its bar, what it does and what waiting does, its price. */
export function drawRemedyRow(page: OwnersDocument, table: PDFKit.PDFStructureElement, placed: PlacedRow): void {
  const { doc, plan } = page;
  const { styles } = plan;
  const { line, isShort, y } = placed;
  drawArtifact(page, rowMarks(page, placed));
  const row = structureElement(doc, "TR");
  table.add(row);
  const cell = (type: "TH" | "TD", draw: () => void) =>
    row.add(structureElement(doc, type, type === "TH" ? { scope: "Row" } : {}, draw));
  cell("TH", () => {
    const number = String(line.number);
    const width = doc.font("source-sans-600").fontSize(styles.label.size).widthOfString(number);
    setLine(doc, number, X + COLUMNS.number - width / 2, y + 14 + styles.label.size * 0.34, styles.label);
    setBlock(doc, line.label, X + COLUMNS.words, y + 4, COLUMNS.wordsWidth, styles.label);
  });
  if (isShort) {
    // Its cells stay as many as the others have, so that what is read stands under its head.
    const cellLeftEmpty = () => cell("TD", () => undefined);
    cellLeftEmpty();
    cell("TD", () => setBlock(doc, shortWords(line), RULE_X, y + 4, SAID_WIDTH, styles.second));
    cellLeftEmpty();
    endRow(page, placed);
    return;
  }
  cell("TD", () => {
    let top = y + 4 + heightOf(line.label, COLUMNS.wordsWidth, styles.label);
    for (const text of line.found) {
      top = setBlock(doc, text, X + COLUMNS.words, top, COLUMNS.wordsWidth, styles.second);
    }
    if (line.cents === null) return;
    setBlock(
      doc,
      agreedWords(line),
      X + COLUMNS.words + BOX_ROOM,
      top + 5,
      COLUMNS.wordsWidth - BOX_ROOM,
      styles.small,
    );
  });
  cell("TD", () => {
    const under = setBlock(doc, line.sentence, RULE_X, y + BAR_ROOM, SAID_WIDTH, styles.said);
    if (line.waiting !== "") setBlock(doc, line.waiting, RULE_X, under, SAID_WIDTH, styles.second);
  });
  cell("TD", () => {
    const setting = line.cents === null ? styles.second : styles.price;
    setLine(doc, shortenSet(line.price, PRICE_WIDTH, setting), RIGHT, y + 18, setting, "end");
  });
  endRow(page, placed);
}

function endRow(page: OwnersDocument, { y, height }: PlacedRow): void {
  drawArtifact(page, [{ kind: "path", d: `M${X} ${y + height - 4}H${RIGHT}`, stroke: { colour: "hair", width: 1 } }]);
}

function rowMarks(page: OwnersDocument, { line, isShort, y }: PlacedRow): readonly Mark[] {
  const { plan } = page;
  const head: readonly Mark[] = [
    drawNumberRing([X + COLUMNS.number, y + 14]),
    { kind: "grade", grade: line.grade, close: line.close, cx: X + COLUMNS.mark, cy: y + 14, size: 16 },
  ];
  if (isShort) return head;
  const middle = y + 13;
  const { lasts } = line;
  const visits = visitsAhead(page).map(
    ({ x }): Mark => ({ kind: "path", d: `M${x} ${y + 1}V${y + BAR_ROOM - 1}`, stroke: { colour: "hair", width: 1 } }),
  );
  const { label, second } = plan.styles;
  const found = line.found.reduce((sum, text) => sum + heightOf(text, COLUMNS.wordsWidth, second), 0);
  const boxY = y + 4 + heightOf(line.label, COLUMNS.wordsWidth, label) + found + 6;
  return [
    ...head,
    ...visits,
    ...drawRemedyBar({
      from: RULE_X,
      to: RULE_X + COLUMNS.ruleWidth,
      y: middle,
      half: BAR_HALF,
      lasts: lasts === null ? null : (share) => lasts(share * plan.reachKm),
      advised: line.advisedKm === null ? null : line.advisedKm / plan.reachKm,
    }),
    ...(line.cents === null ? [] : tickBox(X + COLUMNS.words, boxY, line.agreed.length > 0)),
  ];
}

/** A box to tick; ticked where somebody has agreed. */
function tickBox(x: number, y: number, ticked: boolean): readonly Mark[] {
  const box = `M${x} ${y}h${BOX}v${BOX}h${-BOX}Z`;
  const tick = `M${x + 2.5} ${y + 7}L${x + 5.5} ${y + 10.5}L${x + 11} ${y + 2.5}`;
  return [
    { kind: "path", d: box, stroke: { colour: "ink", width: 1.2 }, fill: "paper" },
    ...(ticked ? [{ kind: "path", d: tick, stroke: { colour: "accent", width: 2 } } as const] : []),
  ];
}
