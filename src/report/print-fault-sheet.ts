import PDFDocument from "pdfkit";
import { drawFaultSheet } from "./draw-fault-sheet.ts";
import { ScenePainter } from "./draw-scene-pdf.ts";
import type { FaultSheetFacts } from "./fault-sheet-facts.ts";
import { planSheet } from "./fault-sheet-plan.ts";
import { registerFonts } from "./fonts.ts";

/** Points per page unit: 72 over 96. */
const POINTS = 0.75;
/** A fixed date in the file's own data: the date of the sheet is a text on it, and the same facts give the same bytes. */
const FILE_DATE = new Date(Date.UTC(2000, 0, 1));

/** Text for the file's own data, where a bare & or angle bracket would break it. */
const plain = (text: string): string => text.replaceAll("&", "and").replaceAll(/[<>]/g, "");

/** What the library reads but its types do not know: the marking as PDF/UA. */
const universalAccess: object = { subset: "PDF/UA" };

/**
 * One A4 page that says what a fault does to a car: drawing of the corner with the faulty part, toe and camber with their
 * bands, the sentence, the figures with plus or minus, rung and source, what it is judged against, cautions, title block.
 * Tagged PDF with real text, structure, language and a text for each drawing; marked as PDF/UA by ourselves, checked by nobody.
 * @returns the bytes of the file; the same facts give the same bytes
 */
export function printFaultSheet(facts: FaultSheetFacts): Promise<Uint8Array> {
  const plan = planSheet(facts);
  const doc = new PDFDocument({
    ...universalAccess,
    size: "A4",
    margin: 0,
    pdfVersion: "1.7",
    tagged: true,
    lang: "en-GB",
    displayTitle: true,
    info: {
      Title: plain(`${facts.family.name}: ${plan.title}`),
      Creator: "Underbench",
      Producer: "Underbench",
      CreationDate: FILE_DATE,
    },
  });
  const bytes = collect(doc);
  registerFonts(doc);
  doc.scale(POINTS);
  drawFaultSheet({ doc, painter: new ScenePainter(doc), points: POINTS, facts, plan });
  doc.end();
  return bytes;
}

function collect(doc: PDFKit.PDFDocument): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const parts: Uint8Array[] = [];
    doc.on("data", (part: Uint8Array) => parts.push(part));
    doc.on("end", () => resolve(Uint8Array.from(Buffer.concat(parts))));
    doc.on("error", reject);
  });
}
