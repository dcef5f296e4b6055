import type { SheetQuestion } from "#casework";
import { formatSheetQuestion } from "#contract";
import { type Answer, askServer, jsonBody } from "./ask-server.ts";
import { type PrintedSheet, readPrintedSheet } from "./printed-sheet.ts";

/**
 * Has one A4 page of a computation drawn.
 * @param by query that names who makes it; "" for nobody
 */
export const printAskedSheet = (question: SheetQuestion, by: string): Promise<Answer<PrintedSheet>> =>
  askServer(`/api/sheets${by}`, { method: "POST", ...jsonBody(formatSheetQuestion(question)) }, (response) =>
    readPrintedSheet(response, "sheet.pdf"),
  );
