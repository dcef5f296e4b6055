import { useEffect, useState } from "react";
import { quantityForms } from "#casework";
import { useTypeScale } from "../../look/use-type-scale.ts";
import { CaseSheet } from "../case/case-sheet.tsx";
import { isSettledOpen, Settled } from "../case/settled-question.tsx";
import { StageDone } from "../case/stage-done.tsx";
import { NumberPad } from "./number-pad.tsx";
import { ALL_CELLS, cellText, GROUPS, openAsked, rangeWords, readAs, twinCell } from "./reading-cells.ts";
import type { ActiveField } from "./reading-field.tsx";
import { ReadingGroupTable } from "./reading-group.tsx";
import { StampedMinimum } from "./stamped-minimum.tsx";
import { isRefusedReading, type Readings, useReadings } from "./use-readings.ts";

/** Puts the focus into the field after one; the last one is left. */
const goToNext = (key: string) => {
  const next = ALL_CELLS[ALL_CELLS.findIndex((cell) => cell.key === key) + 1];
  const element =
    next === undefined ? null : document.querySelector<HTMLInputElement>(`[data-cell="${CSS.escape(next.key)}"]`);
  if (element !== null) element.focus();
  else if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
};

/** What is known about the field that is open: range, last visit, other side. */
const FieldMargin = ({ active, readings }: { readonly active: ActiveField; readonly readings: Readings }) => {
  const { cell, text, type } = active;
  const touch = useTypeScale() === "touch";
  const { unit, plausible } = quantityForms[cell.reading.quantity];
  // The margin slides up over the lower half of an upright tablet, and has its height only a frame or two later: the
  // field it is about is brought back into view whenever what is left for the drawing changes.
  useEffect(() => {
    const show = () =>
      document.querySelector(`[data-cell="${CSS.escape(cell.key)}"]`)?.scrollIntoView({ block: "nearest" });
    show();
    const room = new ResizeObserver(show);
    const drawing = document.querySelector("#drawing");
    if (drawing !== null) room.observe(drawing);
    return () => room.disconnect();
  }, [cell.key]);
  const last = readings.past.taken.get(cell.key);
  const twin = twinCell(cell);
  const other = twin === null ? undefined : readings.taken.get(twin);
  const found = readings.foundOf(cell);
  const takeFoundBack = readings.takeFoundBack(cell);
  const as = readAs(text, cell.reading);
  const facts = [
    ...(as === null ? [] : [{ label: "read as", value: as }]),
    ...(found === null ? [] : [{ label: "as found", value: found }]),
    { label: "last visit", value: last === undefined ? "none" : cellText(last) },
    { label: "other side", value: other === undefined ? "not taken" : cellText(other) },
    { label: "range", value: rangeWords(cell.reading) },
  ];
  return (
    <div className="field-margin">
      <div>
        <h2 className="heading">
          {cell.reading.label}
          {cell.point === null ? "" : `, ${cell.point}`}
          {readings.leaves(cell) ? ", as left" : ""}
        </h2>
        <dl className="field-facts">
          {facts.map(({ label, value }) => (
            <div key={label}>
              <dt className="label">{label}</dt>
              <dd className="lead">{value}</dd>
            </div>
          ))}
        </dl>
        {takeFoundBack === null ? null : (
          <p className="margin-links">
            <button type="button" className="link" onClick={takeFoundBack}>
              As found was wrong: take it back
            </button>
          </p>
        )}
        <p className="note">
          Outside the range you are asked once more; it is what cars show, from memory, and no limit.
        </p>
      </div>
      {touch ? (
        <div className="field-pad">
          <p className="pad-figure">
            <span className="figure-huge">{text === "" ? "\u00a0" : text}</span> <span className="unit">{unit}</span>
          </p>
          <NumberPad
            text={text}
            unit={unit}
            onType={type}
            signed={plausible[0] < 0}
            onNext={() => goToNext(cell.key)}
          />
        </div>
      ) : null}
    </div>
  );
};

const isLeaving = (readings: Readings): boolean => ALL_CELLS.some(readings.leaves);

/** The way on from the readings; before it the word on settled wheels, where heights were read and it was not said. */
const WayOn = ({ readings }: { readonly readings: Readings }) =>
  isSettledOpen(readings.held) ? (
    <>
      <p className="margin-notice">
        Heights were read: say whether the car had been rolled and bounced before. Heights of a car that had not settled
        are not judged.
      </p>
      <Settled />
    </>
  ) : (
    <StageDone stage="readings" />
  );

interface SummaryProps {
  readonly readings: Readings;
  readonly open: number;
}

const Summary = ({ readings, open }: SummaryProps) => (
  <>
    <h2 className="heading">{readings.taken.size === 0 ? "Heights first" : `${readings.taken.size} readings taken`}</h2>
    <WayOn readings={readings} />
    <p className="margin-lead">
      {isLeaving(readings)
        ? "Fields that say found under them take how the car leaves. The same figure measured again is typed again."
        : open === 0
          ? "Everything that is asked for was taken, or somebody said it was not."
          : "Before the car has been lifted. What was not taken stays blank on paper and says so."}
    </p>
    <p className="note">A reading is kept as soon as its field is left.</p>
  </>
);

/** Readings: heights first, then what is read with the wheels on and off; everything may be called not taken. */
export const ReadingsPage = () => {
  const readings = useReadings();
  const [active, setActive] = useState<ActiveField | null>(null);
  const touch = useTypeScale() === "touch";
  const open = GROUPS.reduce((sum, group) => sum + openAsked(group, readings).length, 0);
  return (
    <CaseSheet
      stage="readings"
      subject={active?.cell.key ?? null}
      marginLow={132}
      shownOnPage={isRefusedReading}
      margin={
        active === null ? (
          <Summary readings={readings} open={open} />
        ) : (
          <>
            <FieldMargin active={active} readings={readings} />
            <p className="margin-links">
              <button type="button" className="link" onClick={() => setActive(null)}>
                All readings
              </button>
            </p>
            {touch ? null : <WayOn readings={readings} />}
          </>
        )
      }
    >
      <div className="case-page readings">
        {isLeaving(readings) ? (
          <p className="readings-when">
            <strong>As left.</strong> Work is agreed or begun: what is typed now tells how the car leaves. What was
            found stays on record under its field.
          </p>
        ) : (
          <p className="readings-when">
            <strong>As found.</strong> What is typed now tells how the car came.
          </p>
        )}
        {GROUPS.map((group) => (
          <div key={group}>
            <ReadingGroupTable group={group} readings={readings} onActive={setActive} />
            {group === "heights" ? <Settled /> : null}
            {group === "discs" ? <StampedMinimum /> : null}
          </div>
        ))}
        {open === 0 ? null : (
          <button type="button" className="stroke" onClick={() => readings.markNotTaken(GROUPS)}>
            <svg viewBox="0 0 60 60" width="44" height="44" aria-hidden="true" className="stroke-arrow">
              <circle cx="30" cy="30" r="30" />
              <path d="M18 30H42M32 20L42 30L32 40" />
            </svg>
            <span>
              <strong>Rest of the readings not taken</strong>
              <span className="label">one record for each of the {open}; each group can be asked again</span>
            </span>
          </button>
        )}
      </div>
    </CaseSheet>
  );
};
