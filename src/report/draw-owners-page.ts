import type { PositionStates } from "#drawing";
import { drawNumberedCar, drawTitleBlock, gradeWords, type Mark, type Scene } from "#drawing";
import { drawRemedyRow, drawTableHead } from "./draw-remedy-row.ts";
import { addPage } from "./open-document.ts";
import { drawArtifact, type OwnersDocument } from "./owners-document.ts";
import type { OwnersPageFacts } from "./owners-page-facts.ts";
import { AFTER_NOTE, BESIDE, DRAWING_WIDTH, FOOT_WIDTH, type OwnersPlan, TITLE_BLOCK } from "./owners-page-plan.ts";
import { distanceWords, titleWords } from "./owners-page-words.ts";
import { CONTENT, PAGE } from "./page-size.ts";
import { firstBase, heightOf, setBlock, setLine, shortenSet, wrapSet } from "./pdf-text.ts";
import { structureElement } from "./structure.ts";

/** Draws under an element of the structure. */
export type Say = (type: string, draw: () => void) => void;

const X = PAGE.margin;
const RIGHT = PAGE.width - PAGE.margin;

/** Draws all pages in reading order. */
export function drawOwnersPages(page: OwnersDocument): void {
  const { doc, facts, plan } = page;
  const whole = structureElement(doc, "Document");
  doc.addStructure(whole);
  const say: Say = (type, draw) => {
    whole.add(structureElement(doc, type, {}, draw));
  };
  const car = facts.family === null ? null : numberedCar(facts, plan);
  const table = structureElement(doc, "Table");
  for (const [i, own] of plan.pages.entries()) {
    if (i > 0) addPage(doc);
    drawHead(page, say, i);
    if (i === 0) drawFirst(page, whole, say, car);
    if (i === 0) whole.add(table);
    if (own.rows.length > 0) {
      if (i === 0) drawRule(page, own.tableY);
      drawTableHead(page, table, own.tableY);
      for (const row of own.rows) drawRemedyRow(page, table, row);
    }
    if (own.endY !== null) drawEnd(page, say, own.endY);
    else say("P", () => setLine(doc, `goes on on page ${i + 2}`, X, PAGE.height - PAGE.margin - 4, plan.styles.second));
    drawTitle(page, say, i, car);
  }
  whole.end();
}

function drawRule(page: OwnersDocument, y: number): void {
  drawArtifact(page, [{ kind: "path", d: `M${X} ${y}H${RIGHT}`, stroke: { colour: "ink", width: 1 } }]);
}

function drawHead(page: OwnersDocument, say: Say, index: number): void {
  const { doc, facts, plan } = page;
  const { styles } = plan;
  const { car, visit, rates, date } = facts;
  const room = 220;
  const numbers = (plan.pages[index]?.rows ?? []).map(({ line }) => line.number);
  const title = titleWords(facts, index, numbers);
  say(index === 0 ? "H1" : "H2", () => setLine(doc, title, X, PAGE.margin + 26, styles.title));
  const [first, ...rest] = wrapSet(rates.workshop, room, styles.bold);
  const workshop = [
    ...(first === undefined ? [] : [first]),
    ...(rest.length === 0 ? [] : [shortenSet(rest.join(" "), room, styles.bold)]),
  ];
  if (workshop.length > 0)
    say("P", () => {
      for (const [i, line] of workshop.entries())
        setLine(doc, line, RIGHT, PAGE.margin + 26 + i * styles.bold.leading, styles.bold, "end");
    });
  const odometer = visit.odometerKm === null ? "odometer not read" : distanceWords(visit.odometerKm, car.distanceUnit);
  const sub = [car.name, car.registration, odometer, date].filter((part) => part !== "").join(", ");
  say("P", () => setLine(doc, shortenSet(sub, CONTENT - room - 20, styles.sub), X, PAGE.margin + 49, styles.sub));
  drawRule(page, PAGE.margin + plan.headHeight);
}

/** The car with its numbers; beside it what the page says, and where it is signed. */
function drawFirst(page: OwnersDocument, whole: PDFKit.PDFStructureElement, say: Say, car: Scene | null): void {
  const { doc, painter, points, facts, plan } = page;
  const { styles } = plan;
  const top = PAGE.margin + plan.headHeight + 12;
  if (car !== null) {
    const bbox = [X * points, top * points, (X + car.width) * points, (top + car.height) * points] as const;
    const alt = `${car.title}. ${car.description}`;
    whole.add(structureElement(doc, "Figure", { alt, bbox }, () => painter.draw(car, X, top)));
  }
  const x = car === null ? X : X + BESIDE.x;
  const width = car === null ? CONTENT : BESIDE.width;
  const reach = distanceWords(plan.reachKm, facts.car.distanceUnit);
  const lead = `The line below is the road ahead, from today over ${reach}. A bar is as thick as it is likely that the part lasts; where it grows thin, waiting gets dear.`;
  let y = top;
  say("P", () => setBlock(doc, lead, x, y, width, styles.lead));
  y += heightOf(lead, width, styles.lead) + 6;
  const keys: readonly (readonly [string, readonly Mark[]])[] = [
    [
      "when it is advised, shared with other work",
      [
        { kind: "circle", cx: x + 9, cy: y + 10, r: 7, stroke: { colour: "ink", width: 2.2 }, fill: "paper" },
        { kind: "circle", cx: x + 9, cy: y + 10, r: 2.6, fill: "ink" },
      ],
    ],
  ];
  for (const [words, marks] of keys) {
    drawArtifact(page, marks);
    const base = y + 15;
    say("P", () => setLine(doc, words, x + 28, base, styles.sub));
    y += 23;
  }
  y = drawGradeKeys(page, say, x, y, width);
  const agree = "I agree to the remedies ticked below, each as a whole. Nothing else without my word.";
  y += 5;
  say("P", () => setBlock(doc, agree, x, y, width, styles.lead));
  const line = Math.max(y + heightOf(agree, width, styles.lead) + 30, top + plan.drawingHeight - 22);
  const split = x + width * 0.62;
  drawArtifact(page, [
    { kind: "path", d: `M${x} ${line}H${split - 12}`, stroke: { colour: "ink", width: 1 } },
    { kind: "path", d: `M${split + 12} ${line}H${x + width}`, stroke: { colour: "ink", width: 1 } },
  ]);
  const owner = facts.car.owner === null ? "name" : `name: ${facts.car.owner}`;
  say("P", () => {
    setLine(doc, shortenSet(owner, split - 12 - x, styles.second), x, line + 17, styles.second);
    setLine(doc, "date", split + 12, line + 17, styles.second);
  });
}

