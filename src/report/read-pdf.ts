import { inflateSync } from "node:zlib";

/** What a check needs to know of a PDF file of our own making: its objects, and the words on its pages. */
export interface PdfReading {
  /** The file as Latin-1 text. */
  readonly raw: string;
  readonly pages: number;
  /** Words in the order in which they are drawn, one entry per piece of text. */
  readonly texts: readonly string[];
  /** Tags of marked content with the text drawn inside each. */
  readonly tagged: readonly { readonly tag: string; readonly text: string }[];
}

/** One object of a file: its dictionary as it stands, its stream unpacked. */
export interface PdfObject {
  readonly dictionary: string;
  readonly stream: string | null;
}

/** The objects of a file of our own making by their numbers. */
export function objectsOf(raw: string): ReadonlyMap<number, PdfObject> {
  const objects = new Map<number, PdfObject>();
  for (const match of raw.matchAll(/(?:^|\n)(\d+) 0 obj\n([\s\S]*?)\nendobj/g)) {
    const [, id = "", body = ""] = match;
    const at = body.indexOf("stream\n");
    const dictionary = at < 0 ? body : body.slice(0, at);
    const packed = at < 0 ? null : Buffer.from(body.slice(at + 7, body.lastIndexOf("\nendstream")), "latin1");
    const plain = packed !== null && dictionary.includes("/FlateDecode") ? inflateSync(packed) : packed;
    objects.set(Number(id), { dictionary, stream: plain === null ? null : plain.toString("latin1") });
  }
  return objects;
}

/** Characters of the glyphs of one font, from its table of code points. */
export function charactersOf(toUnicode: string): ReadonlyMap<number, string> {
  const characters = new Map<number, string>();
  for (const block of toUnicode.matchAll(/beginbfrange\n([\s\S]*?)\nendbfrange/g)) {
    for (const [, from = "", list = ""] of (block[1] ?? "").matchAll(/<([0-9a-f]+)> <[0-9a-f]+> \[([^\]]*)\]/gi)) {
      const entries = [...list.matchAll(/<([0-9a-f ]*)>/gi)].map(([, hex = ""]) => hex.replaceAll(" ", ""));
      for (const [i, hex] of entries.entries()) {
        const units = hex.match(/.{4}/g) ?? [];
        characters.set(
          Number.parseInt(from, 16) + i,
          String.fromCharCode(...units.map((unit) => Number.parseInt(unit, 16))),
        );
      }
    }
  }
  return characters;
}

/** Reads a file printed by this folder; no general reader of PDF. */
export function readPdf(bytes: Uint8Array): PdfReading {
  const raw = Buffer.from(bytes).toString("latin1");
  const objects = objectsOf(raw);
  const fonts = new Map<string, ReadonlyMap<number, string>>();
  for (const { dictionary } of objects.values()) {
    for (const [, name = "", id = ""] of dictionary.matchAll(/\/(F\d+) (\d+) 0 R/g)) {
      const table = /\/ToUnicode (\d+) 0 R/.exec(objects.get(Number(id))?.dictionary ?? "");
      const cmap = table === null ? undefined : objects.get(Number(table[1]))?.stream;
      if (cmap !== undefined && cmap !== null) fonts.set(name, charactersOf(cmap));
    }
  }
  const texts: string[] = [];
  const tagged: { tag: string; text: string }[] = [];
  const contents = [...objects.values()].filter(({ stream }) => stream?.includes("BDC") === true);
  for (const { stream } of contents) {
    let font = "";
    const open: { tag: string; text: string }[] = [];
    const lines = (stream ?? "")
      .replaceAll(/<<[^<>]*>> BDC/g, (dictionary) => dictionary.replaceAll("\n", " "))
      .split("\n");
    for (const line of lines) {
      const tag = /^\/(\w+) (?:<<.*>> )?B(?:DC|MC)$/.exec(line);
      const face = /^\/(F\d+) /.exec(line);
      const shown = /^\[(.*)\] TJ$/.exec(line);
      if (tag !== null) open.push({ tag: tag[1] ?? "", text: "" });
      else if (line === "EMC") {
        const closed = open.pop();
        if (closed !== undefined) tagged.push(closed);
      } else if (face !== null) font = face[1] ?? "";
      else if (shown !== null) {
        const glyphs = [...(shown[1] ?? "").matchAll(/<([0-9a-f]*)>/gi)].flatMap(
          ([, hex = ""]) => hex.match(/.{4}/g) ?? [],
        );
        const text = glyphs.map((glyph) => fonts.get(font)?.get(Number.parseInt(glyph, 16)) ?? "\ufffd").join("");
        texts.push(text);
        const inside = open.at(-1);
        if (inside !== undefined) inside.text += `${text} `;
      }
    }
  }
  return { raw, pages: [...raw.matchAll(/\/Type \/Page\n/g)].length, texts, tagged };
}
