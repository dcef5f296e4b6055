import { useCallback } from "react";
import type { Shake } from "#casework";
import { drawBush } from "#drawing";
import { FittedScene, type SceneRoom } from "../scene/fitted-scene.tsx";

const leastHeight = () => 360;

/** What a shaker reads of the bush itself, with its fluid and without. */
export const BushAlone = ({ shake }: { readonly shake: Shake }) => {
  const draw = useCallback((room: SceneRoom) => drawBush(shake, room), [shake]);
  return (
    <section className="bush-alone">
      <h3 className="margin-title">The bush itself, on a shaker</h3>
      <p>{shake.bushAlone}</p>
      <div className="bush-plots">
        <FittedScene draw={draw} leastHeight={leastHeight} />
      </div>
    </section>
  );
};
