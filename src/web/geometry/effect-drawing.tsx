import { useCallback } from "react";
import type { FaultEffect } from "#casework";
import { drawCurves, drawGeometry } from "#drawing";
import type { Family } from "#vehicle";
import { FittedScene, type SceneRoom } from "../scene/fitted-scene.tsx";

interface EffectDrawingProps {
  readonly family: Family;
  readonly effect: FaultEffect;
}

const VIEWS_LEAST = { desk: 560, touch: 560 } as const;

/** Three views of the corner and the curves over travel, drawn from one answer. */
export const EffectDrawing = ({ family, effect }: EffectDrawingProps) => {
  const drawViews = useCallback((room: SceneRoom) => drawGeometry(family, effect, room), [family, effect]);
  const drawPlots = useCallback((room: SceneRoom) => drawCurves(effect, room), [effect]);
  return (
    <>
      <div className="geometry-views">
        <FittedScene draw={drawViews} leastHeight={VIEWS_LEAST} />
      </div>
      <div className="geometry-curves">
        <FittedScene draw={drawPlots} leastHeight={VIEWS_LEAST} />
      </div>
    </>
  );
};
