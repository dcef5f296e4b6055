import { type Figure, formatFigure, formatPlusMinus, formatRange } from "#casework";
import { positionName } from "#drawing";
import type { FaultSheetFacts } from "./fault-sheet-facts.ts";

/** One line of the table of figures, in words. */
export interface FigureRow {
  readonly label: string;
  readonly value: string;
  readonly plusMinus: string;
  readonly range: string;
  /** In place of a value whose sign is not sure: the reading that would settle it. */
  readonly settle: string | null;
}

/** A heading and its words. */
export interface Paragraph {
  readonly heading: string;
  readonly text: string;
}

const rungWords = { layout: "layout only", scaled: "scaled", measured: "measured", matched: "matched" } as const;

/** How well the geometry behind a figure is known, in one word or two. */
export const rungWord = (figure: Figure): string => rungWords[figure.rung];

/** What is the matter, in the words of the trade: "torn", "loose by 1.0 mm", "firmer, 2 times". */
export function faultInWords({ effect }: FaultSheetFacts): string {
  const { fault } = effect.question;
  switch (fault.kind) {
    case "torn":
      return "torn";
    case "loose":
      return `loose by ${(fault.play * 1000).toFixed(1)} mm`;
    case "firmer":
      return `firmer, ${fault.factor} times`;
  }
}

/** Title of the sheet: "Rear left, trailing link, front bush: torn". */
export function sheetTitle(facts: FaultSheetFacts): string {
  const name = positionName(facts.family, facts.effect.question.position);
  return `${name}: ${faultInWords(facts)}`;
}

/** The reading that would settle a figure's sign; words for where none is known. */
export const settleWords = (figure: Figure): string =>
  figure.settle === null || figure.settle === ""
    ? "its sign is not sure, and no reading would settle it"
    : figure.settle;

/** What a fault can mean, as sizes, smaller first: "0.18 to 0.51°". */
export function sizeRange(figure: Figure): string | null {
  if (figure.range === null) return null;
  const [a, b] = figure.range.map(Math.abs) as [number, number];
  return formatRange({ ...figure, range: [Math.min(a, b), Math.max(a, b)] });
}

/** A figure as a row; one whose sign is not sure gives the reading that would settle it in place of its value. */
function figureRow(figure: Figure): FigureRow {
  const { label } = figure;
  if (!figure.signSure) return { label, value: "not printed", plusMinus: "", range: "", settle: settleWords(figure) };
  return {
    label,
    value: formatFigure(figure),
    plusMinus: figure.u > 0 ? formatPlusMinus(figure) : "",
    range: formatRange(figure) ?? "",
    settle: null,
  };
}

/** All rows; a reading that would settle several figures is written once. */
export function figureRows(figures: readonly Figure[]): readonly FigureRow[] {
  const rows = figures.map(figureRow);
  return rows.map((row, i) => {
    const said = row.settle !== null && rows.slice(0, i).some(({ settle }) => settle === row.settle);
    return said ? { ...row, value: "not printed, as above", settle: null } : row;
  });
}

/** The four pieces of words that explain the figures. */
export function paragraphsOf({ effect }: FaultSheetFacts): readonly [Paragraph, Paragraph, Paragraph, Paragraph] {
  const sources = [...new Set(effect.figures.map(({ source }) => source))].join("; ");
  return [
    { heading: "Judged against", text: effect.judgedAgainst },
    { heading: "How sure", text: effect.howSure },
    { heading: "What else moves", text: effect.whatElse },
    { heading: "Computed so", text: `${effect.computedSo} Method and proof: ${sources}.` },
  ];
}
