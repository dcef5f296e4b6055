import { useState } from "react";
import type { Answer } from "../server/ask-server.ts";
import { type PrintedSheet, saveSheet } from "../server/printed-sheet.ts";
import { FindingsList } from "../shell/findings-list.tsx";

interface PrintButtonProps {
  /** Asks for the sheet as it stands now. */
  readonly print: () => Promise<Answer<PrintedSheet>>;
  /** Names a place of a finding as the page does. */
  readonly nameOf?: (path: string) => string | null;
}

type Printing =
  | { readonly kind: "idle" | "busy" | "silent" }
  | { readonly kind: "printed"; readonly address: string; readonly fileName: string }
  | { readonly kind: "refused"; readonly findings: Parameters<typeof FindingsList>[0]["findings"] };

/** Prints a sheet: a PDF of one A4 page, handed to the browser as a file. */
export const PrintButton = ({ print, nameOf }: PrintButtonProps) => {
  const [printing, setPrinting] = useState<Printing>({ kind: "idle" });
  const run = async () => {
    setPrinting({ kind: "busy" });
    const answer = await print();
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
          if (printing.kind !== "busy") void run();
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
      {printing.kind === "refused" ? (
        <FindingsList findings={printing.findings} {...(nameOf === undefined ? {} : { nameOf })} />
      ) : null}
    </span>
  );
};
