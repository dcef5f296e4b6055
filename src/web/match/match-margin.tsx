import { Link } from "@tanstack/react-router";
import {
  type CornerMatch,
  decimalsOf,
  type Figure,
  formatNumber,
  type MatchAsked,
  type MatchedFigure,
  unitSign,
} from "#casework";
import { mmFromMetres } from "#quantity";
import { byQuery } from "../cases/case/recorder.ts";
import { FigureLine } from "../effect/figure-line.tsx";
import { rungWords } from "../effect/rung-words.ts";
import { PrintButton } from "../printing/print-button.tsx";
import { printAskedSheet } from "../server/print-asked-sheet.ts";
import { MarginSection } from "../shell/margin-section.tsx";
import { SourceLink } from "../shell/source-link.tsx";
import { TakeOver } from "./take-over.tsx";
import type { MatchView } from "./use-match-view.ts";

const mm = (metres: number): string => `±${formatNumber(2 * mmFromMetres(metres), 1)} mm`;

const plusMinus = (figure: Figure): string =>
  `±${formatNumber(2 * figure.u, decimalsOf(figure))}${unitSign(figure.unit)}`;

const standing = ({ before, after }: MatchedFigure): string => {
  if (!after.signSure) return before.signSure ? "no longer printable" : "still not printable";
  return before.signSure ? `was ${plusMinus(before)}, now ${plusMinus(after)}` : "has become printable";
};

/** One figure as matched, how it stands against before, and which coordinates it is owed to. */
const Matched = ({ figure, basis }: { readonly figure: MatchedFigure; readonly basis: CornerMatch }) => (
  <div className="matched-figure">
    <FigureLine figure={figure.after} effect={basis} />
    <p className="note">
      {standing(figure)}. Matters most:{" "}
      {figure.owedTo
        .map(
          ({ words, share, sdBefore, sdAfter }) =>
            `${words} (${formatNumber(100 * share, 0)} %, ${mm(sdBefore)} to ${mm(sdAfter)})`,
        )
        .join("; ")}
    </p>
  </div>
);

const PrintMatch = ({ asked }: { readonly asked: MatchAsked }) => (
  <PrintButton print={() => printAskedSheet({ kind: "match", question: asked }, byQuery())} />
);

interface MatchMarginProps {
  readonly view: MatchView;
  readonly match: CornerMatch;
  /** Ids and names that are taken; null where nothing is taken over from this car line. */
  readonly taken: { readonly ids: readonly string[]; readonly names: readonly string[] } | null;
}

/** What the readings settle, what they leave open, which contradict, and the way to a matched car line. */
export const MatchMargin = ({ view, match, taken }: MatchMarginProps) => (
  <>
    <h2 className="heading">Matched to its readings</h2>
    <p className="margin-lead">{match.sentence}</p>
    {match.contradicting === null ? null : <p className="margin-notice">{match.contradicting}</p>}
    <MarginSection title="What stays open">{match.undetermined}</MarginSection>
    <h3 className="margin-title">Figures as matched; each opens</h3>
    {match.figures.map((figure) => (
      <Matched key={figure.after.key} figure={figure} basis={match} />
    ))}
    <details className="opens">
      <summary>Every reading beside what the matched points say</summary>
      <table className="reading-table">
        <thead>
          <tr>
            <th scope="col">reading</th>
            <th scope="col">read</th>
            <th scope="col">matched</th>
            <th scope="col">off, in sd</th>
          </tr>
        </thead>
        <tbody>
          {match.readings.map(({ words, observed, fitted, contradiction }) => (
            <tr key={words}>
              <th scope="row">{words}</th>
              <td>{observed}</td>
              <td>{fitted}</td>
              <td>{formatNumber(contradiction, 1)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
    {taken === null ? (
      <MarginSection title="Take over">
        This is an invented example: nothing of your workshop is made of it. Begin a car line of your own first.
      </MarginSection>
    ) : (
      <MarginSection title="Take over">
        A copy gets the matched points on both sides of this axle, with the deviation left of each and how they hang
        together, so that its bands are those of this sheet; it says that it is matched.
        {match.invented ? " What is invented in it keeps saying so." : ""}
        <TakeOver family={view.family} match={match} {...taken} />
      </MarginSection>
    )}
    <MarginSection title="How sure">
      {match.howSure} On file: {rungWords(match.rung, match.invented)}.
    </MarginSection>
    <MarginSection title="Computed so">
      {match.computedSo} Source: <SourceLink source="regularised-least-squares" />
    </MarginSection>
    <p className="margin-links">
      {view.asked === null ? null : <PrintMatch asked={view.asked} />}
      <Link to="/families/$familyId/travel" params={{ familyId: view.family.id }} search={{ corner: view.corner }}>
        Over travel
      </Link>
      <Link to="/families/$familyId" params={{ familyId: view.family.id }}>
        Family sheet
      </Link>
    </p>
  </>
);
