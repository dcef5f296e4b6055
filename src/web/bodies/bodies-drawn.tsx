import { useCallback } from "react";
import { type BodiesSheet, placeOfFault } from "#casework";
import { drawBodies, drawTravelPlots } from "#drawing";
import { EyeSliders } from "../geometry/eye-sliders.tsx";
import { FittedScene, type SceneRoom } from "../scene/fitted-scene.tsx";
import type { BodiesView } from "./use-bodies-view.ts";

const leastHeight = () => 360;
const leastCorner = () => 230;

interface BodiesDrawnProps {
  readonly view: BodiesView;
  readonly sheet: BodiesSheet;
  readonly onScale: (scale: string | null) => void;
}

/** The suspension in space, turned by two sliders, beside its curves. */
export const BodiesDrawn = ({ view: { eye, setEye, condition }, sheet, onScale }: BodiesDrawnProps) => {
  const { placed, faultyPlaced, fault } = sheet;
  const drawSpace = useCallback(
    (room: SceneRoom) => {
      if (placed === null) throw new Error("nothing is placed");
      const at = fault === null ? null : placeOfFault(fault);
      return drawBodies(placed, { ...room, eye, beside: faultyPlaced, at });
    },
    [placed, faultyPlaced, fault, eye],
  );
  const drawPlots = useCallback(
    (room: SceneRoom) =>
      drawTravelPlots(
        { plots: sheet.plots, rows: [], poses: [], sentences: [sheet.sentence] },
        { ...room, at: condition.contactRise },
      ),
    [sheet, condition.contactRise],
  );
  return (
    <>
      <p className="bodies-sentence">
        {sheet.sentence}
        {sheet.others === null ? "" : ` ${sheet.others}`}
      </p>
      <div className="travel-corner">
        {placed === null ? (
          <p className="lead">At this travel it finds no balance.</p>
        ) : (
          <FittedScene draw={drawSpace} leastHeight={leastCorner} onScale={onScale} />
        )}
        <EyeSliders eye={eye} onChange={setEye} />
      </div>
      <div className="travel-curves">
        <FittedScene draw={drawPlots} leastHeight={leastHeight} />
      </div>
    </>
  );
};
