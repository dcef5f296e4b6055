import { objectsOf, type PdfObject } from "../../src/report/read-pdf.ts";

/** One structure element of a file of our own making. */
export interface Element {
  readonly id: number;
  readonly type: string;
  readonly dictionary: string;
  /** Object numbers of the elements in it, in their order. */
  readonly children: readonly number[];
  /** Marked content that is its own. */
  readonly marked: readonly number[];
  readonly page: number | null;
  readonly parent: number;
}

/** A page with the marked content of its stream. */
export interface MarkedPage {
  readonly id: number;
  readonly structParents: number | null;
  readonly dictionary: string;
  /** In the order of drawing; number null: an artifact, tag null: drawn outside every tag. */
  readonly sequences: readonly Sequence[];
}

export interface Sequence {
  readonly tag: string | null;
  readonly number: number | null;
  readonly depth: number;
  readonly draws: boolean;
}

/** What a tagged file says of its structure. */
export interface TaggedFile {
  readonly raw: string;
  readonly objects: ReadonlyMap<number, PdfObject>;
  readonly catalog: string;
  readonly root: string;
  readonly elements: ReadonlyMap<number, Element>;
  readonly pages: readonly MarkedPage[];
}

const reference = (dictionary: string, key: string): number | null => {
  const found = new RegExp(`/${key} (\\d+) 0 R`).exec(dictionary);
  return found === null ? null : Number(found[1]);
};

const kidsOf = (dictionary: string): string => /\/K \[([^\]]*)\]/.exec(dictionary)?.[1] ?? "";

function elementOf(id: number, dictionary: string): Element | null {
  const type = /\/S \/(\w+)/.exec(dictionary)?.[1];
  const parent = reference(dictionary, "P");
  if (type === undefined || parent === null) return null;
  const kids = kidsOf(dictionary);
  const children = [...kids.matchAll(/(\d+) 0 R/g)].map(([, number]) => Number(number));
  const marked = [...kids.replaceAll(/\d+ 0 R/g, "").matchAll(/\d+/g)].map(([number]) => Number(number));
  return { id, type, dictionary, children, marked, page: reference(dictionary, "Pg"), parent };
}

/** Operators that put something on the page. */
const DRAWS = /(?:^|\s)(?:TJ|Tj|f\*?|F|S|s|B\*?|b\*?|Do|sh)$/;

function sequencesOf(stream: string): readonly Sequence[] {
  const lines = stream.replaceAll(/<<[^<>]*>> BDC/g, (found) => found.replaceAll("\n", " ")).split("\n");
  const found: { tag: string | null; number: number | null; depth: number; draws: boolean }[] = [];
  const open: (typeof found)[number][] = [];
  for (const line of lines) {
    const begin = /^\/(\w+) (?:<<(.*)>> )?B(?:DC|MC)$/.exec(line);
    if (begin !== null) {
      const number = /\/MCID (\d+)/.exec(begin[2] ?? "")?.[1];
      const one = {
        tag: begin[1] ?? "",
        number: number === undefined ? null : Number(number),
        depth: open.length,
        draws: false,
      };
      found.push(one);
      open.push(one);
    } else if (line === "EMC") open.pop();
    else if (DRAWS.test(line)) {
      const inside = open.at(-1);
      if (inside === undefined) found.push({ tag: null, number: null, depth: 0, draws: true });
      else inside.draws = true;
    }
  }
  return found;
}

/** Reads the structure of a file printed here; no general reader of PDF. */
export function readTagged(bytes: Uint8Array | string): TaggedFile {
  const raw = typeof bytes === "string" ? bytes : Buffer.from(bytes).toString("latin1");
  const objects = objectsOf(raw);
  const elements = new Map<number, Element>();
  const pages: MarkedPage[] = [];
  let catalog = "";
  let root = "";
  for (const [id, { dictionary }] of objects) {
    if (/\/Type \/Catalog\b/.test(dictionary)) catalog = dictionary;
    else if (/\/Type \/StructTreeRoot\b/.test(dictionary)) root = dictionary;
    else if (/\/Type \/Page\n/.test(dictionary)) {
      const contents = reference(dictionary, "Contents");
      const number = /\/StructParents (\d+)/.exec(dictionary)?.[1];
      pages.push({
        id,
        dictionary,
        structParents: number === undefined ? null : Number(number),
        sequences: sequencesOf(contents === null ? "" : (objects.get(contents)?.stream ?? "")),
      });
    }
    const element = elementOf(id, dictionary);
    if (element !== null) elements.set(id, element);
  }
  return { raw, objects, catalog, root, elements, pages };
}
