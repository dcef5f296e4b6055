import {
  decimalsOf,
  type FaultEffect,
  type Figure,
  formatBandSizes,
  formatFigure,
  formatNumber,
  unitSign,
} from "#casework";
import { FigureFacts } from "../effect/figure-facts.tsx";
import { settleWords } from "../effect/figure-line.tsx";

const inOrOut = (value: number): string => (value >= 0 ? "in" : "out");

/** A toe figure without its sign, which the word behind it says. */
const magnitude = (figure: Figure): string =>
  `${formatNumber(Math.abs(figure.value), decimalsOf(figure))}${unitSign(figure.unit)}`;

/** The wheel as it stands in one state, on one line. */
const StateLine = ({ figure, state }: { readonly figure: Figure | undefined; readonly state: string }) =>
  figure === undefined || !figure.signSure ? null : (
    <p className="state-line">
      <span>{magnitude(figure)}</span> {inOrOut(figure.value)}, {state}
    </p>
  );

/** The figure the sheet is about and the two it is the difference of, or the reading that would make it one. */
export const Headline = ({ effect }: { readonly effect: FaultEffect }) => {
  const figure = effect.headline;
  const find = (key: string) => effect.figures.find((entry) => entry.key === key);
  return (
    <>
      {figure.signSure ? (
        <>
          <p className="margin-figure">
            <span className="figure-huge" data-figure={formatFigure(figure)}>
              {magnitude(figure)}
            </span>
            <span className="unit">further {inOrOut(figure.value)}</span>
          </p>
          <p className="label">{formatBandSizes(figure)} (95 %)</p>
        </>
      ) : (
        <p className="margin-notice">{settleWords(figure)}</p>
      )}
      {effect.beyondTyre === null ? null : <p className="margin-notice">{effect.beyondTyre}</p>}
      <StateLine figure={find("toe-faulty")} state={effect.question.fault.kind} />
      <StateLine figure={find("toe-sound")} state="sound" />
      <details className="opens">
        <summary>All inputs</summary>
        <FigureFacts figure={figure} basis={effect} />
      </details>
    </>
  );
};
