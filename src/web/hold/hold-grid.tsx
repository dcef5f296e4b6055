import { formatForce, type SeenBy } from "#casework";
import { seenNames } from "#drawing";

const LEGEND: readonly SeenBy[] = ["hand", "bar", "nothing", "too-close"];

/** What opens the play of a joint, as the drawing marks it. */
const SeenMark = ({ by }: { readonly by: SeenBy }) => <span className="seen-mark" data-by={by} aria-hidden="true" />;

interface GridColumn {
  readonly key: string;
  readonly title: string;
}

interface GridCell {
  readonly load: number;
  readonly by: SeenBy;
}

interface GridRow {
  readonly id: string;
  readonly label: string;
  /** Key of the column whose way of holding shows its play best; null where none does. */
  readonly best: string | null;
  /** One a column; undefined where the joint has no load there. */
  readonly cells: readonly (GridCell | undefined)[];
}

interface HoldGridProps {
  readonly columns: readonly GridColumn[];
  readonly rows: readonly GridRow[];
  /** The state that is drawn, and the joint that is looked at. */
  readonly drawn: string;
  readonly selected: string | undefined;
  readonly onChoose: (row: string, column: string) => void;
}

/** Every joint in every way of holding it: what presses it together and what opens its play; the best way is underlined. */
export const HoldGrid = ({ columns, rows, drawn, selected, onChoose }: HoldGridProps) => (
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
          <th key={key} scope="col" data-drawn={key === drawn}>
            {title.toLowerCase()}
          </th>
        ))}
      </tr>
    </thead>
    <tbody>
      {rows.map(({ id, label, best, cells }) => (
        <tr key={id} data-selected={id === selected}>
          <th scope="row">{label}</th>
          {columns.map(({ key, title }, i) => {
            const cell = cells[i];
            if (cell === undefined) return <td key={key} />;
            const words = `${formatForce(cell.load)}, ${seenNames[cell.by]}`;
            return (
              <td key={key} data-drawn={key === drawn}>
                <button
                  type="button"
                  className="hold-cell"
                  data-best={best === key}
                  aria-pressed={key === drawn && id === selected}
                  aria-label={`${label}, ${title.toLowerCase()}: ${words}${best === key ? "; best way" : ""}`}
                  onClick={() => onChoose(id, key)}
                >
                  <SeenMark by={cell.by} />
                  <span>{formatForce(cell.load)}</span>
                </button>
              </td>
            );
          })}
        </tr>
      ))}
    </tbody>
  </table>
);
