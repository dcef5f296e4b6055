import type { Mark } from "#drawing";
import type { ScenePainter } from "./draw-scene-pdf.ts";
import type { OwnersPageFacts } from "./owners-page-facts.ts";
import type { OwnersPlan } from "./owners-page-plan.ts";

/** A document, and what is to be drawn on its pages. */
export interface OwnersDocument {
  readonly doc: PDFKit.PDFDocument;
  readonly painter: ScenePainter;
  /** Points per page unit. */
  readonly points: number;
  readonly facts: OwnersPageFacts;
  readonly plan: OwnersPlan;
}

/** Marks that say nothing to a reader: left out of the structure. */
export function drawArtifact({ doc, painter }: OwnersDocument, marks: readonly Mark[]): void {
  doc.markContent("Artifact", { type: "Layout" });
  painter.drawMarks(marks);
  doc.endMarkedContent();
}
