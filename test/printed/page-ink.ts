import { computeTextWidth, type FontWeight } from "#drawing";
import { charactersOf, objectsOf, type PdfObject } from "../../src/report/read-pdf.ts";

/** Where a run of words stands on a page: points, y downward from the upper edge; from above a capital to below a g. */
export interface Words {
  readonly text: string;
  readonly size: number;
  readonly x: number;
  readonly width: number;
  readonly base: number;
  /** Place in the order of drawing. */
  readonly order: number;
}

/** A piece of a stroked line, or a white field that hides what was drawn before it. */
export interface Piece {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly order: number;
}
export interface Cover {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly order: number;
}

/** What is drawn on one page of a file of our own making. */
export interface PageInk {
  readonly width: number;
  readonly height: number;
  readonly words: readonly Words[];
  readonly strokes: readonly Piece[];
  readonly covers: readonly Cover[];
}

type Matrix = readonly [number, number, number, number, number, number];
type Spot = readonly [number, number];

const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[1] * n[2],
  m[0] * n[1] + m[1] * n[3],
  m[2] * n[0] + m[3] * n[2],
  m[2] * n[1] + m[3] * n[3],
  m[4] * n[0] + m[5] * n[2] + n[4],
  m[4] * n[1] + m[5] * n[3] + n[5],
];
const through = (m: Matrix, x: number, y: number): Spot => [m[0] * x + m[2] * y + m[4], m[1] * x + m[3] * y + m[5]];

interface Face {
  readonly characters: ReadonlyMap<number, string>;
  readonly weight: FontWeight;
}

function facesOf(objects: ReadonlyMap<number, PdfObject>): ReadonlyMap<string, Face> {
  const faces = new Map<string, Face>();
  for (const { dictionary } of objects.values()) {
    for (const [, name = "", id = ""] of dictionary.matchAll(/\/(F\d+) (\d+) 0 R/g)) {
      const own = objects.get(Number(id))?.dictionary ?? "";
      const cmap = objects.get(Number(/\/ToUnicode (\d+) 0 R/.exec(own)?.[1] ?? -1))?.stream ?? "";
      const weight = own.includes("-Semibold") ? 600 : own.includes("-Light") ? 300 : 400;
      faces.set(name, { characters: charactersOf(cmap), weight });
    }
  }
  return faces;
}

const CURVE_STEPS = 8;

/** Everything drawn by one content stream. */
function inkOf(stream: string, faces: ReadonlyMap<string, Face>, height: number): Omit<PageInk, "width" | "height"> {
  const words: Words[] = [];
  const strokes: Piece[] = [];
  const covers: Cover[] = [];
  const stack: Matrix[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  let text: Matrix = matrix;
  let face: Face | undefined;
  let size = 0;
  let white = false;
  let path: Spot[][] = [];
  let here: Spot = [0, 0];
  const page = (x: number, y: number): Spot => {
    const [px, py] = through(matrix, x, y);
    return [px, height - py];
  };
  const goTo = (x: number, y: number): void => {
    path.at(-1)?.push(page(x, y));
    here = [x, y];
  };
  for (const [order, line] of stream.split("\n").entries()) {
    const operands = line.split(" ");
    const operator = operands.pop() ?? "";
    const n = operands.map(Number);
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = n;
    if (operator === "q") stack.push(matrix);
    else if (operator === "Q") matrix = stack.pop() ?? matrix;
    else if (operator === "cm") matrix = times([a, b, c, d, e, f], matrix);
    else if (operator === "Tm") text = [a, b, c, d, e, f];
    else if (operator === "Tf") {
      face = faces.get((operands[0] ?? "").slice(1));
      size = Number(operands[1]);
    } else if (operator === "TJ") {
      const glyphs = [...line.matchAll(/<([0-9a-f]*)>/gi)].flatMap(([, hex = ""]) => hex.match(/.{4}/g) ?? []);
      const said = glyphs.map((glyph) => face?.characters.get(Number.parseInt(glyph, 16)) ?? "\ufffd").join("");
      const placed = times(text, matrix);
      const scale = Math.hypot(placed[0], placed[1]);
      // What kerning takes away stands between the glyphs, in thousandths of the size.
      const kerned = [...line.matchAll(/> (-?[\d.]+)/g)].reduce((sum, [, by = "0"]) => sum + Number(by) / 1000, 0);
      const width = computeTextWidth(said.trimEnd(), size * scale, face?.weight ?? 400) - kerned * size * scale;
      words.push({ text: said, size: size * scale, x: placed[4], base: height - placed[5], width, order });
    } else if (operator === "scn") white = line.startsWith("1 1 1 ");
    else if (operator === "re") {
      path.push([page(a, b), page(a + c, b), page(a + c, b + d), page(a, b + d), page(a, b)]);
    } else if (operator === "m") {
      path.push([page(a, b)]);
      here = [a, b];
    } else if (operator === "l") goTo(a, b);
    else if (operator === "c") {
      const [x0, y0] = here;
      for (let i = 1; i <= CURVE_STEPS; i++) {
        const [t, u] = [i / CURVE_STEPS, 1 - i / CURVE_STEPS];
        const mix = (p: number, q: number, r: number, s: number) =>
          u ** 3 * p + 3 * u * u * t * q + 3 * u * t * t * r + t ** 3 * s;
        path.at(-1)?.push(page(mix(x0, a, c, e), mix(y0, b, d, f)));
      }
      here = [e, f];
    } else if (operator === "h") {
      const [first] = path.at(-1) ?? [];
      if (first !== undefined) path.at(-1)?.push(first);
    } else if (operator === "S") {
      strokes.push(...path.flatMap((run) => run.slice(1).map((to, i): Piece => ({ from: run[i] ?? to, to, order }))));
      path = [];
    } else if (operator === "f") {
      const spots = path.flat();
      const [xs, ys] = [spots.map(([x]) => x), spots.map(([, y]) => y)];
      const [x, y] = [Math.min(...xs), Math.min(...ys)];
      if (white) covers.push({ x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y, order });
      path = [];
    }
  }
  return { words: words.filter(({ text: said }) => said.trim() !== ""), strokes, covers };
}

/** What is drawn on each page of a file printed by the program. */
export function readPageInk(bytes: Uint8Array): readonly PageInk[] {
  const raw = Buffer.from(bytes).toString("latin1");
  const objects = objectsOf(raw);
  const faces = facesOf(objects);
  return [...objects.values()].flatMap(({ dictionary }): PageInk[] => {
    if (!dictionary.includes("/Type /Page\n")) return [];
    const [, wide = "0", high = "0"] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(dictionary) ?? [];
    const stream = objects.get(Number(/\/Contents (\d+) 0 R/.exec(dictionary)?.[1] ?? -1))?.stream ?? "";
    const [width, height] = [Number(wide), Number(high)];
    return [{ width, height, ...inkOf(stream, faces, height) }];
  });
}
