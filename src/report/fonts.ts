import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import type { FontWeight } from "#drawing";

const FILES: Readonly<Record<FontWeight, string>> = {
  300: "SourceSans3-Light.ttf",
  400: "SourceSans3-Regular.ttf",
  600: "SourceSans3-Semibold.ttf",
};

/** Names under which the faces of Source Sans 3 are known inside a document. */
export const fontName = (weight: FontWeight): string => `source-sans-${weight}`;

/** Makes the faces of Source Sans 3 known to a document; they are embedded as far as they are used. */
export function registerFonts(doc: PDFKit.PDFDocument): void {
  const folder = join(dirname(createRequire(import.meta.url).resolve("source-sans/package.json")), "TTF");
  for (const weight of [300, 400, 600] as const) doc.registerFont(fontName(weight), join(folder, FILES[weight]));
}
