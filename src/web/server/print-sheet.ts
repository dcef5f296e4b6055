import type { FaultQuestion } from "#casework";
import { formatFaultQuestion } from "#contract";
import { type Answer, askServer, jsonBody } from "./ask-server.ts";

/** A printed sheet: the PDF and the name it is kept under. */
export interface PrintedSheet {
  readonly pdf: Blob;
  readonly fileName: string;
}

const FILE_NAME = /filename="([^"]+)"/;

/** Has one A4 page drawn of what a fault does to a family. */
export const printSheet = (familyId: string, question: FaultQuestion): Promise<Answer<PrintedSheet>> =>
  askServer(
    "/api/sheet",
    { method: "POST", ...jsonBody(formatFaultQuestion({ family: familyId, question })) },
    async (response) => ({
      pdf: await response.blob(),
      fileName: FILE_NAME.exec(response.headers.get("content-disposition") ?? "")?.[1] ?? "sheet.pdf",
    }),
  );
