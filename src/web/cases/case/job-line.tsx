import { Link } from "@tanstack/react-router";
import { type Stage, type StageMark, stageWords } from "#casework";

interface JobLineProps {
  readonly visitId: string;
  readonly marks: readonly StageMark[];
  /** The stage whose page is open. */
  readonly now: Stage;
}

const MARK_WORDS: Readonly<Record<StageMark["mark"], string>> = {
  "not-begun": "not begun",
  open: "open",
  done: "done",
  blocked: "blocked",
};

/** The sign of a step on its line: filled where done, a ring with a dot where open, struck through where blocked. */
export const StageSign = ({ mark, now }: { readonly mark: StageMark["mark"]; readonly now: boolean }) => (
  <svg viewBox="-10 -10 20 20" width="20" height="20" aria-hidden="true" className="stage-sign" data-now={now}>
    {mark === "done" ? (
      <circle r={now ? 6 : 4} className="stage-done" />
    ) : (
      <circle r={now ? 6.5 : 4.5} className="stage-ring" />
    )}
    {mark === "open" && !now ? <circle r="1.8" className="stage-done" /> : null}
    {mark === "blocked" ? <path d="M-9 0H9" className="stage-bar" /> : null}
  </svg>
);

/** The steps of the job, each with its mark; what blocks a step stands under it. */
export const JobLine = ({ visitId, marks, now }: JobLineProps) => (
  <nav className="job-line" aria-label="Steps of the job">
    {marks.map((mark) => (
      <Link
        key={mark.stage}
        to={`/cases/$visit/${mark.stage}`}
        params={{ visit: visitId }}
        className="job-step"
        data-mark={mark.mark}
        aria-current={mark.stage === now ? "step" : undefined}
      >
        <span className="job-word">
          {stageWords[mark.stage]}
          <span className="unseen">: {MARK_WORDS[mark.mark]}</span>
        </span>
        <StageSign mark={mark.mark} now={mark.stage === now} />
        <span className="job-needs">{mark.blockedBy}</span>
      </Link>
    ))}
  </nav>
);
