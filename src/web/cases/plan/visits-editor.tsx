import { Link } from "@tanstack/react-router";
import { useState } from "react";
import { checkPlanVisits, type PlanDocument, type PlanOddity, paceWords, parseDay, visitDateWords } from "#casework";
import { formatDistance, kmPer } from "../car/distance-words.ts";
import { type DistanceUnit, odometerText, parseOdometer } from "../car/odometer.ts";
import { useCase } from "../case/case-context.tsx";
import { KeptField } from "../fields/kept-field.tsx";
import {
  addVisit,
  dateVisit,
  lookAheadTo,
  moveVisit,
  removeVisit,
  renameVisit,
  withVisitsOf,
} from "./visit-changes.ts";
import { editsOf, forgetLastEdit, rememberEdit } from "./visit-edits.ts";

/** A step of the buttons that move a visit, in the unit of the car. */
const STEP = 1000;

interface VisitsEditorProps {
  readonly plan: PlanDocument;
  readonly onChange: (change: (plan: PlanDocument) => PlanDocument) => void;
  readonly onClose: () => void;
}

interface Refused {
  /** Index of the visit; null: the horizon. */
  readonly at: number | null;
  readonly words: string;
}

const refusedWords = (odd: readonly PlanOddity[]): string =>
  odd.map(({ where, got, needed }) => `${where}: typed was ${got}; needed is ${needed}.`).join(" ");

/** What changes the visits: tried first, kept where it can be planned with, and remembered so that it can be taken back. */
const useVisitEdits = ({ plan, onChange }: VisitsEditorProps) => {
  const { visitId, visit, car } = useCase();
  const unit = car.distanceUnit;
  const [refused, setRefused] = useState<Refused | null>(null);
  const [edits, setEdits] = useState(editsOf(visitId));
  const words = (km: number): string => formatDistance(km, unit);
  const change = (at: number | null, done: string, to: (plan: PlanDocument) => PlanDocument): void => {
    const known = checkPlanVisits(plan, visit.odometerKm, words).map(({ where }) => where);
    const odd = checkPlanVisits(to(plan), visit.odometerKm, words).filter(
      // What was odd before and lies elsewhere keeps nobody from putting one visit after the other right.
      ({ where, visit: there }) => there === at || !known.includes(where),
    );
    if (odd.length > 0) {
      setRefused({ at, words: refusedWords(odd) });
      return;
    }
    setRefused(null);
    rememberEdit(visitId, { done, before: plan });
    setEdits(editsOf(visitId));
    onChange(to);
  };
  const undo = (): void => {
    const last = edits.at(-1);
    if (last === undefined) return;
    forgetLastEdit(visitId);
    setEdits(editsOf(visitId));
    setRefused(null);
    onChange((now) => withVisitsOf(now, last.before));
  };
  const refuse = (at: number | null, said: string): void => setRefused({ at, words: said });
  return { unit, words, change, refuse, undo, last: edits.at(-1) ?? null, refused };
};

type Edits = ReturnType<typeof useVisitEdits>;

interface OdometerEntryProps {
  readonly edits: Edits;
  readonly at: number | null;
  readonly label: string;
  readonly km: number;
  readonly note: string;
  readonly onKeep: (km: number) => void;
}

/** A distance on the odometer that is kept where it can be planned with; else it says what was needed. */
const OdometerEntry = ({ edits, at, label, km, note, onKeep }: OdometerEntryProps) => {
  const { unit, refused } = edits;
  const wrong = refused !== null && refused.at === at;
  return (
    <KeptField
      label={label}
      unit={unit}
      numeric
      value={odometerText(km, unit)}
      wrong={wrong}
      note={wrong ? refused.words : note}
      onKeep={(text) => {
        const typed = parseOdometer(text, unit);
        if (typed === undefined || typed === null)
          edits.refuse(at, `${label}: typed was “${text}”; needed is a whole number of ${unit}.`);
        else onKeep(typed);
      }}
    />
  );
};

interface VisitEntryProps {
  readonly plan: PlanDocument;
  readonly at: number;
  readonly edits: Edits;
}

const stepWords = (km: number, unit: DistanceUnit): string => formatDistance(km * kmPer(unit), unit);

