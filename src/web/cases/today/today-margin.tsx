import { Link } from "@tanstack/react-router";
import { useMemo } from "react";
import { judgeLooks, type PlaceFinding, stageWords, type VisitDocument } from "#casework";
import { fullName, gradeWords, NOT_LOOKED_AT } from "#drawing";
import { positionsOf } from "../../car.ts";
import { GradeMark } from "../../scene/grade-mark.tsx";
import { MarginSection } from "../../shell/margin-section.tsx";
import { stageNow } from "../case/progress.ts";
import { worstGrade } from "../case/states-of-looks.ts";
import { bayWords } from "./car-in-work.tsx";
import type { CarLine, SeenCar } from "./load-today.ts";
import { WaitEntry } from "./wait-entry.tsx";
import { dueWords, sinceWords, WAIT_WORDS } from "./wait-words.ts";

/** What the margin says while no car is in work. */
export const NoCarMargin = () => (
  <>
    <h2 className="heading">Begin with what the owner says</h2>
    <p className="margin-lead">
      One line is enough: the case begins with it, and nothing else need be known yet. The car may be one nobody has
      measured.
    </p>
    <p className="margin-links">
      <Link to="/families">Look at the invented ones</Link>
    </p>
  </>
);

interface TodayMarginProps {
  readonly line: CarLine;
  readonly visit: NonNullable<CarLine["latest"]>;
  readonly seen: SeenCar | undefined;
  readonly today: string;
}

/** The findings of highest grade, by name. */
const worstOf = (seen: SeenCar | undefined, visit: VisitDocument): readonly PlaceFinding[] => {
  const family = seen?.family ?? null;
  return seen === undefined || family === null ? [] : judgeLooks(family, seen.looks, seen.past, visit, seen.complaints);
};

const MOST_NAMED = 3;

/** Explains one car in work: what was found worst, where it stands, what it waits for. */
export const TodayMargin = ({ line, visit, seen, today }: TodayMarginProps) => {
  const findings = useMemo(() => worstOf(seen, visit.body), [seen, visit]);
  const grade = worstGrade(findings);
  const names = useMemo(
    () => new Map((seen?.family ? positionsOf(seen.family) : []).map((position) => [position.id, fullName(position)])),
    [seen],
  );
  const now = stageNow(visit.body.done);
  const bad = findings.filter((finding) => finding.grade === grade && (grade ?? 0) > 0);
  const { waits, bay } = visit.body;
  return (
    <>
      <div className="margin-top">
        <span className="margin-grade">
          <GradeMark grade={grade} /> {grade === null ? NOT_LOOKED_AT : gradeWords[grade]}
        </span>
        <span className="label">{bayWords(bay)}</span>
      </div>
      <h2 className="heading">
        {line.car.registration || line.car.name}
        {waits[0] === undefined ? "" : ` waits for ${WAIT_WORDS[waits[0].what].toLowerCase()}`}
      </h2>
      <MarginSection title="Stands at">
        {stageWords[now]}
        {visit.body.done.length === 0
          ? "; nothing is called done yet."
          : `; done: ${visit.body.done.map((stage) => stageWords[stage]).join(", ")}.`}
      </MarginSection>
      {bad.length === 0 ? null : (
        <MarginSection title="Found worst">
          {bad.slice(0, MOST_NAMED).map(({ place, found }) => (
            <span key={place} className="today-found">
              {names.get(place) ?? place}: {found}
            </span>
          ))}
          {bad.length > MOST_NAMED ? <span className="note">and {bad.length - MOST_NAMED} more</span> : null}
        </MarginSection>
      )}
      {waits.map((wait) => (
        <MarginSection
          key={`${wait.what} ${wait.label} ${wait.since}`}
          title={`Waits for: ${WAIT_WORDS[wait.what].toLowerCase()}`}
        >
          {[wait.label, sinceWords(wait.since, today), dueWords(wait.due, today)]
            .filter((part) => part !== "")
            .join(", ")}
        </MarginSection>
      ))}
      {line.today === null ? null : <MarginSection title="Meanwhile">{line.today.meanwhile.words}</MarginSection>}
      {line.today?.due_again == null ? null : (
        <MarginSection title="Due again">{line.today.due_again.words}</MarginSection>
      )}
      <p className="margin-links">
        <Link to={`/cases/$visit/${now}`} params={{ visit: visit.id }}>
          {stageWords[now]}
        </Link>
      </p>
      <WaitEntry key={visit.id} visit={visit.id} waits={waits} />
    </>
  );
};
