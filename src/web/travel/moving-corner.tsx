import { useCallback, useMemo } from "react";
import type { TravelSheet, TravelSheetQuestion } from "#casework";
import { type BesideCorner, drawMovingCorner, drawTravelPlots, type EyePlace } from "#drawing";
import { EyeSliders } from "../geometry/eye-sliders.tsx";
import { FittedScene, type SceneRoom } from "../scene/fitted-scene.tsx";
import "./travel.css";

const leastHeight = () => 360;
const leastCorner = () => 360;

/** The other states and the other car line as they stand at this travel, drawn thin over the sound corner. */
const cornersBeside = (
  { subjects, family, condition }: TravelSheetQuestion,
  sheet: TravelSheet,
): readonly BesideCorner[] =>
  subjects.flatMap((subject, i) => {
    const pose = sheet.poses[i] ?? null;
    if (i === 0 || pose === null) return [];
    return [{ family: subject.kind === "beside" ? subject.family : family, pose, rack: condition.rack }];
  });

interface MovingCornerProps {
  readonly sheet: TravelSheet;
  /** The question the sheet answers. */
  readonly asked: TravelSheetQuestion;
  readonly eye: EyePlace;
  readonly setEye: (eye: EyePlace) => void;
  readonly onScale: (scale: string | null) => void;
}

/** The corner as it stands, on three sheets and in space, beside its curves over travel. */
export const MovingCorner = ({ sheet, asked, eye, setEye, onScale }: MovingCornerProps) => {
  const pose = sheet.poses[0] ?? null;
  const beside = useMemo(() => cornersBeside(asked, sheet), [asked, sheet]);
  const drawCorner = useCallback(
    (room: SceneRoom) => {
      if (pose === null) throw new Error("no pose is drawn");
      const { family, corner, condition } = asked;
      return drawMovingCorner({ family, corner, pose, rack: condition.rack, beside }, { ...room, eye });
    },
    [asked, pose, eye, beside],
  );
  const drawPlots = useCallback(
    (room: SceneRoom) => drawTravelPlots(sheet, { ...room, at: asked.condition.contactRise }),
    [sheet, asked],
  );
  return (
    <>
      <div className="travel-corner">
        {pose === null ? (
          <p className="lead">At this travel the sound corner finds no balance.</p>
        ) : (
          <FittedScene draw={drawCorner} leastHeight={leastCorner} onScale={onScale} />
        )}
        <EyeSliders eye={eye} onChange={setEye} />
      </div>
      <div className="travel-curves">
        <FittedScene draw={drawPlots} leastHeight={leastHeight} />
      </div>
    </>
  );
};
