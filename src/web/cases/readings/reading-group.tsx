import { instrumentsFor, type LoadState, quantityForms, type ReadingGroup, readingGroupWords } from "#casework";
import { Segments } from "../fields/segments.tsx";
import { OddReadings } from "./odd-readings.tsx";
import { type Cell, cellName, cellsOf, openAsked, READINGS } from "./reading-cells.ts";
import { type ActiveField, ReadingField } from "./reading-field.tsx";
import type { Readings } from "./use-readings.ts";

interface GroupProps {
  readonly group: ReadingGroup;
  readonly readings: Readings;
  readonly onActive: (active: ActiveField) => void;
}

const CORNERS = [
  { axle: "front", side: "left", words: "Front left" },
  { axle: "front", side: "right", words: "Front right" },
  { axle: "rear", side: "left", words: "Rear left" },
  { axle: "rear", side: "right", words: "Rear right" },
] as const;

const STATES: readonly { readonly value: LoadState; readonly words: string }[] = [
  { value: "standing", words: "standing" },
  { value: "hanging", words: "hanging" },
  { value: "supported", words: "supported" },
];

const pointWords = (point: string | null): string => point ?? "";

/** Fields of one corner as a row, its points as columns. */
const PointsTable = ({ group, readings, onActive }: GroupProps) => {
  const cells = cellsOf(group);
  const points = cells[0]?.reading.points ?? [];
  return (
    <table className="readings-table" data-points={points.length}>
      <thead>
        <tr>
          <td />
          {points.map((point) => (
            <th key={pointWords(point)} scope="col">
              {pointWords(point)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {CORNERS.map(({ axle, side, words }) => (
          <tr key={words}>
            <th scope="row">{words}</th>
            {cells
              .filter(({ reading }) => reading.axle === axle && reading.side === side)
              .map((cell) => (
                <td key={cell.key}>
                  <ReadingField cell={cell} readings={readings} name={cellName(cell)} onActive={onActive} />
                </td>
              ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
};

/** Fields of one quantity as a row, the corners as columns. */
const CornersTable = ({ group, readings, onActive }: GroupProps) => {
  const quantities = [...new Set(READINGS.filter((one) => one.group === group).map(({ quantity }) => quantity))];
  return (
    <table className="readings-table" data-points="4">
      <thead>
        <tr>
          <td />
          {CORNERS.map(({ words }) => (
            <th key={words} scope="col">
              {words}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {quantities.map((quantity) => (
          <tr key={quantity}>
            <th scope="row">
              {quantityForms[quantity].label}, {quantityForms[quantity].unit}
            </th>
            {CORNERS.map(({ axle, side, words }) => {
              const cell = cellsOf(group).find(
                ({ reading }) => reading.quantity === quantity && reading.axle === axle && reading.side === side,
              );
              return (
                <td key={words}>
                  {cell === undefined ? null : (
                    <ReadingField cell={cell} readings={readings} name={cellName(cell)} onActive={onActive} />
                  )}
                </td>
              );
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
};

/** What a group is read with, and in which state of load. */
const GroupMeans = ({ group, readings }: Pick<GroupProps, "group" | "readings">) => {
  const means = readings.meansOf(group);
  const quantity = cellsOf(group)[0]?.reading.quantity;
  const id = `instrument-${group}`;
  if (quantity === undefined) return null;
  return (
    <div className="reading-means">
      {group === "alignment" ? (
        <p className="label">Camber by angle gauge, toe and caster on the stand.</p>
      ) : (
        <div className="means-instrument">
          <label htmlFor={id}>Read with</label>
          <select
            id={id}
            value={means.instrument ?? ""}
            onChange={(event) =>
              readings.setMeans(group, { ...means, instrument: event.target.value === "" ? null : event.target.value })
            }
          >
            <option value="">by eye</option>
            {instrumentsFor(quantity).map(({ key, label }) => (
              <option key={key} value={key}>
                {label}
              </option>
            ))}
          </select>
        </div>
      )}
      <Segments
        label="Car"
        options={STATES}
        value={means.loadState}
        onChange={(loadState) => {
          if (loadState !== null) readings.setMeans(group, { ...means, loadState });
        }}
      />
    </div>
  );
};

/** One group of readings; what is open in it can be called not taken by one stroke. */
export const ReadingGroupTable = (props: GroupProps) => {
  const { group, readings } = props;
  const cells = cellsOf(group);
  const leaving = cells.filter(readings.leaves);
  const counted = leaving.length > 0 ? leaving : cells;
  const isDoubted = ({ key }: Cell): boolean => readings.refused.some(({ cellKey }) => cellKey === key);
  const taken = counted.filter((cell) => readings.textOf(cell) !== "" && !isDoubted(cell)).length;
  const open = openAsked(group, readings).length;
  const words = cells.every(({ key }) => !readings.taken.has(key)) ? "Not taken" : "Rest not taken";
  const marked = cells.some(({ reading }) => readings.notTaken.has(`${reading.place}|${reading.quantity}`));
  return (
    <section className="reading-group">
      <div className="reading-head">
        <h2>{leaving.length > 0 ? readingGroupWords[group].replace(" as found", "") : readingGroupWords[group]}</h2>
        <span className="note">
          {taken} of {counted.length} taken
          {leaving.length > 0 ? <strong className="as-left-word"> as left</strong> : null}
        </span>
        {open > 0 ? (
          <button
            type="button"
            className="link"
            aria-label={`${words}: ${readingGroupWords[group]}`}
            onClick={() => readings.markNotTaken([group])}
          >
            {words}
          </button>
        ) : marked ? (
          <button
            type="button"
            className="link"
            aria-label={`Ask again: ${readingGroupWords[group]}`}
            onClick={() => readings.askAgain(group)}
          >
            Ask again
          </button>
        ) : null}
      </div>
      {cells.every(({ point }) => point === null) ? <CornersTable {...props} /> : <PointsTable {...props} />}
      <OddReadings cells={cells} readings={readings} />
      <GroupMeans group={group} readings={readings} />
    </section>
  );
};
