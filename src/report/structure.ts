/** Attributes of a structure element beside those the library's types know: where a figure lies, what a heading cell heads. */
export interface ElementAttributes {
  readonly alt?: string;
  /** Points from the upper left corner of the page. */
  readonly bbox?: readonly [left: number, top: number, right: number, bottom: number];
  readonly scope?: "Row" | "Column";
}

/** A structure element of a tagged document; `draw` draws what belongs to it, absent for one that holds others. */
export function structureElement(
  doc: PDFKit.PDFDocument,
  type: string,
  attributes: ElementAttributes = {},
  draw?: () => void,
): PDFKit.PDFStructureElement {
  const options: object = { ...attributes };
  return draw === undefined ? doc.struct(type, options) : doc.struct(type, options, [draw]);
}
