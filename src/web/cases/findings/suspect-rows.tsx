import { type CarSuspect, type CarSuspects, formatChance } from "#casework";
import { positionName } from "#drawing";
import type { Family } from "../../car.ts";

/** Suspects below this chance are told in one line together. */
const LEAST_TOLD = 0.02;
const MOST_TOLD = 6;

/** The suspects that get a row of their own, and the others. */
export const splitSuspects = ({
  suspects,
}: CarSuspects): { readonly told: readonly CarSuspect[]; readonly others: readonly CarSuspect[] } => {
  const told = suspects.filter((s) => s.cures >= LEAST_TOLD).slice(0, MOST_TOLD);
  return { told, others: suspects.slice(told.length) };
};

/** Where a suspect would sit: the place that speaks for it first, the others counted. */
const placesWords = (family: Family, { places }: CarSuspect): string => {
  const [first, ...others] = places;
  if (first === undefined) return "no place on the underside";
  const more = others.length === 0 ? "" : ` and ${others.length} more ${others.length === 1 ? "place" : "places"}`;
  return `${positionName(family, first)}${more}`;
};

const MOST_LINES = 3;

/** What speaks one way, one line each. */
const Speaks = ({ head, lines }: { readonly head: string; readonly lines: readonly string[] }) =>
  lines.length === 0 ? null : (
    <span className="suspect-speaks">
      <span className="note">{head}</span>
      {lines.slice(0, MOST_LINES).map((line) => (
        <span key={line}>{line}</span>
      ))}
      {lines.length > MOST_LINES ? <span className="note">and {lines.length - MOST_LINES} more</span> : null}
    </span>
  );

interface SuspectRowsProps {
  readonly family: Family;
  readonly suspects: CarSuspects;
  readonly selected: string | null;
  readonly onSelect: (cause: string) => void;
}

/** Causes by the chance that curing them cures the complaint, with what speaks for and against, and the remainder. */
export const SuspectRows = ({ family, suspects, selected, onSelect }: SuspectRowsProps) => {
  const { told, others } = splitSuspects(suspects);
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
                <span className="note">there at all: {formatChance(suspect.there)}</span>
              </span>
              <span className="suspect-sides">
                <Speaks head="speaks for it" lines={suspect.speaksFor} />
                <Speaks head="speaks against it" lines={suspect.speaksAgainst} />
              </span>
            </button>
          </li>
        ))}
      </ol>
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
      {suspects.leftOut.length === 0 ? null : (
        <p className="margin-notice">Too many complaints at once; left out: {suspects.leftOut.join("; ")}.</p>
      )}
    </>
  );
};
