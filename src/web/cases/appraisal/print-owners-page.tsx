import { usePrinting } from "../../printing/use-printing.ts";
import { askServer } from "../../server/ask-server.ts";
import { readPrintedSheet } from "../../server/printed-sheet.ts";
import { FindingsList } from "../../shell/findings-list.tsx";
import { byQuery } from "../case/recorder.ts";
import { outbox, useOutbox } from "../unsent/workshop-outbox.ts";

const fetchPage = (visitId: string) =>
  askServer(`/api/visits/${encodeURIComponent(visitId)}/owners-page${byQuery()}`, {}, (response) =>
    readPrintedSheet(response, "owners-page.pdf"),
  );

/** Prints the owner's page from what is on record, once everything typed here has reached the store. */
export const PrintOwnersPage = ({ visitId }: { readonly visitId: string }) => {
  const { entries } = useOutbox();
  const waits = entries.size > 0;
  const { printing, start } = usePrinting(async () => {
    await outbox.send();
    return fetchPage(visitId);
  });
  return (
    <div className="print-sheet">
      <button
        type="button"
        className="press"
        aria-disabled={printing.kind === "busy"}
        // Not disabled meanwhile: a button that is loses the focus, and Tab would begin anew.
        onClick={start}
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
