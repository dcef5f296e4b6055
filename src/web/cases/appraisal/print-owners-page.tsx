import { useState } from "react";
import type { Finding } from "#contract";
import { askServer } from "../../server/ask-server.ts";
import { readPrintedSheet, saveSheet } from "../../server/printed-sheet.ts";
import { FindingsList } from "../../shell/findings-list.tsx";
import { byQuery } from "../case/recorder.ts";
import { outbox, useOutbox } from "../unsent/workshop-outbox.ts";

type Printing =
  | { readonly kind: "idle" | "busy" | "silent" }
  | { readonly kind: "printed"; readonly address: string; readonly fileName: string }
  | { readonly kind: "refused"; readonly findings: readonly Finding[] };

const fetchPage = (visitId: string) =>
  askServer(`/api/visits/${encodeURIComponent(visitId)}/owners-page${byQuery()}`, {}, (response) =>
    readPrintedSheet(response, "owners-page.pdf"),
  );

/** Prints the owner's page from what is on record, once everything typed here has reached the store. */
export const PrintOwnersPage = ({ visitId }: { readonly visitId: string }) => {
  const [printing, setPrinting] = useState<Printing>({ kind: "idle" });
  const { entries } = useOutbox();
  const waits = entries.size > 0;
  const print = async () => {
    setPrinting({ kind: "busy" });
    await outbox.send();
    const answer = await fetchPage(visitId);
    setPrinting(
      answer.kind === "answer"
        ? { kind: "printed", address: saveSheet(answer.body), fileName: answer.body.fileName }
        : answer.kind === "refused"
          ? { kind: "refused", findings: answer.findings }
          : { kind: "silent" },
    );
  };
  return (
    <div className="print-sheet">
      <button
        type="button"
        className="press"
        aria-disabled={printing.kind === "busy"}
        onClick={() => {
          // Not disabled meanwhile: a button that is loses the focus, and Tab would begin anew.
          if (printing.kind !== "busy") void print();
        }}
      >
        Print the owner's page
      </button>
      <span role="status" className="label">
        {printing.kind === "busy" ? "being drawn" : null}
        {printing.kind === "silent" ? "no answer; see that the program is still running" : null}
        {waits && printing.kind === "idle" ? "what was typed here is still on its way to the store" : null}
        {printing.kind === "printed" ? (
          <a href={printing.address} target="_blank" rel="noreferrer">
            Open {printing.fileName}
          </a>
        ) : null}
      </span>
      {printing.kind === "refused" ? <FindingsList findings={printing.findings} /> : null}
    </div>
  );
};
