import { type Figure, formatBand, formatFigure, formatRange } from "#casework";
import { type Basis, FigureFacts } from "./figure-facts.tsx";

/** What is shown in place of a figure whose sign is not sure: the reading that would settle it, where one would. */
export const settleWords = ({ settle }: Figure): string =>
  settle === null || settle === ""
    ? "Its sign is not sure, and no reading would settle it."
    : `Its sign is not sure. ${settle}`;

/** Where a figure lies with 95 %; where no band was computed, what the range of the fault alone does. */
export const bandWords = (figure: Figure): string => {
  const band = formatBand(figure);
  return band === null ? (formatRange(figure) ?? "") : `${band} (95 %)`;
};

/** One figure on one line; it opens to what stands behind it. */
export const FigureLine = ({ figure, effect }: { readonly figure: Figure; readonly effect: Basis }) => (
  <details className="figure-line">
    <summary>
      <span>{figure.label}</span>
      {figure.signSure ? <span className="figure-value">{formatFigure(figure)}</span> : null}
      <span className="note">{figure.signSure ? bandWords(figure) : settleWords(figure)}</span>
    </summary>
    <FigureFacts figure={figure} basis={effect} />
  </details>
);