/** What the marks of this page mean, in as many lines as they need; the y below them comes back. */
function drawGradeKeys(page: OwnersDocument, say: Say, x: number, top: number, width: number): number {
  const { doc, plan } = page;
  const { sub } = plan.styles;
  const used = new Set(plan.pages.flatMap(({ rows }) => rows.map(({ line }) => line.grade)));
  const grades = ([4, 3, 2, 1] as const).filter((grade) => used.has(grade));
  const keys = [
    { grade: null, words: "not looked at yet" },
    ...grades.map((grade) => ({ grade, words: gradeWords[grade].toLowerCase() })),
  ];
  let [at, y] = [x, top];
  for (const { grade, words } of keys) {
    const room = doc.font("source-sans-400").fontSize(sub.size).widthOfString(words);
    if (at > x && at + 28 + room > x + width) [at, y] = [x, y + 23];
    const [cx, base] = [at + 9, y + 15];
    drawArtifact(page, [{ kind: "grade", grade, cx, cy: y + 10, size: 15 }]);
    say("P", () => setLine(doc, words, cx + 19, base, sub));
    at = cx + 19 + room + 16;
  }
  return y + 23;
}

function numberedCar(facts: OwnersPageFacts, plan: OwnersPlan): Scene | null {
  if (facts.family === null) return null;
  const states: PositionStates = Object.fromEntries(
    facts.appraisal.findings.flatMap(({ place, grade, closeToCall }) =>
      grade === null ? [] : [[place, { grade, close: closeToCall }]],
    ),
  );
  const places = plan.pages
    .flatMap(({ rows }) => rows)
    .map(({ line: { number, grade, close, positions } }) => ({ number, grade, close, positions }));
  return drawNumberedCar(facts.family, { width: DRAWING_WIDTH, height: plan.drawingHeight, states, places });
}

/** Sums of the visits, notes, and cautions. */
function drawEnd(page: OwnersDocument, say: Say, top: number): void {
  const { doc, plan } = page;
  const { styles, sums, notes, wideNotes, cautions } = plan;
  let y = top;
  for (const text of sums) {
    const at = y;
    say("P", () => setBlock(doc, text, X, at, CONTENT, styles.label));
    y += heightOf(text, CONTENT, styles.label);
  }
  y += 12;
  drawRule(page, y);
  y += 12;
  for (const [i, text] of notes.entries()) {
    const at = y;
    const width = i < wideNotes ? CONTENT : FOOT_WIDTH;
    say("P", () => setBlock(doc, text, X, at, width, styles.small));
    y += heightOf(text, width, styles.small) + AFTER_NOTE;
  }
  const head = y + firstBase(styles.heading);
  say("H2", () => setLine(doc, "Take care", X, head, styles.heading));
  y += styles.heading.leading;
  for (const text of cautions) {
    const at = y;
    say("P", () => setBlock(doc, text, X, at, FOOT_WIDTH, styles.small));
    y += heightOf(text, FOOT_WIDTH, styles.small) + AFTER_NOTE;
  }
}

function drawTitle(page: OwnersDocument, say: Say, index: number, car: Scene | null): void {
  const { facts, plan, painter } = page;
  const { visit, rates, date } = facts;
  const unit = facts.car.distanceUnit;
  const odometer = visit.odometerKm === null ? "not read" : distanceWords(visit.odometerKm, unit);
  const block = {
    name: "Owner's page",
    invented: facts.car.invented,
    rows: [
      [
        { label: "Car", value: facts.car.name, share: 0.6 },
        { label: "Registration", value: facts.car.registration, share: 0.4 },
      ],
      [
        { label: "Odometer", value: odometer, share: 0.3 },
        { label: "Date", value: date, share: 0.42 },
        { label: "By", value: visit.by, share: 0.28 },
      ],
      [
        { label: "Units", value: `${unit}, ${rates.currency}`, share: 0.28 },
        { label: "Drawing", value: car?.scale ?? "none", share: 0.46 },
        { label: "Page", value: `${index + 1} of ${plan.pages.length}`, share: 0.26 },
      ],
    ],
  };
  const x = RIGHT - TITLE_BLOCK.width;
  const y = PAGE.height - PAGE.margin - TITLE_BLOCK.height;
  const marks = drawTitleBlock(x, y, TITLE_BLOCK.width, block);
  drawArtifact(
    page,
    marks.filter((mark) => mark.kind !== "text"),
  );
  say("P", () => painter.drawMarks(marks.filter((mark) => mark.kind === "text")));
}
