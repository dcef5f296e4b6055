import { ScenePainter } from "../draw-scene-pdf.ts";
import { openDocument, POINTS } from "../open-document.ts";
import type { ComputedSheet } from "./computed-sheet.ts";
import { drawComputedSheet } from "./draw-computed-sheet.ts";
import { planComputedSheet } from "./plan-computed-sheet.ts";

/**
 * One A4 page of a computation: sentence, drawings, tables, how sure, cautions, title block. Tagged PDF with real text,
 * structure, language and a text for each drawing.
 * @returns the bytes of the file; the same sheet gives the same bytes
 */
export function printComputedSheet(sheet: ComputedSheet): Promise<Uint8Array> {
  const { doc, bytes } = openDocument(`${sheet.subject.blockName}: ${sheet.title}`);
  drawComputedSheet({ doc, painter: new ScenePainter(doc), points: POINTS, sheet, plan: planComputedSheet(sheet) });
  doc.end();
  return bytes;
}
