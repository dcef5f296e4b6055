import { formatNumber, LEAST_HEIGHTS } from "#casework";
import { mmFromMetres } from "#quantity";
import type { Axle } from "../car.ts";
import { EntryCell } from "./entry-cell.tsx";
import { type Entries, LENGTH_BOUNDS, PM_UNITS, ROW_BOUNDS, ROW_UNITS, type TypedRow } from "./match-entries.ts";
import type { MatchView } from "./use-match-view.ts";

const COLUMNS = [
  { key: "height", title: "hub centre to arch" },
  { key: "camber", title: "camber" },
  { key: "toe", title: "toe of this wheel, in is +" },
] as const;
const PM = [
  { key: "height", label: "± height" },
  { key: "camber", label: "± camber" },
  { key: "toe", label: "± toe" },
  { key: "length", label: "± length" },
  { key: "heightBase", label: "± shared by all heights" },
  { key: "bodyBase", label: "± shared by the body's points" },
] as const;

const rowName = (index: number): string => (index === 0 ? "as it stands" : `height ${index + 1}`);

const changedRow = (entries: Entries, index: number, change: Partial<TypedRow>): Entries => ({
  ...entries,
  rows: entries.rows.map((row, i) => (i === index ? { ...row, ...change } : row)),
});

const pinToPin = (link: Axle["links"][number]): string => {
  const metres = Math.hypot(...link.inner.at.map((x, i) => x - (link.outer.at[i] ?? 0)));
  return `points say ${formatNumber(mmFromMetres(metres), 1)}`;
};

/** Readings at several heights, lengths from the bench, and how sure they are. */
export const MatchForm = ({ view }: { readonly view: MatchView }) => {
  const { entries, setEntries, family, corner } = view;
  const axle = family[corner.startsWith("front") ? "front" : "rear"];
  return (
    <div className="match-form">
      <table className="match-table">
        <caption className="label">
          {LEAST_HEIGHTS} heights or more; the first is ride height. Load or lift the body, let it settle, read again.
        </caption>
        <thead>
          <tr>
            <th scope="col">
              <span className="unseen">height</span>
            </th>
            {COLUMNS.map(({ key, title }) => (
              <th key={key} scope="col">
                {title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {entries.rows.map((row, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place in the table
            <tr key={index}>
              <th scope="row">{rowName(index)}</th>
              {COLUMNS.map(({ key, title }) => (
                <td key={key}>
                  <EntryCell
                    label={`${title}, ${rowName(index)}`}
                    unit={ROW_UNITS[key]}
                    bounds={ROW_BOUNDS[key]}
                    value={row[key]}
                    onChange={(value) => setEntries(changedRow(entries, index, { [key]: value }))}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        <button
          type="button"
          className="link"
          onClick={() => setEntries({ ...entries, rows: [...entries.rows, { height: "", camber: "", toe: "" }] })}
        >
          One more height
        </button>
      </p>
      <div className="match-pm">
        {PM.map(({ key, label }) => (
          <span key={key} className="pick">
            <span className="label" aria-hidden="true">
              {label}
            </span>
            <EntryCell
              label={`${label}, twice the standard deviation`}
              unit={PM_UNITS[key]}
              bounds={{ low: 0 }}
              value={entries.pm[key]}
              onChange={(value) => setEntries({ ...entries, pm: { ...entries.pm, [key]: value } })}
            />
          </span>
        ))}
      </div>
      <details className="opens" open={Object.keys(entries.bench).length > 0}>
        <summary>Lengths from the bench, pin to pin</summary>
        {axle.links.map((link) => (
          <div key={link.name} className="field">
            <span className="label">{link.label}</span>
            <EntryCell
              label={`${link.label}, pin to pin`}
              unit="mm"
              bounds={LENGTH_BOUNDS}
              value={entries.bench[link.name] ?? ""}
              onChange={(value) => setEntries({ ...entries, bench: { ...entries.bench, [link.name]: value } })}
            />
            <span className="note">{pinToPin(link)} mm</span>
          </div>
        ))}
      </details>
    </div>
  );
};
