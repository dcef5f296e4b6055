import { useMemo } from "react";
import { parseSilhouette } from "#contract";
import { drawUnderside, type Scene, svgTreeOf } from "#drawing";
import type { AxleName, LayoutName } from "../car.ts";
import { renderSvgNode } from "../scene/svg-node-view.tsx";

/** The room a whole car is drawn in before one axle is cut out of it. */
const DRAWN = { width: 420, height: 600 } as const;
/** Height of the part that shows one axle, the same for all layouts so that they stand on one line. */
const CUT_HEIGHT: Readonly<Record<AxleName, number>> = { front: 142, rear: 186 };
const SIDE = 20;
/** From the line with the sides in words to the drawing. */
const BESIDE_WORDS = 12;

/** The marks of one axle of a car drawn whole, and the part of the drawing they lie in. */
const cutAxle = (scene: Scene, axle: AxleName): { readonly scene: Scene; readonly viewBox: string } => {
  const word = axle === "front" ? "Front right" : "Rear right";
  const side = scene.marks.find((mark) => mark.kind === "text" && mark.text === word);
  const y = side?.kind === "text" ? side.y : 0;
  const top = axle === "front" ? y + BESIDE_WORDS : y - BESIDE_WORDS * 1.6 - CUT_HEIGHT[axle];
  return {
    scene: { ...scene, marks: scene.marks.filter(({ kind }) => kind !== "text") },
    viewBox: `${SIDE} ${top} ${scene.width - 2 * SIDE} ${CUT_HEIGHT[axle]}`,
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
