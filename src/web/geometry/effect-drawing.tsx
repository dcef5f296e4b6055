import { useCallback } from "react";
import { type FaultEffect, formatFigure, type TravelSheet, type TravelSheetQuestion } from "#casework";
import { drawCurves, drawGeometry, drawTravelPlots, type EyePlace } from "#drawing";
import type { Family } from "../car.ts";
import { FittedScene, type SceneRoom } from "../scene/fitted-scene.tsx";
import "../travel/travel.css";
import { EyeSliders } from "./eye-sliders.tsx";

/** All lines of a sheet, and what was asked for them. */
export interface DrawnLines {
  readonly sheet: TravelSheet;
  readonly asked: TravelSheetQuestion;
}

interface EffectDrawingProps {
  readonly family: Family;
  readonly effect: FaultEffect;
  /** What is drawn besides sound and the fault; null: nothing. */
  readonly lines: DrawnLines | null;
  readonly eye: EyePlace;
  readonly setEye: (eye: EyePlace) => void;
  readonly onScale: (scale: string | null) => void;
}

const leastHeight = () => 420;

/** How the corner stands in the states that are drawn besides: behind sound and the fault, which the effect has. */
const posesBesides = (lines: DrawnLines | null) => (lines?.sheet.poses ?? []).slice(2).filter((pose) => pose !== null);

/** What the fault does, in a sentence; the corner on three sheets and in space, and the curves over travel. */
export const EffectDrawing = ({ family, effect, lines, eye, setEye, onScale }: EffectDrawingProps) => {
  const drawViews = useCallback(
    (room: SceneRoom) =>
      drawGeometry(family, effect, {
        ...room,
        ghosts: effect.travels,
        beside: posesBesides(lines),
        format: formatFigure,
        eye,
      }),
    [family, effect, lines, eye],
  );
  const drawPlots = useCallback(
    (room: SceneRoom) =>
      lines === null
        ? drawCurves(effect, { ...room, format: formatFigure })
        : drawTravelPlots(lines.sheet, { ...room, at: lines.asked.condition.contactRise }),
    [effect, lines],
  );
  return (
    <>
      <p className="geometry-sentence">{effect.sentence}</p>
      <div className="geometry-views travel-corner">
        <FittedScene draw={drawViews} leastHeight={leastHeight} onScale={onScale} />
        <EyeSliders eye={eye} onChange={setEye} />
      </div>
      <div className="geometry-curves">
        <FittedScene draw={drawPlots} leastHeight={leastHeight} />
      </div>
    </>
  );
};
