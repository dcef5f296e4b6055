import type { CarPoint, Projection } from "../projection.ts";
import type { Mark } from "../scene.ts";
import type { Look } from "../symbols/look.ts";
import type { PartName } from "./part-of.ts";

/** One drawn part of a corner. */
export interface CornerPart {
  readonly name: PartName;
  readonly sheet: "lower" | "upper" | "both";
  /** Metres above ground: what lies lower is nearer to the eye and drawn later. */
  readonly height: number;
  /** Centre lines, for the sheet on which the part is only hinted at. */
  readonly lines: readonly (readonly CarPoint[])[];
  readonly draw: (view: Projection, look: (part: PartName) => Look) => readonly Mark[];
}

/** Mean height of a few points above ground, metres. */
export const meanHeight = (points: readonly CarPoint[]): number =>
  points.reduce((sum, [, , z = 0]) => sum + z, 0) / Math.max(points.length, 1);
