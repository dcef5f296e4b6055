import type { Colour, Fill, Mark, Pattern, Scene, Stroke, TextMark, TypeScale } from "./scene.ts";
import { drawGradeMark } from "./symbols/grade-mark.ts";
import { colours, faces, type Theme } from "./tokens.ts";

/** One element of an SVG; attribute names are camel case, as React takes them. */
export interface SvgNode {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly children: readonly (SvgNode | string)[];
}

export interface SvgOptions {
  /** "css": colours are custom properties (--ink, --paper ...) the page sets; a theme: colours are written out. */
  readonly theme: "css" | Theme;
  /** Put before the ids of patterns, so that two drawings on one page keep their own. */
  readonly idPrefix?: string;
  readonly fontFamily?: string;
}

interface Context {
  readonly colour: (name: Colour) => string;
  readonly fill: (name: Fill) => string;
  readonly type: TypeScale;
}

const PATTERNS: readonly Pattern[] = ["hatch-unseen", "hatch-cut", "hatch-cut-accent", "dots-rubber", "dashes-fluid"];
const isPattern = (fill: Fill): fill is Pattern => (PATTERNS as readonly string[]).includes(fill);

const node = (tag: string, attributes: SvgNode["attributes"], children: SvgNode["children"] = []): SvgNode => ({
  tag,
  attributes,
  children,
});

/** Hatching: lines `pitch` apart, turned by `angle` degrees. */
function linePattern(id: string, pitch: number, angle: number, colour: string, width: number): SvgNode {
  return node(
    "pattern",
    { id, width: pitch, height: pitch, patternUnits: "userSpaceOnUse", patternTransform: `rotate(${angle})` },
    [node("path", { d: `M${width / 2} 0V${pitch}`, stroke: colour, strokeWidth: width })],
  );
}

/** The patterns shapes can be filled with; angles and pitches are those of the drawing's hatching. */
export function svgPatterns(options: SvgOptions): SvgNode {
  const prefix = options.idPrefix ?? "";
  const { colour } = contextOf(options, "desk");
  const square = { patternUnits: "userSpaceOnUse" };
  return node("defs", {}, [
    linePattern(`${prefix}hatch-unseen`, 6, 45, colour("ink3"), 1),
    linePattern(`${prefix}hatch-cut`, 3.2, -45, colour("ink2"), 0.9),
    linePattern(`${prefix}hatch-cut-accent`, 3.2, 45, colour("accent"), 0.9),
    node("pattern", { id: `${prefix}dots-rubber`, width: 5, height: 5, ...square, patternTransform: "rotate(45)" }, [
      node("circle", { cx: 2.5, cy: 2.5, r: 0.9, fill: colour("ink3") }),
    ]),
    node("pattern", { id: `${prefix}dashes-fluid`, width: 14, height: 6, ...square }, [
      node("path", { d: "M1 3H8", stroke: colour("ink3"), strokeWidth: 1 }),
    ]),
  ]);
}

function contextOf(options: SvgOptions, type: TypeScale): Context {
  const { theme } = options;
  const colour = (name: Colour): string => {
    if (name === "none") return "none";
    return theme === "css" ? `var(--${name})` : colours[theme][name];
  };
  const fill = (name: Fill): string => (isPattern(name) ? `url(#${options.idPrefix ?? ""}${name})` : colour(name));
  return { colour, fill, type };
}

function strokeAttributes(stroke: Stroke | undefined, context: Context): Record<string, string | number> {
  if (stroke === undefined) return {};
  return {
    stroke: context.colour(stroke.colour),
    strokeWidth: stroke.width,
    strokeLinejoin: "round",
    ...(stroke.dash === undefined ? {} : { strokeDasharray: stroke.dash.join(" ") }),
    ...(stroke.cap === undefined ? {} : { strokeLinecap: stroke.cap }),
  };
}

function textNode(mark: TextMark, context: Context): SvgNode {
  const face = faces[context.type][mark.style];
  const place = { x: round(mark.x), y: round(mark.y), fontSize: face.size, fontWeight: face.weight };
  return node(
    "text",
    {
      ...place,
      fill: context.colour(mark.colour ?? face.colour),
      ...(mark.anchor === undefined || mark.anchor === "start" ? {} : { textAnchor: mark.anchor }),
      ...(mark.rotate === undefined
        ? {}
        : { transform: `rotate(${round(mark.rotate)} ${round(mark.x)} ${round(mark.y)})` }),
      ...(mark.halo === true
        ? { stroke: context.colour("paper"), strokeWidth: 4, strokeLinejoin: "round", paintOrder: "stroke" }
        : {}),
    },
    [mark.text],
  );
}

const round = (value: number): number => Math.round(value * 100) / 100;

/** One mark of a scene as SVG elements. */
export function svgNodesOf(mark: Mark, options: SvgOptions, type: TypeScale = "desk"): readonly SvgNode[] {
  const context = contextOf(options, type);
  switch (mark.kind) {
    case "path":
    case "circle": {
      const paint = {
        fill: context.fill(mark.fill ?? "none"),
        ...strokeAttributes(mark.stroke, context),
        ...(mark.opacity === undefined ? {} : { opacity: mark.opacity }),
      };
      if (mark.kind === "path") return [node("path", { d: mark.d, ...paint })];
      return [node("circle", { cx: round(mark.cx), cy: round(mark.cy), r: round(mark.r), ...paint })];
    }
    case "text":
      return [textNode(mark, context)];
    case "grade":
      return drawGradeMark(mark).flatMap((shape) => svgNodesOf(shape, options, type));
    case "group": {
      const name = mark.label === undefined ? {} : { "aria-label": mark.label };
      const attributes = { ...(mark.id === undefined ? {} : { id: mark.id }), ...name };
      return [
        node(
          "g",
          attributes,
          mark.marks.flatMap((child) => svgNodesOf(child, options, type)),
        ),
      ];
    }
  }
}

/** A whole scene as one SVG element with title, description and patterns; targets are left to who draws the page. */
export function svgTreeOf(scene: Scene, options: SvgOptions): SvgNode {
  const { width, height } = scene;
  return node(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      width,
      height,
      viewBox: `0 0 ${width} ${height}`,
      role: "img",
      fontFamily: options.fontFamily ?? "'Source Sans 3', sans-serif",
    },
    [
      node("title", {}, [scene.title]),
      node("desc", {}, [scene.description]),
      svgPatterns(options),
      ...scene.marks.flatMap((mark) => svgNodesOf(mark, options, scene.type ?? "desk")),
    ],
  );
}
