/**
 * A drawing as plain data: what a screen shows as SVG and a PDF as vectors, from the same numbers.
 * Coordinates are page units (CSS px on screen, scaled to points on paper), y downward.
 */
export type Colour =
  | "paper"
  | "wash"
  | "ink"
  | "ink2"
  | "ink3"
  | "hair"
  | "accent"
  | "g0"
  | "g1"
  | "g2"
  | "g3"
  | "g4"
  | "none";

/** Patterns a closed shape can be filled with. */
export type Pattern = "hatch-unseen" | "hatch-cut" | "hatch-cut-accent" | "dots-rubber" | "dashes-fluid";
export type Fill = Colour | Pattern;

export type TextStyle =
  | "label"
  | "label-bold"
  | "label-second"
  | "label-accent"
  | "note"
  | "dimension"
  | "medium"
  | "medium-bold"
  | "medium-accent"
  | "medium-second"
  | "large"
  | "large-bold"
  | "heading"
  | "figure-large"
  | "figure-huge"
  | "sentence";

/** Under a car text is larger than on a desk; a scene is set for one of the two. */
export type TypeScale = "desk" | "touch";

export interface Stroke {
  readonly colour: Colour;
  readonly width: number;
  readonly dash?: readonly number[];
  readonly cap?: "butt" | "round";
}

export interface PathMark {
  readonly kind: "path";
  readonly d: string;
  readonly stroke?: Stroke;
  readonly fill?: Fill;
  readonly opacity?: number;
}

export interface CircleMark {
  readonly kind: "circle";
  readonly cx: number;
  readonly cy: number;
  readonly r: number;
  readonly stroke?: Stroke;
  readonly fill?: Fill;
  readonly opacity?: number;
}

export interface TextMark {
  readonly kind: "text";
  readonly x: number;
  /** Base line. */
  readonly y: number;
  readonly text: string;
  readonly style: TextStyle;
  readonly anchor?: "start" | "middle" | "end";
  readonly colour?: Colour;
  /** Degrees clockwise about (x, y). */
  readonly rotate?: number;
  /** A rim of paper behind the letters, so that a line under them does not cut the word. */
  readonly halo?: boolean;
}

/** The sign of a finding: grade, not looked at (null), read and not known, or too close to call (dashed ring round it). */
export interface GradeMark {
  readonly kind: "grade";
  readonly grade: 0 | 1 | 2 | 3 | 4 | null;
  /** With no grade: read, and held against nothing, so that it is not hatched as if nobody had looked. */
  readonly read?: boolean;
  readonly close?: boolean;
  readonly cx: number;
  readonly cy: number;
  readonly size: number;
}

export interface GroupMark {
  readonly kind: "group";
  readonly id?: string;
  readonly label?: string;
  readonly marks: readonly Mark[];
}

export type Mark = PathMark | CircleMark | TextMark | GradeMark | GroupMark;

/** A place on the scene that can be pressed; the renderer makes it a button with this name. */
export interface Target {
  readonly id: string;
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly selected?: boolean;
}

/** A drawn place that can be pressed where it lies, beside its target; where two lie close, the nearer one is meant. */
export interface PressPoint {
  /** Id of the target it stands for. */
  readonly id: string;
  readonly x: number;
  readonly y: number;
}

export interface Scene {
  readonly width: number;
  readonly height: number;
  /** Absent = desk. */
  readonly type?: TypeScale;
  /** What a person who cannot see it is told. */
  readonly title: string;
  readonly description: string;
  readonly marks: readonly Mark[];
  readonly targets: readonly Target[];
  /** Absent = nothing but the targets can be pressed. */
  readonly points?: readonly PressPoint[];
  /** An area the drawing leaves free for words. */
  readonly free?: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  /** For the title block: "1 : 10.5"; absent where nothing is to scale. */
  readonly scale?: string;
}
