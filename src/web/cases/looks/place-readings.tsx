import { useState } from "react";
import { instrumentsFor, quantitiesFor, quantityForms, type StandardReading, usualInstrument } from "#casework";
import { fullName } from "#drawing";
import type { Position } from "../../car.ts";
import { OddReadings } from "../readings/odd-readings.tsx";
import { ALL_CELLS, type Cell, cellText, keyOf, rangeWords, twinCell } from "../readings/reading-cells.ts";
import { ReadingField } from "../readings/reading-field.tsx";
import type { Readings } from "../readings/use-readings.ts";
import { useLoadState } from "./load-state.ts";

type Quantity = StandardReading["quantity"];

/** Fields of one quantity at a place: those of the readings' page where it has them, else one. */
const cellsAt = (position: Position, quantity: Quantity): readonly Cell[] => {
  const standard = ALL_CELLS.filter(({ reading }) => reading.place === position.id && reading.quantity === quantity);
  if (standard.length > 0) return standard;
  const reading: StandardReading = {
    place: position.id,
    axle: position.axle,
    side: position.side ?? "left",
    quantity,
    points: [null],
    group: "heights",
    label: `${fullName(position)}, ${quantityForms[quantity].label.toLowerCase()}`,
  };
  return [{ key: keyOf(position.id, quantity, null), reading, point: null }];
};

interface PlaceReadingsProps {
  readonly position: Position;
  readonly readings: Readings;
}

interface QuantityFieldsProps extends PlaceReadingsProps {
  readonly quantity: Quantity;
}

const shownOf = (readings: Readings["taken"], key: string | null): string | null => {
  const reading = key === null ? undefined : readings.get(key);
  return reading === undefined ? null : cellText(reading);
};

const QuantityFields = ({ position, readings, quantity }: QuantityFieldsProps) => {
  const cells = cellsAt(position, quantity);
  const [instrument, setInstrument] = useState(usualInstrument(quantity));
  const [loadState] = useLoadState();
  const [first] = cells;
  if (first === undefined) return null;
  const { label, unit } = quantityForms[quantity];
  const last = shownOf(readings.past.taken, first.key);
  const other = shownOf(readings.taken, twinCell(first));
  const id = `with-${quantity}`;
  return (
    <div className="place-quantity">
      <div className="place-quantity-head">
        <span>
          {label}
          {unit === "" ? "" : `, ${unit}`}
        </span>
        <span className="place-fields" data-points={cells.length}>
          {cells.map((cell) => (
            <span key={cell.key} className="place-field">
              {cell.point === null ? null : <span className="note">{cell.point}</span>}
              <ReadingField
                cell={cell}
                readings={readings}
                name={cell.reading.label + (cell.point === null ? "" : `, ${cell.point}`)}
                means={{ instrument, loadState }}
              />
            </span>
          ))}
        </span>
      </div>
      <p className="note">
        {rangeWords(first.reading)}
        {last === null ? "" : `; last visit ${last}`}
        {other === null ? "" : `; other side ${other}`}
      </p>
      <div className="means-instrument">
        <label htmlFor={id}>Read with</label>
        <select
          id={id}
          value={instrument ?? ""}
          onChange={(event) => setInstrument(event.target.value === "" ? null : event.target.value)}
        >
          <option value="">by eye or hand</option>
          {instrumentsFor(quantity).map(({ key, label: words }) => (
            <option key={key} value={key}>
              {words}
            </option>
          ))}
        </select>
      </div>
      <OddReadings cells={cells} readings={readings} />
    </div>
  );
};

/** What can be read at a place, each quantity with its unit, range, last value and other side. */
export const PlaceReadings = ({ position, readings }: PlaceReadingsProps) => {
  const quantities = quantitiesFor(position);
  if (quantities.length === 0) return null;
  return (
    <section className="place-readings" aria-label="Readings">
      <h3 className="margin-title">What you read here</h3>
      {quantities.map((quantity) => (
        <QuantityFields
          key={`${position.id} ${quantity}`}
          position={position}
          readings={readings}
          quantity={quantity}
        />
      ))}
    </section>
  );
};
