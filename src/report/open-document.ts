import PDFDocument from "pdfkit";
import { registerFonts } from "./fonts.ts";

/** Points per page unit: 72 over 96. */
export const POINTS = 0.75;
/** A fixed date in the file's own data: the date of the sheet is a text on it, and the same facts give the same bytes. */
const FILE_DATE = new Date(Date.UTC(2000, 0, 1));

/** Text for the file's own data, where a bare & or angle bracket would break it. */
const plain = (text: string): string => text.replaceAll("&", "and").replaceAll(/[<>]/g, "");

/** What the library reads but its types do not know: the marking as PDF/UA. */
const universalAccess: object = { subset: "PDF/UA" };

/** A new document with its first A4 page, and its bytes once it has ended. */
export interface OpenDocument {
  readonly doc: PDFKit.PDFDocument;
  readonly bytes: Promise<Uint8Array>;
}

/**
 * A tagged document of A4 pages in page units (96 to the inch) with our faces known to it; marked as PDF/UA by ourselves;
 * test/printed/universal-access.ts checks what a machine can of it, no validator has seen it. The same drawing on it gives the same bytes.
 */
export function openDocument(title: string): OpenDocument {
  const doc = new PDFDocument({
    ...universalAccess,
    size: "A4",
    margin: 0,
    pdfVersion: "1.7",
    tagged: true,
    lang: "en-GB",
    displayTitle: true,
    info: { Title: plain(title), Creator: "Underbench", Producer: "Underbench", CreationDate: FILE_DATE },
  });
  const bytes = collect(doc);
  registerFonts(doc);
  doc.scale(POINTS);
  return { doc, bytes };
}

/** One more A4 page, in page units. */
export function addPage(doc: PDFKit.PDFDocument): void {
  doc.addPage({ size: "A4", margin: 0 });
  doc.scale(POINTS);
}

function collect(doc: PDFKit.PDFDocument): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const parts: Uint8Array[] = [];
    doc.on("data", (part: Uint8Array) => parts.push(part));
    doc.on("end", () => resolve(Uint8Array.from(Buffer.concat(parts))));
    doc.on("error", reject);
  });
}
