import { inflateSync } from "node:zlib";

interface PdfObject {
  readonly dictionary: string;
  readonly stream: string;
}

const inflate = (bytes: Buffer): string => {
  try {
    return inflateSync(bytes).toString("latin1");
  } catch {
    return "";
  }
};

const readObjects = (pdf: Buffer): ReadonlyMap<string, PdfObject> => {
  const text = pdf.toString("latin1");
  const objects = new Map<string, PdfObject>();
  for (const found of text.matchAll(/(\d+) 0 obj\s(.*?)endobj/gs)) {
    const [, number = "", body = ""] = found;
    const cut = body.indexOf("stream");
    const dictionary = cut < 0 ? body : body.slice(0, cut);
    const raw =
      cut < 0
        ? ""
        : body
            .slice(cut)
            .replace(/^stream\r?\n/, "")
            .replace(/\nendstream\s*$/, "");
    objects.set(number, { dictionary, stream: raw === "" ? "" : inflate(Buffer.from(raw, "latin1")) });
  }
  return objects;
};

const hexWords = (text: string): string =>
  String.fromCharCode(...(text.match(/[0-9a-f]{4}/gi) ?? []).map((hex) => Number.parseInt(hex, 16)));

/** Glyph number to text, from the map a font carries. */
const readGlyphs = (map: string): ReadonlyMap<number, string> => {
  const glyphs = new Map<number, string>();
  for (const [, first = "0", list = ""] of map.matchAll(/<([0-9a-f]{4})> <[0-9a-f]{4}> \[(.*?)\]/gis)) {
    for (const [i, entry] of [...list.matchAll(/<([0-9a-f ]+)>/gi)].entries()) {
      glyphs.set(Number.parseInt(first, 16) + i, hexWords((entry[1] ?? "").replaceAll(" ", "")));
    }
  }
  return glyphs;
};

/**
 * The words of a PDF as this program writes it (one font map per font, texts as glyph numbers), a line per run of text.
 * It reads no other PDF.
 */
export const readPdfWords = (pdf: Buffer): string => {
  const objects = readObjects(pdf);
  const fonts = new Map<string, ReadonlyMap<number, string>>();
  for (const { dictionary } of objects.values()) {
    for (const [, name = "", number = ""] of dictionary.matchAll(/\/(F\d+) (\d+) 0 R/g)) {
      const map = /\/ToUnicode (\d+) 0 R/.exec(objects.get(number)?.dictionary ?? "")?.[1];
      fonts.set(name, readGlyphs(objects.get(map ?? "")?.stream ?? ""));
    }
  }
  const lines: string[] = [];
  let glyphs: ReadonlyMap<number, string> = new Map();
  for (const { stream } of objects.values()) {
    for (const [token, font, run] of stream.matchAll(/\/(F\d+) [\d.]+ Tf|\[(.*?)\] TJ/g)) {
      if (font !== undefined) glyphs = fonts.get(font) ?? new Map();
      if (run === undefined || token === undefined) continue;
      const hex = [...run.matchAll(/<([0-9a-f]+)>/gi)].map((part) => part[1] ?? "").join("");
      lines.push((hex.match(/.{4}/g) ?? []).map((one) => glyphs.get(Number.parseInt(one, 16)) ?? "").join(""));
    }
  }
  return lines.join("\n");
};

/** Words with every run of blanks and line ends as one blank, so that a wrapped sentence is found. */
export const flatten = (words: string): string => words.replaceAll(/\s+/g, " ");
