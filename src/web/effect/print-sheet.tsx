import type { FaultQuestion } from "#casework";
import { byQuery } from "../cases/case/recorder.ts";
import { PrintButton } from "../printing/print-button.tsx";
import { printSheet } from "../server/print-sheet.ts";
import { conditionPathWords } from "./condition-path-words.ts";

interface PrintSheetProps {
  readonly familyId: string;
  readonly question: FaultQuestion;
}

/** Prints the sheet of one fault. */
export const PrintSheet = ({ familyId, question }: PrintSheetProps) => (
  <PrintButton print={() => printSheet(familyId, question, byQuery())} nameOf={conditionPathWords} />
);
