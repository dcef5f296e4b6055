import { Link } from "@tanstack/react-router";
import { NotShown } from "../../families/refused-page.tsx";
import { LoadAgain } from "../../places/load-again.tsx";
import { FindingsList } from "../../shell/findings-list.tsx";
import { Sheet } from "../../shell/sheet.tsx";
import { UnsentNotice } from "../unsent/unsent-notice.tsx";

/** Stands where cases cannot be shown: what is wrong, and that nothing typed is lost by it. */
export const CaseRefusedPage = ({ error }: { readonly error: unknown }) => (
  <Sheet
    name="Today"
    sub="this cannot be shown"
    place="Today"
    notice={<UnsentNotice />}
    titleBlock={{ title: "Not shown", note: "", rows: [[{ label: "Sheet", value: "none" }]] }}
    margin={
      <>
        <h2 className="heading">Cannot be shown</h2>
        <p className="margin-lead">What was typed on this device is kept here until the workshop's store has it.</p>
        <p className="margin-links">
          <Link to="/">Today</Link>
        </p>
      </>
    }
  >
    <div className="page">
      {error instanceof NotShown && error.findings.length > 0 ? (
        <FindingsList findings={error.findings} />
      ) : (
        <p className="lead">
          No answer came. See that the program that serves this page is still running. <LoadAgain />
        </p>
      )}
    </div>
  </Sheet>
);
