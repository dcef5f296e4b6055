import type { Colour, Fill, Stroke } from "#drawing";

type Pattern = Exclude<Fill, Colour>;
const PATTERNS: readonly Pattern[] = ["hatch-unseen", "hatch-cut", "hatch-cut-accent", "dots-rubber", "dashes-fluid"];
const isPattern = (fill: Fill): fill is Pattern => PATTERNS.some((pattern) => pattern === fill);

const paintOf = (colour: Colour): string => (colour === "none" ? "none" : `var(--${colour})`);

/** What an SVG fill attribute says for a fill of the scene; nothing given is no fill. */
export const fillPaint = (fill: Fill | undefined): string => {
  if (fill === undefined) return "none";
  return isPattern(fill) ? `url(#${fill})` : paintOf(fill);
};

/** SVG stroke attributes for a stroke of the scene. */
export const strokePaint = (stroke: Stroke | undefined) =>
  stroke === undefined
    ? { stroke: "none" }
    : {
        stroke: paintOf(stroke.colour),
        strokeWidth: stroke.width,
        strokeLinejoin: "round" as const,
        strokeLinecap: stroke.cap ?? ("butt" as const),
        ...(stroke.dash === undefined ? {} : { strokeDasharray: stroke.dash.join(" ") }),
      };
