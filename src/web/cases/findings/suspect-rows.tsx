import { type CarSuspect, type CarSuspects, formatChance } from "#casework";
import { positionName } from "#drawing";
import type { Family } from "../../car.ts";
import { recorderWords } from "../case/recorder.ts";
import { timesWords } from "./chance-facts.tsx";

/** From this chance on that one cure would do a suspect is told by it; below, by the chance that it is there at all. */
const LEAST_TOLD = 0.02;
/** So many have a row of their own, beside those somebody accepted; the others are told in one line together. */
const MOST_TOLD = 6;

/** By the chance that curing it alone would do; where that says nothing, as with two at once, by the chance that it is there. */
const byChance = (a: CarSuspect, b: CarSuspect): number => {
  const [tellsA, tellsB] = [a.cures >= LEAST_TOLD, b.cures >= LEAST_TOLD];
  return tellsA || tellsB ? b.cures - a.cures : b.there - a.there;
};

/** The suspects that get a row of their own, the others together, and what was ruled out. */
export const splitSuspects = (
  { suspects }: Pick<CarSuspects, "suspects">,
  isAll = false,
): {
  readonly told: readonly CarSuspect[];
  readonly others: readonly CarSuspect[];
  readonly ruledOut: readonly CarSuspect[];
} => {
  const ruledOut = suspects.filter((s) => s.word?.word === "ruled-out");
  const open = suspects.filter((s) => s.word?.word !== "ruled-out");
  const accepted = open.filter((s) => s.word !== null);
  const unsaid = open.filter((s) => s.word === null).toSorted(byChance);
  const told = [...accepted, ...(isAll ? unsaid : unsaid.slice(0, MOST_TOLD))];
  return { told, others: open.filter((s) => !told.includes(s)), ruledOut };
};

/** Where a suspect would sit: the place that speaks for it first, the others counted. */
const placesWords = (family: Family, { places, elsewhere }: CarSuspect): string => {
  const [first, ...others] = places;
  if (first === undefined) return elsewhere;
  const more = others.length === 0 ? "" : ` and ${others.length} more ${others.length === 1 ? "place" : "places"}`;
  return `${positionName(family, first)}${more}`;
};

const MOST_LINES = 3;

interface SpeakingLine {
  readonly words: string;
  /** How many times it makes the odds; null where it does not count yet. */
  readonly times: number | null;
}

/** What speaks one way, one line each, with what it does to the odds. */
const Speaks = ({ head, lines }: { readonly head: string; readonly lines: readonly SpeakingLine[] }) =>
  lines.length === 0 ? null : (
    <span className="suspect-speaks">
      <span className="note">{head}</span>
      {lines.slice(0, MOST_LINES).map(({ words, times }) => (
        <span key={words} className="suspect-line">
          <span>{words}</span>
          <span className="label">{times === null ? "" : timesWords(times)}</span>
        </span>
      ))}
      {lines.length > MOST_LINES ? <span className="note">and {lines.length - MOST_LINES} more</span> : null}
    </span>
  );

/** What was seen at its own places but does not count yet, since others of them nobody has looked at. */
const notCounting = ({ basis, speaksAgainst }: CarSuspect): readonly SpeakingLine[] =>
  basis.state === "open"
    ? speaksAgainst.map((words) => ({ words: `${words}; counts when all places are looked at`, times: null }))
    : [];

const RuledOut = ({
  suspects,
  selected,
  onSelect,
}: Pick<SuspectRowsProps, "selected" | "onSelect"> & {
  readonly suspects: readonly CarSuspect[];
}) =>
  suspects.length === 0 ? null : (
    <section className="ruled-out" aria-label="Ruled out">
      <h3 className="margin-title">Ruled out</h3>
      {suspects.map((suspect) => {
        const own = suspect.moves.find(({ about, said }) => said && about === suspect.cause);
        return (
          <button
            key={suspect.cause}
            type="button"
            className="ruled-out-row"
            aria-pressed={suspect.cause === selected}
            onClick={() => onSelect(suspect.cause)}
          >
            <span className="ruled-out-name">{suspect.label}</span>
            <span className="note">
              by {recorderWords(suspect.word?.by ?? "")}
              {own === undefined ? "" : `; without that word ${formatChance(own.without)}`}
            </span>
          </button>
        );
      })}
    </section>
  );

interface SuspectRowsProps {
  readonly family: Family;
  readonly suspects: CarSuspects;
  readonly selected: string | null;
  readonly onSelect: (cause: string) => void;
  /** Every cause has a row of its own, however small its chance. */
  readonly isAll: boolean;
  readonly onAll: (isAll: boolean) => void;
}

/** Causes by the chance that curing them cures the complaint, with what speaks for and against, and the remainder. */
export const SuspectRows = ({ family, suspects, selected, onSelect, isAll, onAll }: SuspectRowsProps) => {
  const { told, others, ruledOut } = splitSuspects(suspects, isAll);
  const rest = others.reduce((sum, s) => sum + s.cures, 0);
  return (
    <>
      <ol className="suspect-rows">
        {told.map((suspect) => (
          <li key={suspect.cause}>
            <button
              type="button"
              className="suspect-row"
              aria-pressed={suspect.cause === selected}
              onClick={() => onSelect(suspect.cause)}
            >
              <span className="suspect-chance">
                <span className="figure-large">{formatChance(suspect.cures).replace(" %", "")}</span>
                <span className="label"> %</span>
              </span>
              <span className="suspect-what">
                <span className="found-name">{suspect.label}</span>
                <span className="label">{placesWords(family, suspect)}</span>
                <span className="suspect-bar" aria-hidden="true">
                  <span style={{ width: `${100 * suspect.cures}%` }} />
                </span>
                {suspect.word === null ? (
                  <span className="note">there at all: {formatChance(suspect.there)}</span>
                ) : (
                  <span className="suspect-accepted">Accepted as the cause by {recorderWords(suspect.word.by)}</span>
                )}
              </span>
              <span className="suspect-sides">
                <Speaks head="speaks for it: makes the odds" lines={suspect.moves.filter(({ times }) => times > 1)} />
                <Speaks
                  head="speaks against it"
                  lines={[...suspect.moves.filter(({ times }) => times < 1), ...notCounting(suspect)]}
                />
              </span>
            </button>
          </li>
        ))}
      </ol>
      {others.length === 0 && !isAll ? null : (
        <p className="suspect-all">
          <button type="button" className="link" onClick={() => onAll(!isAll)}>
            {isAll ? "Only the likeliest" : `Show all: ${others.length} more causes`}
          </button>
        </p>
      )}
      <dl className="suspect-rest">
        {others.length === 0 ? null : (
          <div>
            <dt>one of {others.length} other causes</dt>
            <dd>{formatChance(rest)}</dd>
          </div>
        )}
        <div>
          <dt>two at once: no single cure would do</dt>
          <dd>{formatChance(suspects.twoAtOnce)}</dd>
        </div>
        <div>
          <dt>something else than the table knows</dt>
          <dd>{formatChance(suspects.somethingElse)}</dd>
        </div>
      </dl>
      <RuledOut suspects={ruledOut} selected={selected} onSelect={onSelect} />
      {suspects.leftOut.length === 0 ? null : (
        <p className="margin-notice">Too many complaints at once; left out: {suspects.leftOut.join("; ")}.</p>
      )}
    </>
  );
};
