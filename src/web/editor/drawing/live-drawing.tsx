import { useCallback, useMemo } from "react";
import { drawHardPoints, drawUnderside } from "#drawing";
import type { AxleName } from "../../car.ts";
import { FittedScene, type SceneRoom } from "../../scene/fitted-scene.tsx";
import type { Editing } from "../use-editing.ts";
import { drawnPoints } from "./drawn-points.ts";

interface LiveDrawingProps {
  readonly editing: Editing;
  /** null: both axles. */
  readonly axle: AxleName | null;
  /** The selected hard point, as findings write it. */
  readonly selected: string | null;
  readonly onPress: (point: string) => void;
  readonly onScale: (scale: string | null) => void;
}

const leastHeight = () => 240;

type Drawn = NonNullable<Editing["drawn"]>;

const DrawnScene = ({ drawn, ...props }: LiveDrawingProps & { readonly drawn: Drawn }) => {
  const { editing, axle, selected, onPress, onScale } = props;
  const { family, sheet } = drawn;
  const kept = editing.draft.base.sheet;
  const points = useMemo(
    () => (axle === null ? [] : drawnPoints(sheet, kept, axle, selected)),
    [sheet, kept, axle, selected],
  );
  const draw = useCallback(
    (room: SceneRoom) =>
      axle === null
        ? drawUnderside(family, { ...room, states: null, legend: false })
        : drawHardPoints(family, axle, { ...room, points }),
    [family, axle, points],
  );
  return axle === null ? (
    <FittedScene draw={draw} leastHeight={leastHeight} onScale={onScale} />
  ) : (
    <FittedScene draw={draw} leastHeight={leastHeight} onScale={onScale} onPress={onPress} />
  );
};

/** The car as it is entered, drawn anew with every figure; where it no longer closes, the last state that did. */
export const LiveDrawing = (props: LiveDrawingProps) => {
  const { drawn } = props.editing;
  return (
    <div className="editor-drawing">
      {drawn === null ? (
        <p className="lead">Nothing can be drawn until the linkages close; what is missing stands beside the fields.</p>
      ) : (
        <DrawnScene {...props} drawn={drawn} />
      )}
      {drawn === null || drawn.isPresent ? null : (
        <p className="drawing-holds" role="status">
          As it was when it last closed: what is entered now cannot be drawn.
        </p>
      )}
    </div>
  );
};
