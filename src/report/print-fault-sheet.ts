import { drawFaultSheet } from "./draw-fault-sheet.ts";
import { ScenePainter } from "./draw-scene-pdf.ts";
import type { FaultSheetFacts } from "./fault-sheet-facts.ts";
import { planSheet } from "./fault-sheet-plan.ts";
import { openDocument, POINTS } from "./open-document.ts";

/**
 * One A4 page that says what a fault does to a car: drawing of the corner with the part in question, toe and camber with
 * their bands, the sentence, the figures with plus or minus, rung and source, what it is judged against, what next,
 * cautions, title block. Tagged PDF with real text, structure, language and a text for each drawing.
 * @returns the bytes of the file; the same facts give the same bytes
 */
export function printFaultSheet(facts: FaultSheetFacts): Promise<Uint8Array> {
  const plan = planSheet(facts);
  const { doc, bytes } = openDocument(`${facts.family.name}: ${plan.title}`);
  drawFaultSheet({ doc, painter: new ScenePainter(doc), points: POINTS, facts, plan });
  doc.end();
  return bytes;
}
