import type { Stage } from "#casework";
import { CaseSheet } from "../case/case-sheet.tsx";
import type { AppraisedCase } from "./use-appraisal.ts";

interface WaitingPageProps {
  readonly stage: Stage;
  readonly of: AppraisedCase;
}

/** A sheet before its first appraisal, or after one that ended without an answer. */
export const WaitingPage = ({ stage, of: { waiting, ended } }: WaitingPageProps) => (
  <CaseSheet
    stage={stage}
    waiting={waiting}
    margin={
      <>
        <h2 className="heading">{ended === null ? "Being computed" : "No answer"}</h2>
        <p className="margin-lead">
          {ended === null
            ? "What was seen and read is being judged, and the plan of least cost is being searched."
            : "The computation ended before it had an answer. Open the page again to start it."}
        </p>
      </>
    }
  >
    <div className="empty-place" />
  </CaseSheet>
);
