import { useMemo } from "react";
import { parseSilhouette } from "#contract";
import { drawUnderside, type Scene, svgTreeOf } from "#drawing";
import type { AxleName, LayoutName } from "../car.ts";
import { renderSvgNode } from "../scene/svg-node-view.tsx";

/** The room a whole car is drawn in before one axle is cut out of it. */
const DRAWN = { width: 420, height: 600 } as const;
const SIDE = 20;
/** From the line with the sides in words, and from the middle between the break lines, to the drawing. */
const BESIDE_WORDS = 12;
const BESIDE_BREAK = 26;

/** The marks of one axle of a car drawn whole, and the part of the drawing they lie in. */
const cutAxle = (scene: Scene, axle: AxleName): { readonly scene: Scene; readonly viewBox: string } => {
  const heights = (words: RegExp) =>
    scene.marks.flatMap((mark) => (mark.kind === "text" && words.test(mark.text) ? [mark.y] : []));
  const [head = 0] = heights(/^Front right/);
  const [foot = scene.height] = heights(/^Rear right/);
  const between = heights(/wheelbase|template/);
  const middle = between.reduce((sum, y) => sum + y / between.length, 0) || (head + foot) / 2;
  const [top, bottom] =
    axle === "front"
      ? [head + BESIDE_WORDS, middle - BESIDE_BREAK]
      : [middle + BESIDE_BREAK, foot - 1.6 * BESIDE_WORDS];
  return {
    scene: { ...scene, marks: scene.marks.filter(({ kind }) => kind !== "text") },
    viewBox: `${SIDE} ${top} ${scene.width - 2 * SIDE} ${bottom - top}`,
  };
};

const drawLayout = (axle: AxleName, layout: LayoutName) => {
  const made = parseSilhouette(axle === "front" ? { front_layout: layout } : { rear_layout: layout });
  if ("findings" in made) return null;
  const { scene, viewBox } = cutAxle(drawUnderside(made.family, { ...DRAWN, states: null }), axle);
  const { children } = svgTreeOf(scene, { theme: "css", idPrefix: `${axle}-${layout}-` });
  const drawing = children.filter((child) => typeof child === "string" || !["title", "desc"].includes(child.tag));
  return { drawing, viewBox };
};

interface LayoutSilhouetteProps {
  readonly axle: AxleName;
  readonly layout: LayoutName;
}

/** An axle of this layout from below, as its template draws it. */
export const LayoutSilhouette = ({ axle, layout }: LayoutSilhouetteProps) => {
  const drawn = useMemo(() => drawLayout(axle, layout), [axle, layout]);
  return drawn === null ? null : (
    <svg viewBox={drawn.viewBox} className="silhouette" aria-hidden="true">
      {drawn.drawing.map(renderSvgNode)}
    </svg>
  );
};
