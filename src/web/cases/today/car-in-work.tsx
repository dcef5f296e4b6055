import { Link } from "@tanstack/react-router";
import { useMemo } from "react";
import { computeStageMarks, countingLooks, stageWords } from "#casework";
import { SmallCar } from "../../scene/small-car.tsx";
import { StageSign } from "../case/job-line.tsx";
import { stageNow } from "../case/progress.ts";
import { statesOfLooks } from "../case/states-of-looks.ts";
import type { CarLine, SeenCar } from "./load-today.ts";
import { dueWords, sinceWords, WAIT_WORDS } from "./wait-words.ts";

interface CarInWorkProps {
  readonly line: CarLine;
  readonly visit: NonNullable<CarLine["latest"]>;
  /** Absent: its records are still being read. */
  readonly seen: SeenCar | undefined;
  readonly today: string;
  readonly selected: boolean;
  readonly onSelect: () => void;
}

/** A bay by its number or name: "bay 2", "yard"; "" where nobody said. */
export const bayWords = (bay: string | null): string =>
  bay !== null && /^\d+$/.test(bay) ? `bay ${bay}` : (bay ?? "");

const looksOf = (seen: SeenCar | undefined) => countingLooks(seen?.looks ?? []);

const isAsked = (kind: string): boolean => kind === "reading" || kind === "not-taken";

/** The steps of one car's job as a row of marks. */
const SmallJobLine = ({ visit, line, seen }: Pick<CarInWorkProps, "visit" | "line" | "seen">) => {
  const now = stageNow(visit.body.done);
  const kinds = looksOf(seen).map(({ content: { kind } }) => kind);
  const readings = kinds.filter(isAsked).length;
  const marks = computeStageMarks({
    visit: visit.body,
    hasWords: seen?.hasWords ?? false,
    hasFamily: line.car.family !== null,
    readings,
    looks: kinds.length - readings,
    places: 0,
    findings: kinds.filter((kind) => kind === "signs" || kind === "reading").length,
    agreed: seen?.agreed ?? 0,
    stepsDone: seen?.stepsDone ?? 0,
    steps: seen?.stepsDone ?? 0,
    gatesOpen: 0,
  });
  return (
    <span className="work-line" aria-hidden="true">
      {marks.map((mark) => (
        <StageSign key={mark.stage} mark={mark.mark} now={mark.stage === now} />
      ))}
    </span>
  );
};

const CarDrawing = ({ line, seen }: Pick<CarInWorkProps, "line" | "seen">) => {
  const family = seen?.family ?? null;
  const states = useMemo(
    () =>
      seen === undefined || family === null
        ? {}
        : statesOfLooks(family, seen.looks, seen.past, line.latest?.body ?? {}, seen.complaints),
    [family, seen, line],
  );
  if (family !== null) return <SmallCar family={family} states={states} bare />;
  return (
    <span className="work-unknown note">
      {line.car.family === null ? "car line not chosen yet" : seen === undefined ? "" : "its car line cannot be read"}
    </span>
  );
};

/** One car in work: from below with its marks, where it stands, what it waits for and since when. */
export const CarInWork = ({ line, visit, seen, today, selected, onSelect }: CarInWorkProps) => {
  const now = stageNow(visit.body.done);
  const { waits, bay } = visit.body;
  const wait = waits[0];
  const due = wait === undefined ? "" : dueWords(wait.due, today);
  const name = line.car.registration || line.car.name;
  return (
    <li className="work" data-selected={selected}>
      <div className="work-head">
        <Link to="/cases/$visit" params={{ visit: visit.id }} className="work-name">
          {name}
        </Link>
        <span className="label">{line.car.registration === "" ? "" : line.car.name}</span>
        <span className="note">{bayWords(bay)}</span>
      </div>
      <button type="button" className="work-car" aria-pressed={selected} onClick={onSelect}>
        <span className="unseen">Say more about {name}: </span>
        <CarDrawing line={line} seen={seen} />
        <span className="work-stage">{stageWords[now]}</span>
        <SmallJobLine visit={visit} line={line} seen={seen} />
      </button>
      <p className="work-wait">
        <strong>{wait === undefined ? "Nothing holds it" : `${WAIT_WORDS[wait.what]}: ${wait.label}`}</strong>
        <span className="label">
          {wait === undefined
            ? `${stageWords[now]} goes on`
            : [sinceWords(wait.since, today), due].filter((part) => part !== "").join(", ")}
        </span>
        {waits.length > 1 ? <span className="note">and {waits.length - 1} more</span> : null}
      </p>
    </li>
  );
};
