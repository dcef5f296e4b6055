import { svgNodesOf } from "#drawing";
import type { Grade } from "../car.ts";
import { renderSvgNode } from "./svg-node-view.tsx";

interface GradeMarkProps {
  /** null: not looked at. */
  readonly grade: Grade | null;
  readonly size?: number;
  /** Too close to call: wears a dashed ring. */
  readonly close?: boolean;
  /** With no grade: read, and not known. */
  readonly read?: boolean;
}

/** The mark of a grade beside words; the words carry the meaning. */
export const GradeMark = ({ grade, size = 18, close = false, read = false }: GradeMarkProps) => (
  <svg viewBox="0 0 20 20" width={size} height={size} aria-hidden="true" className="grade-mark">
    {svgNodesOf({ kind: "grade", grade, close, read, cx: 10, cy: 10, size: close ? 14 : 20 }, { theme: "css" }).map(
      renderSvgNode,
    )}
  </svg>
);
