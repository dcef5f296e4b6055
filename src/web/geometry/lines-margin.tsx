import { formatTravelCsv } from "#casework";
import { byQuery } from "../cases/case/recorder.ts";
import { conditionPathWords } from "../effect/condition-path-words.ts";
import { CsvLink } from "../printing/csv-link.tsx";
import { PrintButton } from "../printing/print-button.tsx";
import { printAskedSheet } from "../server/print-asked-sheet.ts";
import { MarginSection } from "../shell/margin-section.tsx";
import { RowTable, RubberTable } from "../travel/change-table.tsx";
import { FigureTables } from "../travel/figure-tables.tsx";
import type { DrawnLines } from "./effect-drawing.tsx";

/** What the states drawn besides do, in words and figures, each against the sound corner or from its own ride height. */
export const LinesMargin = ({ lines: { sheet, asked } }: { readonly lines: DrawnLines }) => {
  const { rows, rubber, sentences } = sheet;
  const said = [...sentences.slice(rows.length, rows.length + rubber.length), ...sentences.slice(1, rows.length)];
  return (
    <>
      <MarginSection title="Beside each other">
        {[...said, ...rubber.flatMap(({ means }) => means ?? [])].join(" ")}
      </MarginSection>
      {rubber.map((row) => (
        <RubberTable key={row.words} row={row} />
      ))}
      {rows.map((row) => (
        <RowTable key={row.words} row={row} name="Sound" />
      ))}
      <FigureTables sheet={sheet} />
      <p className="margin-links">
        <PrintButton
          print={() => printAskedSheet({ kind: "travel", question: asked }, byQuery())}
          nameOf={conditionPathWords}
        >
          Print all lines
        </PrintButton>
        <CsvLink text={formatTravelCsv(sheet, asked)} name={`${asked.family.id}-${asked.corner}-travel`} />
      </p>
    </>
  );
};
