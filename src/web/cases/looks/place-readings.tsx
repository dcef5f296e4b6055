import { useEffect, useRef, useState } from "react";
import {
  type CountedReading,
  computeReadingUncertainty,
  instrumentsFor,
  limitsAt,
  quantitiesFor,
  quantityForms,
  type StandardReading,
  usualInstrument,
} from "#casework";
import { fullName } from "#drawing";
import type { Family, Grade, Position } from "../../car.ts";
import { useTypeScale } from "../../look/use-type-scale.ts";
import { NumberPad } from "../readings/number-pad.tsx";
import { OddReadings } from "../readings/odd-readings.tsx";
import { ALL_CELLS, type Cell, cellText, keyOf, parseCell, rangeWords, twinCell } from "../readings/reading-cells.ts";
import { type ActiveField, ReadingField } from "../readings/reading-field.tsx";
import type { Readings } from "../readings/use-readings.ts";
import { LimitBar } from "./limit-bar.tsx";
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
  readonly family: Family;
  readonly readings: Readings;
  /** What is found here so far. */
  readonly grade: Grade | null;
}

interface QuantityFieldsProps extends PlaceReadingsProps {
  readonly quantity: Quantity;
  readonly active: ActiveField | null;
  readonly onActive: (active: ActiveField | null) => void;
}

/** The reading that stands on the bar: what is being typed, else the least on record of its points. */
const onBar = (
  cells: readonly Cell[],
  taken: Readings["taken"],
  active: ActiveField | null,
  instrument: string | null,
): { readonly value: number; readonly u: number } | null => {
  const typed =
    active !== null && cells.some(({ key }) => key === active.cell.key)
      ? parseCell(active.text, active.cell.reading)
      : null;
  if (typed !== null && typed !== undefined && active !== null) {
    const { quantity } = active.cell.reading;
    return { value: typed, u: computeReadingUncertainty(quantity, instrument, typed) };
  }
  const recorded = cells.flatMap(({ key }): readonly CountedReading[] => {
    const reading = taken.get(key);
    return reading === undefined ? [] : [reading];
  });
  return recorded.length === 0 ? null : recorded.reduce((least, r) => (r.value < least.value ? r : least));
};

/** Puts the focus into the next field of this place; after the last one it is left, which keeps it. */
const goToNextHere = (key: string): void => {
  const fields = [...document.querySelectorAll<HTMLInputElement>(".place-readings [data-cell]")];
  const next = fields[fields.findIndex((field) => field.dataset.cell === key) + 1];
  if (next !== undefined) next.focus();
  else if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
};

/** Digits under the thumb for the field that is open, with what is typed in large. */
const FieldPad = ({ active, onDone }: { readonly active: ActiveField; readonly onDone: () => void }) => {
  const { cell, text, type } = active;
  const { unit, plausible } = quantityForms[cell.reading.quantity];
  const pad = useRef<HTMLDivElement>(null);
  // The field may lie at the lower end of the margin: the pad comes up under the thumb, the field just above it.
  useEffect(() => {
    if (cell.key !== "") pad.current?.scrollIntoView({ block: "end" });
  }, [cell.key]);
  return (
    <div className="place-pad" ref={pad}>
      <p className="pad-figure">
        <span className="figure-huge">{text === "" ? "\u00a0" : text}</span> <span className="unit">{unit}</span>
      </p>
      <NumberPad
        text={text}
        unit={unit}
        onType={type}
        signed={plausible[0] < 0}
        onNext={() => {
          onDone();
          goToNextHere(cell.key);
        }}
      />
    </div>
  );
};

const shownOf = (readings: Readings["taken"], key: string | null): string | null => {
  const reading = key === null ? undefined : readings.get(key);
  return reading === undefined ? null : cellText(reading);
};

const QuantityFields = (props: QuantityFieldsProps) => {
  const { position, family, readings, grade, quantity, active, onActive } = props;
  const cells = cellsAt(position, quantity);
  const [instrument, setInstrument] = useState(usualInstrument(quantity));
  const [loadState] = useLoadState();
  const touch = useTypeScale() === "touch";
  const [first] = cells;
  if (first === undefined) return null;
  const { label, unit } = quantityForms[quantity];
  const last = shownOf(readings.past.taken, first.key);
  const other = shownOf(readings.taken, twinCell(first));
  const twin = twinCell(first);
  const isActive = active !== null && cells.some(({ key }) => key === active.cell.key);
  const limits = limitsAt(family, position, quantity, loadState, readings.held.visit);
  const apart = limits.find(({ holds }) => !holds);
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
                onActive={onActive}
              />
            </span>
          ))}
        </span>
      </div>
      <p className="note">
        {rangeWords(first.reading)}
        {last === null ? "" : `; last visit ${last}`}
        {other === null ? "" : `; other side ${other}`}
        {limits.length === 0 ? "; no limit on file" : ""}
        {apart === undefined ? "" : `; the limit (${apart.whose}) is for another state of load`}
      </p>
      <LimitBar
        quantity={quantity}
        limits={limits}
        reading={onBar(cells, readings.taken, active, instrument)}
        twin={(twin === null ? undefined : readings.taken.get(twin))?.value ?? null}
        grade={grade}
      />
      {touch && isActive ? <FieldPad active={active} onDone={() => onActive(null)} /> : null}
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

/** What can be read at a place, each quantity with its unit, range, last value, other side, and the limit it is held against. */
export const PlaceReadings = (props: PlaceReadingsProps) => {
  const { position } = props;
  const [active, setActive] = useState<ActiveField | null>(null);
  const quantities = quantitiesFor(position);
  if (quantities.length === 0) return null;
  return (
    <section className="place-readings" aria-label="Readings">
      <h3 className="margin-title">What you read here</h3>
      {quantities.map((quantity) => (
        <QuantityFields
          key={`${position.id} ${quantity}`}
          {...props}
          quantity={quantity}
          active={active}
          onActive={setActive}
        />
      ))}
    </section>
  );
};
