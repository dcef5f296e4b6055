import { useState } from "react";
import type { FaultQuestion } from "#casework";
import { byQuery } from "../cases/case/recorder.ts";
import { printSheet } from "../server/print-sheet.ts";
import { saveSheet } from "../server/printed-sheet.ts";
import { FindingsList } from "../shell/findings-list.tsx";
import { conditionPathWords } from "./condition-path-words.ts";

interface PrintSheetProps {
  readonly familyId: string;
  readonly question: FaultQuestion;
}

type Printing =
  | { readonly kind: "idle" | "busy" | "silent" }
  | { readonly kind: "printed"; readonly address: string; readonly fileName: string }
  | { readonly kind: "refused"; readonly findings: Parameters<typeof FindingsList>[0]["findings"] };

/** Prints the sheet of one fault: a PDF of one A4 page. */
export const PrintSheet = ({ familyId, question }: PrintSheetProps) => {
  const [printing, setPrinting] = useState<Printing>({ kind: "idle" });
  const print = async () => {
    setPrinting({ kind: "busy" });
    const answer = await printSheet(familyId, question, byQuery());
    setPrinting(
      answer.kind === "answer"
        ? { kind: "printed", address: saveSheet(answer.body), fileName: answer.body.fileName }
        : answer.kind === "refused"
          ? { kind: "refused", findings: answer.findings }
          : { kind: "silent" },
    );
  };
  return (
    <span className="print-sheet">
      <button
        type="button"
        className="link"
        aria-disabled={printing.kind === "busy"}
        onClick={() => {
          // Not disabled meanwhile: a button that is loses the focus, and Tab would begin anew.
          if (printing.kind !== "busy") void print();
        }}
      >
        Print the sheet
      </button>
      <span role="status">
        {printing.kind === "busy" ? "being drawn" : null}
        {printing.kind === "silent" ? "no answer; see that the program is still running" : null}
        {printing.kind === "printed" ? (
          <a href={printing.address} target="_blank" rel="noreferrer">
            Open {printing.fileName}
          </a>
        ) : null}
      </span>
      {printing.kind === "refused" ? <FindingsList findings={printing.findings} nameOf={conditionPathWords} /> : null}
    </span>
  );
};
