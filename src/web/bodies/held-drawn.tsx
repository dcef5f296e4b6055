import { useCallback } from "react";
import { type BodiesHeld, type BodiesHold, partWords, placeOfFault } from "#casework";
import { drawBodies } from "#drawing";
import { EyeSliders } from "../geometry/eye-sliders.tsx";
import { HoldGrid } from "../hold/hold-grid.tsx";
import { FittedScene, type SceneRoom } from "../scene/fitted-scene.tsx";
import type { BodiesView } from "./use-bodies-view.ts";

const leastCorner = () => 230;

interface HeldProps {
  readonly view: BodiesView;
  readonly hold: BodiesHold;
  /** The state that is drawn. */
  readonly state: BodiesHeld;
}

/** Every joint of the layout in every way of holding it. */
const HeldTable = ({ view: { read, place, change }, hold, state }: HeldProps) => {
  if (!("file" in read)) return null;
  const { layout } = read.file;
  const selected = place?.place.part;
  return (
    <HoldGrid
      columns={hold.states}
      rows={hold.best.map(({ part, state: best }, row) => ({
        id: part,
        label: partWords(layout, part),
        best,
        cells: hold.states.map(({ parts }) => parts[row]),
      }))}
      drawn={state.key}
      selected={selected}
      onChoose={(part, held) => change({ held, ...(part === selected ? {} : { at: part, as: "loose" }) })}
    />
  );
};

interface HeldDrawnProps extends HeldProps {
  readonly onScale: (scale: string | null) => void;
}

/** The suspension as it is held, beside what presses each of its joints together. */
export const HeldDrawn = ({ view, hold, state, onScale }: HeldDrawnProps) => {
  const { eye, setEye, fault } = view;
  const drawSpace = useCallback(
    (room: SceneRoom) =>
      drawBodies(state.placed, {
        ...room,
        eye,
        beside: null,
        at: fault === null ? null : placeOfFault(fault),
        support: state.supportAt,
      }),
    [state, fault, eye],
  );
  return (
    <>
      <p className="bodies-sentence">{hold.sentence}</p>
      <div className="travel-corner">
        <FittedScene draw={drawSpace} leastHeight={leastCorner} onScale={onScale} />
        <EyeSliders eye={eye} onChange={setEye} />
      </div>
      <div className="hold-joints">
        <HeldTable view={view} hold={hold} state={state} />
      </div>
    </>
  );
};
