import type { HeldState, Hold } from "#casework";
import { HoldGrid } from "./hold-grid.tsx";
import type { HoldView } from "./use-hold-view.ts";

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

/** Every joint of a corner in every state worth it. */
export const HoldTable = ({ view, hold, state }: HoldTableProps) => {
  const columns = columnsOf(hold, state);
  const selected = view.selected?.id;
  return (
    <HoldGrid
      columns={columns}
      rows={view.joints.map(({ id, label }) => ({
        id,
        label,
        best: hold.best.find(({ position }) => position === id)?.state ?? null,
        cells: columns.map(({ joints }) => joints.find(({ position }) => position === id)),
      }))}
      drawn={state.key}
      selected={selected}
      onChoose={(id, held) => view.change({ at: id, held, as: id === selected ? view.search.as : undefined })}
    />
  );
};
