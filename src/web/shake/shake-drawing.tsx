import { useCallback } from "react";
import type { Shake } from "#casework";
import { drawShake } from "#drawing";
import { FittedScene, type SceneRoom } from "../scene/fitted-scene.tsx";

const leastHeight = () => 300;

/** The one curve: how far the wheel shakes along the road over the road speed, sound and without the fluid. */
export const ShakeDrawing = ({ shake }: { readonly shake: Shake }) => {
  const draw = useCallback((room: SceneRoom) => drawShake(shake, room), [shake]);
  return (
    <div className="shake">
      <div className="shake-curve">
        <FittedScene draw={draw} leastHeight={leastHeight} />
      </div>
      <p className="shake-sentence">{shake.sentence}</p>
    </div>
  );
};
