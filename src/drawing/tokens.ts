import type { Colour, TextStyle, TypeScale } from "./scene.ts";

export type Theme = "light" | "dark" | "print";
type Token = Exclude<Colour, "none">;

/**
 * Colours by token name. Light: warm paper, near-black ink; dark: slate and chalk; print: the light ink on white.
 * Contrast on paper: ink 15.5 and 12.8, ink2 7.0 and 7.4, ink3 4.9 and 5.3, accent 9.1 and 5.8; hair is for lines only.
 * Grades run from blue through ochre to deep magenta; shape decides, colour helps.
 */
export const colours: Readonly<Record<Theme, Readonly<Record<Token, string>>>> = {
  light: {
    paper: "#F7F3EA",
    wash: "#EFE9DC",
    ink: "#1D1B18",
    ink2: "#57524A",
    ink3: "#6F695F",
    hair: "#B9B1A2",
    accent: "#2430AC",
    g0: "#586B76",
    g1: "#0B72C3",
    g2: "#8F6300",
    g3: "#86105C",
    g4: "#330418",
  },
  dark: {
    paper: "#1E252B",
    wash: "#283038",
    ink: "#EDE9DF",
    ink2: "#B4B3AB",
    ink3: "#969891",
    hair: "#4C565E",
    accent: "#8C96FF",
    g0: "#B7BDC4",
    g1: "#4FA0CC",
    g2: "#DDB64A",
    g3: "#EE5AA4",
    g4: "#FEDFF1",
  },
  print: {
    paper: "#FFFFFF",
    wash: "#EFE9DC",
    ink: "#1D1B18",
    ink2: "#57524A",
    ink3: "#6F695F",
    hair: "#B9B1A2",
    accent: "#2430AC",
    g0: "#586B76",
    g1: "#0B72C3",
    g2: "#8F6300",
    g3: "#86105C",
    g4: "#330418",
  },
};

/** Line weights in page units: the heavier, the more there is to say about the part. */
export const strokes = {
  /** A part that is sound, or that nobody has looked at. */
  sound: 1,
  /** A part with a finding. */
  finding: 2,
  /** The ring round what is selected. */
  selected: 3,
  leader: 0.9,
  far: 0.8,
  curve: 2,
} as const;

/** Dash patterns in page units. */
export const dashes = {
  axis: [16, 4, 2, 4],
  limit: [12, 4, 2, 4],
  tooClose: [3.4, 2.6],
  /** Not counted, or not measured: edge of a band from practice, of a guess. */
  practice: [3, 2.4],
} as const;

export type FontWeight = 300 | 400 | 600;
export interface Face {
  readonly size: number;
  readonly weight: FontWeight;
  readonly colour: Token;
}

const face = (size: number, weight: FontWeight, colour: Token): Face => ({ size, weight, colour });

/** Type scale: size in page units, weight of Source Sans 3, colour. */
export const faces: Readonly<Record<TypeScale, Readonly<Record<TextStyle, Face>>>> = {
  desk: {
    label: face(14.5, 400, "ink"),
    "label-bold": face(14.5, 600, "ink"),
    "label-second": face(14.5, 400, "ink2"),
    "label-accent": face(14.5, 600, "accent"),
    note: face(13, 400, "ink3"),
    dimension: face(13, 400, "ink2"),
    medium: face(17, 400, "ink"),
    "medium-bold": face(17, 600, "ink"),
    "medium-accent": face(17, 600, "accent"),
    "medium-second": face(17, 400, "ink2"),
    large: face(20.5, 400, "ink"),
    "large-bold": face(20.5, 600, "ink"),
    heading: face(25, 600, "ink"),
    "figure-large": face(36, 300, "ink"),
    "figure-huge": face(52, 300, "ink"),
    sentence: face(25, 400, "ink"),
  },
  touch: {
    label: face(16, 400, "ink"),
    "label-bold": face(16, 600, "ink"),
    "label-second": face(16, 400, "ink2"),
    "label-accent": face(16, 600, "accent"),
    note: face(14.5, 400, "ink2"),
    dimension: face(14.5, 400, "ink2"),
    medium: face(18, 400, "ink"),
    "medium-bold": face(18, 600, "ink"),
    "medium-accent": face(18, 600, "accent"),
    "medium-second": face(18, 400, "ink2"),
    large: face(21, 400, "ink"),
    "large-bold": face(21, 600, "ink"),
    heading: face(28, 600, "ink"),
    "figure-large": face(36, 300, "ink"),
    "figure-huge": face(57, 300, "ink"),
    sentence: face(28, 400, "ink"),
  },
};

/** Colour of a wheel by the state of the part asked about: what is no finding is not drawn as one. */
export const stateColours = { sound: "ink", torn: "g3", loose: "g3", firmer: "accent" } as const;

/** Line height of running labels as a multiple of the size. */
export const LEADING = 1.2;
/** Least side of anything that can be pressed, page units. */
export const LEAST_TARGET = 48;
export const NOT_LOOKED_AT = "Not looked at";
/** Said in place of a grade where something was read and nothing says what it means. */
export const NOT_KNOWN = "Not known";
export const TOO_CLOSE = "Too close to call";
/** Stands in the title block wherever the family is demo data. */
export const INVENTED_NOTE = "everything here is invented";
