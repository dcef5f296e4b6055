import { drawOwnersPages } from "./draw-owners-page.ts";
import { ScenePainter } from "./draw-scene-pdf.ts";
import { openDocument, POINTS } from "./open-document.ts";
import type { OwnersPageFacts } from "./owners-page-facts.ts";
import { planOwnersPage } from "./owners-page-plan.ts";

/**
 * The owner's page of a visit: one rule of distance from now, on which every remedy hangs as a bar as thick as it is likely
 * that the part lasts, with its place on the car, number against limit and whose, a plain sentence, what waiting does, its
 * price and a box to agree to it as a whole; sums, tax and totals, signature, cautions, title block. A4, tagged; one page
 * for up to about six remedies, more pages after.
 * @returns the bytes of the file; the same facts give the same bytes
 */
export function printOwnersPage(facts: OwnersPageFacts): Promise<Uint8Array> {
  const plan = planOwnersPage(facts);
  const { doc, bytes } = openDocument(`${facts.car.name}: owner's page`);
  drawOwnersPages({ doc, painter: new ScenePainter(doc), points: POINTS, facts, plan });
  doc.end();
  return bytes;
}
