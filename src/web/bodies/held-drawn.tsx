import { useCallback } from "react";
import { type BodiesHeld, type BodiesHold, formatForce, partWords, placeOfFault } from "#casework";
import { drawBodies, seenNames } from "#drawing";
import { EyeSliders } from "../geometry/eye-sliders.tsx";
import { FittedScene, type SceneRoom } from "../scene/fitted-scene.tsx";
import type { BodiesView } from "./use-bodies-view.ts";

const leastCorner = () => 230;
const LEGEND = ["hand", "bar", "nothing", "too-close"] as const;

interface HeldProps {
  readonly view: BodiesView;
  readonly hold: BodiesHold;
  /** The state that is drawn. */
  readonly state: BodiesHeld;
}

/** Every joint in every way of holding it: what presses it together and what opens its play; the best way is underlined. */
const HeldTable = ({ view: { read, place, change }, hold, state }: HeldProps) => {
  if (!("file" in read)) return null;
  const { layout } = read.file;
  return (
    <table className="hold-table">
      <caption className="label">
        What presses each joint together, and what opens its play; best way underlined.
        <span className="hold-legend">
          {LEGEND.map((by) => (
            <span key={by}>
              <span className="seen-mark" data-by={by} aria-hidden="true" /> {seenNames[by]}
            </span>
          ))}
        </span>
      </caption>
      <thead>
        <tr>
          <th scope="col">joint</th>
          {hold.states.map(({ key, title }) => (
            <th key={key} scope="col" data-drawn={key === state.key}>
              {title.toLowerCase()}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {hold.best.map(({ part, state: best }, row) => {
          const label = partWords(layout, part);
          return (
            <tr key={part} data-selected={part === place?.place.part}>
              <th scope="row">{label}</th>
              {hold.states.map(({ key, title, parts }) => {
                const joint = parts[row];
                if (joint === undefined) return <td key={key} />;
                const words = `${formatForce(joint.load)}, ${seenNames[joint.by]}`;
                return (
                  <td key={key} data-drawn={key === state.key}>
                    <button
                      type="button"
                      className="hold-cell"
                      data-best={best === key}
                      aria-pressed={key === state.key && part === place?.place.part}
                      aria-label={`${label}, ${title.toLowerCase()}: ${words}${best === key ? "; best way" : ""}`}
                      onClick={() =>
                        change({ held: key, ...(part === place?.place.part ? {} : { at: part, as: "loose" }) })
                      }
                    >
                      <span className="seen-mark" data-by={joint.by} aria-hidden="true" />
                      <span>{formatForce(joint.load)}</span>
                    </button>
                  </td>
                );
              })}
            </tr>
          );
        })}
      </tbody>
    </table>
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
