import type { FaultQuestion } from "#casework";
import { formatFaultQuestion } from "#contract";
import { type Answer, askServer, jsonBody } from "./ask-server.ts";
import { type PrintedSheet, readPrintedSheet } from "./printed-sheet.ts";

/**
 * Has one A4 page drawn of what a fault does to a family.
 * @param by query that names who makes it; "" for nobody
 */
export const printSheet = (familyId: string, question: FaultQuestion, by: string): Promise<Answer<PrintedSheet>> =>
  askServer(
    `/api/sheet${by}`,
    { method: "POST", ...jsonBody(formatFaultQuestion({ family: familyId, question })) },
    (response) => readPrintedSheet(response, "sheet.pdf"),
  );
