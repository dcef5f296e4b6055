import { useMemo } from "react";
import { drawUnderside, type PositionStates, type Scene, svgTreeOf } from "#drawing";
import type { Family } from "../car.ts";
import { renderSvgNode } from "./svg-node-view.tsx";

interface SmallCarProps {
  readonly family: Family;
  /** Marks on it; absent: drawn plain. */
  readonly states?: PositionStates;
  readonly selected?: string;
  /** The car alone fills the room: no leaders beside it. */
  readonly bare?: boolean;
}

/** The room it is drawn in; on screen it is scaled down as a whole, so it carries no words. */
const DRAWN = { width: 460, height: 620 } as const;
/** What lies beside the car in that room. */
const BESIDE = { plain: 24, marked: 164 } as const;
/** From the base line of the words to the drawing. */
const INSIDE = 9;

/** Just inside the line with the sides in words, before or behind the car. */
const heightOf = (scene: Scene, word: string): number => {
  const mark = scene.marks.find((one) => one.kind === "text" && one.text === word);
  if (mark?.kind !== "text") return word.startsWith("Front") ? 0 : scene.height;
  return word.startsWith("Front") ? mark.y + INSIDE : mark.y - 1.8 * INSIDE;
};

/** A car from below, small and without words, beside something that names it. */
export const SmallCar = ({ family, states, selected, bare = states === undefined }: SmallCarProps) => {
  const prefix = `${family.id}-small-`;
  const beside = bare ? BESIDE.plain : BESIDE.marked;
  const { drawing, viewBox } = useMemo(() => {
    const width = DRAWN.width + 2 * beside;
    const scene = drawUnderside(family, {
      width,
      height: DRAWN.height,
      states: states ?? null,
      selected: selected ?? null,
      legend: false,
    });
    const marks = scene.marks.filter(({ kind }) => kind !== "text");
    const { children } = svgTreeOf({ ...scene, marks }, { theme: "css", idPrefix: prefix });
    const [top, bottom] = [heightOf(scene, "Front right"), heightOf(scene, "Rear right")];
    return {
      drawing: children.filter((child) => typeof child === "string" || !["title", "desc"].includes(child.tag)),
      viewBox: `${beside} ${top} ${DRAWN.width} ${bottom - top}`,
    };
  }, [family, states, selected, beside, prefix]);
  return (
    <svg viewBox={viewBox} className="small-car" aria-hidden="true">
      {drawing.map(renderSvgNode)}
    </svg>
  );
};
