import { formatNumber, LEAST_HEIGHTS } from "#casework";
import { mmFromMetres } from "#quantity";
import type { Axle } from "../car.ts";
import { EntryCell } from "./entry-cell.tsx";
import {
  ENTRY_NAMES,
  type Entries,
  entryTrouble,
  PM_KEYS,
  PM_NAMES,
  PM_UNITS,
  ROW_UNITS,
  rowName,
  spreadTrouble,
  type TypedRow,
  USUAL_PM,
} from "./match-entries.ts";
import type { MatchView } from "./use-match-view.ts";

const COLUMNS = ["height", "camber", "toe"] as const;

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
            {COLUMNS.map((key) => (
              <th key={key} scope="col">
                {ENTRY_NAMES[key]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {entries.rows.map((row, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place in the table
            <tr key={index}>
              <th scope="row">{rowName(index)}</th>
              {COLUMNS.map((key) => (
                <td key={key}>
                  <EntryCell
                    label={`${ENTRY_NAMES[key]}, ${rowName(index)}`}
                    unit={ROW_UNITS[key]}
                    wrong={entryTrouble(key, row[key], ROW_UNITS[key])}
                    value={row[key]}
                    onChange={(value) => setEntries(changedRow(entries, index, { [key]: value }))}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p className="match-more">
        <button
          type="button"
          className="link"
          onClick={() => setEntries({ ...entries, rows: [...entries.rows, { height: "", camber: "", toe: "" }] })}
        >
          One more height
        </button>
      </p>
      <div className="match-pm">
        {PM_KEYS.map((key) => (
          <span key={key} className="pick">
            <span className="label" aria-hidden="true">
              {PM_NAMES[key]}
            </span>
            <EntryCell
              label={`${PM_NAMES[key]}, twice the standard deviation`}
              unit={PM_UNITS[key]}
              wrong={spreadTrouble(key, entries.pm[key])}
              blank={USUAL_PM[key]}
              value={entries.pm[key]}
              onChange={(value) => setEntries({ ...entries, pm: { ...entries.pm, [key]: value } })}
            />
          </span>
        ))}
      </div>
      <p className="note">
        ± is twice the standard deviation. All heights are counted from the first and share its error. The body's points
        share an error where they were measured from one base that was itself off.
      </p>
      <details className="opens" open={Object.keys(entries.bench).length > 0}>
        <summary>Lengths from the bench, pin to pin</summary>
        {axle.links.map((link) => (
          <div key={link.name} className="field">
            <span className="label">{link.label}</span>
            <EntryCell
              label={`${link.label}, pin to pin`}
              unit="mm"
              wrong={entryTrouble("length", entries.bench[link.name] ?? "", "mm")}
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