/** The day a visit was agreed for; without one it is estimated from the pace of the car. */
const DateEntry = ({ plan, at, edits }: VisitEntryProps) => {
  const { visit: now, car } = useCase();
  const [wrong, setWrong] = useState<string | null>(null);
  const visit = plan.visits[at];
  if (visit === undefined) return null;
  const pace = { visit: now, year: car.year };
  return (
    <KeptField
      label="Day, where one is agreed"
      className="field-wide"
      value={visit.date ?? ""}
      wrong={wrong !== null}
      note={wrong ?? (visit.date === undefined ? `${visitDateWords(visit, pace)}. ${paceWords(pace)}` : "as agreed")}
      onKeep={(text) => {
        const day = parseDay(text);
        const isEarly = day !== null && day !== "" && day < now.date.slice(0, 10);
        setWrong(
          day === null || isEarly
            ? `Typed was “${text}”; needed is a day like 2027-05-12${isEarly ? `, not before this visit on ${now.date.slice(0, 10)}` : ""}.`
            : null,
        );
        if (day !== null && !isEarly) edits.change(at, `${visit.label} dated`, (to) => dateVisit(to, at, day));
      }}
    />
  );
};

const VisitEntry = ({ plan, at, edits }: VisitEntryProps) => {
  const visit = plan.visits[at];
  if (visit === undefined) return null;
  const { label, odometerKm } = visit;
  const move = (km: number) => edits.change(at, `${label} moved`, (to) => moveVisit(to, at, km));
  const step = STEP * kmPer(edits.unit);
  return (
    <fieldset className="visit-entry">
      <legend className="margin-title">
        Visit {at + 1}: {label}
      </legend>
      <KeptField
        label="Name"
        className="field-wide"
        value={label}
        onKeep={(text) => {
          const name = text.trim();
          if (name !== "") edits.change(at, `${label} renamed`, (to) => renameVisit(to, at, name));
        }}
      />
      {at === 0 ? (
        <p className="visit-now">
          <span>Odometer</span>
          <span>{edits.words(odometerKm)}</span>
          <span className="note">what the car shows at this visit; it is typed on Car</span>
        </p>
      ) : (
        <>
          <OdometerEntry
            edits={edits}
            at={at}
            label="Odometer"
            km={odometerKm}
            note={`${edits.words(odometerKm - (plan.visits[0]?.odometerKm ?? 0))} from now`}
            onKeep={move}
          />
          <DateEntry plan={plan} at={at} edits={edits} />
          <div className="visit-steps">
            <button type="button" className="link" onClick={() => move(odometerKm - step)}>
              {stepWords(STEP, edits.unit)} earlier<span className="unseen">: {label}</span>
            </button>
            <button type="button" className="link" onClick={() => move(odometerKm + step)}>
              {stepWords(STEP, edits.unit)} later<span className="unseen">: {label}</span>
            </button>
            <button
              type="button"
              className="link"
              onClick={() => edits.change(null, `${label} taken out`, (to) => removeVisit(to, at))}
            >
              Take out<span className="unseen">: {label}</span>
            </button>
          </div>
        </>
      )}
    </fieldset>
  );
};

/** The visits a plan is made over, and how far it looks ahead; every change is planned with at once. */
export const VisitsEditor = (props: VisitsEditorProps) => {
  const { plan, onClose } = props;
  const { visitId } = useCase();
  const edits = useVisitEdits(props);
  const { visits } = plan;
  return (
    <>
      <h2 className="heading">Visits of this plan</h2>
      <p className="margin-lead">Every change is planned with at once; what the owner said stays.</p>
      <p className="visit-undo" role="status">
        {edits.last === null ? null : (
          <>
            <span className="label">{edits.last.done}.</span>{" "}
            <button type="button" className="link" onClick={edits.undo}>
              Undo<span className="unseen">: {edits.last.done}</span>
            </button>
          </>
        )}
      </p>
      {visits
        .map((_, at) => at)
        .map((at) => (
          <VisitEntry key={at} plan={plan} at={at} edits={edits} />
        ))}
      <p className="margin-links">
        <button
          type="button"
          className="link"
          onClick={() => edits.change(null, `Visit ${visits.length + 1} added`, addVisit)}
        >
          Add a visit
        </button>
      </p>
      <OdometerEntry
        edits={edits}
        at={null}
        label="Looks ahead to"
        km={plan.horizonKm}
        note={`${edits.words(plan.horizonKm - (visits[0]?.odometerKm ?? 0))} from now; what may fail is counted up to there`}
        onKeep={(km) => edits.change(null, "How far it looks ahead changed", (to) => lookAheadTo(to, km))}
      />
      <p className="margin-links">
        <button type="button" className="press" onClick={onClose}>
          Back to the plan
        </button>
        <Link to="/cases/$visit/car" params={{ visit: visitId }}>
          The car's odometer
        </Link>
      </p>
    </>
  );
};
