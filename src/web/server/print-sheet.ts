import type { FaultQuestion } from "#casework";
import { formatFaultQuestion } from "#contract";
import { type Answer, askServer, jsonBody } from "./ask-server.ts";
import { type PrintedSheet, readPrintedSheet } from "./printed-sheet.ts";

/** Has one A4 page drawn of what a fault does to a family. */
export const printSheet = (familyId: string, question: FaultQuestion): Promise<Answer<PrintedSheet>> =>
  askServer(
    "/api/sheet",
    { method: "POST", ...jsonBody(formatFaultQuestion({ family: familyId, question })) },
    (response) => readPrintedSheet(response, "sheet.pdf"),
  );
