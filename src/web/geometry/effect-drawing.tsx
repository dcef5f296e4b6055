import { useCallback } from "react";
import { type FaultEffect, formatFigure } from "#casework";
import { drawCurves, drawGeometry } from "#drawing";
import type { Family } from "../car.ts";
import { FittedScene, type SceneRoom } from "../scene/fitted-scene.tsx";

interface EffectDrawingProps {
  readonly family: Family;
  readonly effect: FaultEffect;
  readonly onScale: (scale: string | null) => void;
}

/** Narrower than this the sentence stands above the views; geometry.css goes by the width they then have. */
const ROOM_FOR_SENTENCE = 480;
const leastHeight = () => 420;

/** Three views of the corner and the curves over travel, drawn from one answer. */
export const EffectDrawing = ({ family, effect, onScale }: EffectDrawingProps) => {
  const drawViews = useCallback(
    (room: SceneRoom) =>
      drawGeometry(family, effect, {
        ...room,
        ghosts: effect.travels,
        format: formatFigure,
        sentence: room.width >= ROOM_FOR_SENTENCE,
      }),
    [family, effect],
  );
  const drawPlots = useCallback((room: SceneRoom) => drawCurves(effect, { ...room, format: formatFigure }), [effect]);
  return (
    <>
      <p className="geometry-sentence">{effect.sentence}</p>
      <div className="geometry-views">
        <FittedScene draw={drawViews} leastHeight={leastHeight} onScale={onScale} />
      </div>
      <div className="geometry-curves">
        <FittedScene draw={drawPlots} leastHeight={leastHeight} />
      </div>
    </>
  );
};
