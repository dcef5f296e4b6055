import { type CarSuspect, type CarSuspects, formatChance, formatNumber } from "#casework";
import { SourceLink } from "../../shell/source-link.tsx";

const LOOKED = {
  there: "shows it",
  "not there": "all looked at, does not show it",
  open: "not all of its places looked at",
} as const;

/** How many times the odds are what they were: "14 times", "0.3 times". */
export const timesWords = (times: number): string => {
  if (times > 1000) return "over 1000 times";
  if (times < 0.001) return "under 0.001 times";
  return `${times >= 10 ? formatNumber(times, 0) : times >= 1 ? formatNumber(times, 1) : String(Number(times.toPrecision(1)))} times`;
};

/** A chance as it stands in a table of inputs, to three digits. */
const plain = (chance: number): string => String(Number(chance.toPrecision(3)));

interface ChanceFactsProps {
  readonly suspect: CarSuspect;
  readonly suspects: CarSuspects;
}

/** What each answer has done to the chance, the strongest first. */
const Moves = ({ suspect }: Pick<ChanceFactsProps, "suspect">) => (
  <table>
    <caption className="note">What each answer did: its odds, and the chance without that answer</caption>
    <tbody>
      {suspect.moves.length === 0 ? (
        <tr>
          <th scope="row">No answer has moved it by a tenth of its odds, or there are more than eight complaints.</th>
          <td />
        </tr>
      ) : null}
      {suspect.moves.map(({ about, words, times, without }) => (
        <tr key={`${about} ${words}`}>
          <th scope="row">{words}</th>
          <td>
            {timesWords(times)}; else {formatChance(without)}
          </td>
        </tr>
      ))}
    </tbody>
  </table>
);

/** What stands behind the chance of a suspect: relation, sources, inputs, and what each answer did to it. */
export const ChanceFacts = ({ suspect, suspects }: ChanceFactsProps) => {
  const { basis } = suspect;
  return (
    <details className="figure-line chance-facts">
      <summary>
        <span>All inputs of this chance</span>
        <span className="figure-value">{formatChance(suspect.cures)}</span>
      </summary>
      <div className="figure-facts">
        <dl>
          <div>
            <dt className="note">Relation</dt>
            <dd>
              Exact inference over all sets of causes (noisy-OR): each cause that is there brings a complaint about with
              its strength, the rest of the world with its leak; a look shows it with its reliability. The chance is
              that it brings all of the complaint about and nothing else any of it. Computed as the door
              diagnosis.suspects.
            </dd>
          </div>
          <div>
            <dt className="note">Source</dt>
            <dd>
              <SourceLink source="trade-symptoms" />, <SourceLink source="trade-causes" />: labels from memory; shares,
              strengths and reliabilities invented; no case of this workshop is counted yet
            </dd>
          </div>
        </dl>
        <table>
          <caption className="note">Inputs</caption>
          <tbody>
            <tr>
              <th scope="row">Prior: that it is there on any car that drives in</th>
              <td>{plain(basis.prior)}</td>
            </tr>
            {basis.complaints.map(({ label, share, strength, leak }) => (
              <tr key={label}>
                <th scope="row">
                  {label}: share of this cause among cars that come with it; chance that it brings it about; chance that
                  none of the table does
                </th>
                <td>
                  {plain(share)}; {plain(strength)}; {plain(leak)}
                </td>
              </tr>
            ))}
            <tr>
              <th scope="row">
                {basis.certain ? "A sign that is the fault itself" : "A look at its places"} shows where it is there
              </th>
              <td>{plain(basis.sensitivity)}</td>
            </tr>
            <tr>
              <th scope="row">{basis.certain ? "Such a sign is not seen" : "A look shows nothing"} where it is not</th>
              <td>{plain(basis.specificity)}</td>
            </tr>
            <tr>
              <th scope="row">The look so far</th>
              <td>{suspect.places.length === 0 ? "has no place on the underside" : LOOKED[basis.state]}</td>
            </tr>
            <tr>
              <th scope="row">Two at once; something else</th>
              <td>
                {formatChance(suspects.twoAtOnce)}; {formatChance(suspects.somethingElse)}
              </td>
            </tr>
          </tbody>
        </table>
        <Moves suspect={suspect} />
      </div>
    </details>
  );
};
