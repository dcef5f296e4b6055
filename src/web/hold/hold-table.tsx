import { formatForce, type HeldState, type Hold, type SeenBy } from "#casework";
import { seenNames } from "#drawing";
import type { HoldView } from "./use-hold-view.ts";

/** What opens the play of a joint, as the drawing marks it. */
const SeenMark = ({ by }: { readonly by: SeenBy }) => <span className="seen-mark" data-by={by} aria-hidden="true" />;

const LEGEND: readonly SeenBy[] = ["hand", "bar", "nothing", "too-close"];

interface HoldTableProps {
  readonly view: HoldView;
  readonly hold: Hold;
  /** The state that is drawn. */
  readonly state: HeldState;
}

/** States worth a column: standing, hanging, those that are the best of some joint, and the one drawn. */
const columnsOf = (hold: Hold, state: HeldState): readonly HeldState[] =>
  hold.states.filter(
    (one) => one.held.kind !== "under" || one.key === state.key || hold.best.some((way) => way.state === one.key),
  );

/** Every joint in every state worth it: what presses it together and what opens its play; the best way is marked. */
export const HoldTable = ({ view, hold, state }: HoldTableProps) => {
  const columns = columnsOf(hold, state);
  return (
    <table className="hold-table">
      <caption className="label">
        What presses each joint together, and what opens its play; best way underlined.
        <span className="hold-legend">
          {LEGEND.map((by) => (
            <span key={by}>
              <SeenMark by={by} /> {seenNames[by]}
            </span>
          ))}
        </span>
      </caption>
      <thead>
        <tr>
          <th scope="col">joint</th>
          {columns.map(({ key, title }) => (
            <th key={key} scope="col" data-drawn={key === state.key}>
              {title.toLowerCase()}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {view.joints.map(({ id, label }) => {
          const best = hold.best.find(({ position }) => position === id);
          return (
            <tr key={id} data-selected={id === view.selected?.id}>
              <th scope="row">{label}</th>
              {columns.map(({ key, title, joints }) => {
                const joint = joints.find(({ position }) => position === id);
                if (joint === undefined) return <td key={key} />;
                const words = `${formatForce(joint.load)}, ${seenNames[joint.by]}`;
                return (
                  <td key={key} data-drawn={key === state.key}>
                    <button
                      type="button"
                      className="hold-cell"
                      data-best={best?.state === key}
                      aria-pressed={key === state.key && id === view.selected?.id}
                      aria-label={`${label}, ${title.toLowerCase()}: ${words}${best?.state === key ? "; best way" : ""}`}
                      onClick={() =>
                        view.change({ at: id, held: key, as: id === view.selected?.id ? view.search.as : undefined })
                      }
                    >
                      <SeenMark by={joint.by} />
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
