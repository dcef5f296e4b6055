import type { FaultQuestion } from "#casework";
import type { Family } from "../car.ts";
import { byQuery } from "../cases/case/recorder.ts";
import { PrintButton } from "../printing/print-button.tsx";
import { printAskedSheet } from "../server/print-asked-sheet.ts";
import { conditionPathWords } from "./condition-path-words.ts";

interface PrintSheetProps {
  readonly family: Family;
  readonly question: FaultQuestion;
}

/** Prints the sheet of one fault. */
export const PrintSheet = ({ family, question }: PrintSheetProps) => (
  <PrintButton
    print={() => printAskedSheet({ kind: "fault", family, question }, byQuery())}
    nameOf={conditionPathWords}
  />
);
