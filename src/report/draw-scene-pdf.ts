import {
  type Colour,
  colours,
  drawGradeMark,
  type Fill,
  faces,
  type Mark,
  type Scene,
  type Stroke,
  type TextMark,
} from "#drawing";
import { fontName } from "./fonts.ts";

const paint = colours.print;

type HatchPattern = ReturnType<PDFKit.PDFDocument["pattern"]>;
type PatternName = Exclude<Fill, Colour>;

/** Lines at 45 degrees, `pitch` apart; `rising` = from lower left to upper right. */
function hatchTile(pitch: number, width: number, rising: boolean): { readonly side: number; readonly stream: string } {
  const side = pitch * Math.SQRT2;
  const line = (x0: number, y0: number, x1: number, y1: number) => `${x0} ${y0} m ${x1} ${y1} l S`;
  const over = 1;
  const lines = rising
    ? [
        line(-over, side + over, side + over, -over),
        line(-over, over, over, -over),
        line(side - over, side + over, side + over, side - over),
      ]
    : [
        line(-over, -over, side + over, side + over),
        line(-over, side - over, over, side + over),
        line(side - over, -over, side + over, over),
      ];
  return { side, stream: `${width} w ${lines.join(" ")}` };
}

/** Draws scenes on one PDF page as vectors and real text; colours are those of print. */
export class ScenePainter {
  readonly #doc: PDFKit.PDFDocument;
  readonly #patterns = new Map<PatternName, HatchPattern>();

  constructor(doc: PDFKit.PDFDocument) {
    this.#doc = doc;
  }

  /** Draws a scene with its upper left corner at (x, y) in the page's units, `scale` times its own size. */
  draw(scene: Scene, x: number, y: number, scale = 1): void {
    this.#doc.save().translate(x, y).scale(scale);
    this.drawMarks(scene.marks, scene.type ?? "desk");
    this.#doc.restore();
  }

  /** Draws marks in the page's own units. */
  drawMarks(marks: readonly Mark[], type: "desk" | "touch" = "desk"): void {
    for (const mark of marks) this.#drawMark(mark, type);
  }

  #drawMark(mark: Mark, type: "desk" | "touch"): void {
    const doc = this.#doc;
    switch (mark.kind) {
      case "path":
      case "circle": {
        const outline = () => (mark.kind === "path" ? doc.path(mark.d) : doc.circle(mark.cx, mark.cy, mark.r));
        doc.save();
        if (mark.opacity !== undefined) doc.opacity(mark.opacity);
        this.#fill(mark.fill, outline);
        this.#stroke(mark.stroke, outline);
        doc.restore();
        return;
      }
      case "text":
        this.#drawText(mark, type);
        return;
      case "grade":
        this.drawMarks(drawGradeMark(mark), type);
        return;
      case "group":
        this.drawMarks(mark.marks, type);
        return;
    }
  }

  #fill(fill: Fill | undefined, outline: () => PDFKit.PDFDocument): void {
    if (fill === undefined || fill === "none") return;
    if (isColour(fill)) {
      outline().fill(paint[fill]);
      return;
    }
    const colour = fill === "hatch-cut-accent" ? paint.accent : fill === "hatch-cut" ? paint.ink2 : paint.ink3;
    outline().fill([this.#patternOf(fill), colour]);
  }

  #stroke(stroke: Stroke | undefined, outline: () => PDFKit.PDFDocument): void {
    if (stroke === undefined || stroke.colour === "none") return;
    const doc = outline()
      .lineWidth(stroke.width)
      .lineJoin("round")
      .lineCap(stroke.cap ?? "butt");
    if (stroke.dash !== undefined) doc.dash(stroke.dash[0] ?? 1, { space: stroke.dash[1] ?? 1 });
    if (stroke.dash !== undefined && stroke.dash.length > 2) doc.addContent(`[${stroke.dash.join(" ")}] 0 d`);
    doc.stroke(paint[stroke.colour]);
  }

  #patternOf(name: PatternName): HatchPattern {
    const known = this.#patterns.get(name);
    if (known !== undefined) return known;
    const made = this.#makePattern(name);
    this.#patterns.set(name, made);
    return made;
  }

  #makePattern(name: PatternName): HatchPattern {
    if (name === "dots-rubber") return this.#doc.pattern([0, 0, 4, 4], 4, 4, "1.6 w 1 J 2 2 m 2 2 l S");
    if (name === "dashes-fluid") return this.#doc.pattern([0, 0, 14, 6], 14, 6, "1 w 1 3 m 8 3 l S");
    const { side, stream } =
      name === "hatch-unseen" ? hatchTile(6, 1, true) : hatchTile(3.2, 0.9, name === "hatch-cut-accent");
    return this.#doc.pattern([0, 0, side, side], side, side, stream);
  }

  #drawText(mark: TextMark, type: "desk" | "touch"): void {
    const doc = this.#doc;
    const face = faces[type][mark.style];
    doc.font(fontName(face.weight)).fontSize(face.size);
    const width = doc.widthOfString(mark.text);
    const left = mark.anchor === "middle" ? mark.x - width / 2 : mark.anchor === "end" ? mark.x - width : mark.x;
    doc.save();
    if (mark.rotate !== undefined) doc.rotate(mark.rotate, { origin: [mark.x, mark.y] });
    if (mark.halo === true) doc.rect(left - 2, mark.y - face.size * 0.78, width + 4, face.size).fill(paint.paper);
    const colour = mark.colour === undefined || mark.colour === "none" ? face.colour : mark.colour;
    doc.fillColor(paint[colour]);
    doc.text(mark.text, left, mark.y, { lineBreak: false, baseline: "alphabetic" });
    doc.restore();
  }
}

const isColour = (fill: Fill): fill is Exclude<Colour, "none"> => Object.hasOwn(paint, fill);
