import {
  type CornerMatch,
  type Figure,
  formatBand,
  formatFigure,
  formatNumber,
  type MatchAsked,
  type MatchedFigure,
} from "#casework";
import { drawTravelPlots } from "#drawing";
import { mmFromMetres } from "#quantity";
import { type ComputedSheet, carLineSubject, type SheetTable } from "./computed-sheet.ts";
import { SHEET_CAUTIONS } from "./figure-table.ts";
import type { SheetStamp } from "./sheet-stamp.ts";

/** The printed sheet of a corner matched to its readings. */
export function matchSheet({ family, corner }: MatchAsked, match: CornerMatch, stamp: SheetStamp): ComputedSheet {
  const words = corner.replace("-", " ");
  return {
    subject: carLineSubject(family),
    title: `${words.charAt(0).toUpperCase()}${words.slice(1)} matched to its readings`,
    sentences: [match.sentence, ...(match.contradicting === null ? [] : [match.contradicting])],
    asked: [],
    drawings: [
      {
        share: 1,
        draw: (room) =>
          drawTravelPlots({ plots: match.plots, rows: [], poses: [], sentences: [match.sentence] }, { ...room, at: 0 }),
      },
    ],
    tables: [beforeAndAfter(match.figures), readAndMatched(match)],
    words: [
      { heading: "What stays open", text: match.undetermined },
      { heading: "What matters most", text: owedWords(match.figures) },
      { heading: "How sure", text: match.howSure },
      {
        heading: "Computed so",
        text: `${match.computedSo} Method: docs/method/rungs.md; regularised-least-squares, from memory.`,
      },
    ],
    cautions: SHEET_CAUTIONS,
    blockName: "Match to readings",
    cells: [
      { label: "Rung on file", value: match.rung, share: 0.4 },
      { label: "Units", value: "mm, °", share: 0.6 },
    ],
    ...stamp,
  };
}

const said = (figure: Figure): string =>
  figure.signSure ? `${formatFigure(figure)}${bandWords(figure)}` : "sign not sure";

function bandWords(figure: Figure): string {
  const band = formatBand(figure);
  return band === null ? "" : ` (${band})`;
}

const beforeAndAfter = (figures: readonly MatchedFigure[]): SheetTable => ({
  caption: "Figures, with their 95 %",
  columns: [
    { title: "figure", share: 0.4, anchor: "start" },
    { title: "as on file", share: 0.3, anchor: "start" },
    { title: "as matched", share: 0.3, anchor: "start" },
  ],
  rows: figures.map(({ before, after }) => [after.label, said(before), said(after)]),
});

const readAndMatched = ({ readings }: CornerMatch): SheetTable => ({
  caption: "Readings beside what the matched points say",
  columns: [
    { title: "reading", share: 0.4, anchor: "start" },
    { title: "read", share: 0.2, anchor: "end" },
    { title: "matched", share: 0.2, anchor: "end" },
    { title: "off, in standard deviations", share: 0.2, anchor: "end" },
  ],
  rows: readings.map(({ words, observed, fitted, contradiction }) => [
    words,
    observed,
    fitted,
    formatNumber(contradiction, 1),
  ]),
});

/** The coordinate each figure is owed to most, and how well that is known now; one said once. */
function owedWords(figures: readonly MatchedFigure[]): string {
  const most = figures.flatMap(({ owedTo }) => owedTo.slice(0, 1));
  const mm = (metres: number): string => `±${formatNumber(2 * mmFromMetres(metres), 1)} mm`;
  const each = most.filter(({ words }, i) => most.findIndex((one) => one.words === words) === i);
  return `${each
    .map(({ words, sdBefore, sdAfter }, i) => {
      const begun = i === 0 ? `${words.charAt(0).toUpperCase()}${words.slice(1)}` : words;
      return `${begun} (${mm(sdBefore)} on file, ${mm(sdAfter)} now)`;
    })
    .join("; ")}.`;
}
