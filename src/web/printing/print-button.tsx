import type { Answer } from "../server/ask-server.ts";
import type { PrintedSheet } from "../server/printed-sheet.ts";
import { FindingsList } from "../shell/findings-list.tsx";
import { usePrinting } from "./use-printing.ts";

interface PrintButtonProps {
  /** Asks for the sheet as it stands now. */
  readonly print: () => Promise<Answer<PrintedSheet>>;
  /** Names a place of a finding as the page does. */
  readonly nameOf?: (path: string) => string | null;
  /** Absent: "Print the sheet". */
  readonly children?: string;
}

/** Prints a sheet: a PDF of one A4 page, handed to the browser as a file. */
export const PrintButton = ({ print, nameOf, children = "Print the sheet" }: PrintButtonProps) => {
  const { printing, start } = usePrinting(print);
  return (
    <span className="print-sheet">
      <button
        type="button"
        className="link"
        aria-disabled={printing.kind === "busy"}
        // Not disabled meanwhile: a button that is loses the focus, and Tab would begin anew.
        onClick={start}
      >
        {children}
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
