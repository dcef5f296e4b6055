interface NoAnswerProps {
  /** How the last computation ended without an answer; null while one is under way. */
  readonly ended: "stopped" | "broken" | null;
  /** What is being done. */
  readonly doing: string;
  /** What starts it again: "Choose another corner". */
  readonly again: string;
}

/** What stands in the margin before the first answer, or where none came. */
export const NoAnswer = ({ ended, doing, again }: NoAnswerProps) => (
  <>
    <h2 className="heading">{ended === null ? "Being computed" : "No answer"}</h2>
    <p className="margin-lead">{ended === null ? doing : `The computation was ended. ${again} to start it again.`}</p>
  </>
);
