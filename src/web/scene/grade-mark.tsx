import { svgNodesOf } from "#drawing";
import type { Grade } from "../car.ts";
import { renderSvgNode } from "./svg-node-view.tsx";

interface GradeMarkProps {
  /** null: not looked at. */
  readonly grade: Grade | null;
  readonly size?: number;
}

/** The mark of a grade beside words; the words carry the meaning. */
export const GradeMark = ({ grade, size = 18 }: GradeMarkProps) => (
  <svg viewBox="0 0 20 20" width={size} height={size} aria-hidden="true" className="grade-mark">
    {svgNodesOf({ kind: "grade", grade, cx: 10, cy: 10, size: 20 }, { theme: "css" }).map(renderSvgNode)}
  </svg>
);
