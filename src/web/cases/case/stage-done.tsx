import { useNavigate } from "@tanstack/react-router";
import { type Stage, stageWords } from "#casework";
import { useCase } from "./case-context.tsx";
import { stageAfter } from "./progress.ts";

interface StageDoneProps {
  readonly stage: Stage;
  readonly words?: string;
  /** What of this stage is still open, by name; it is said before anybody calls the stage done. */
  readonly open?: readonly string[];
}

/** So many open things are named. */
const MOST_NAMED = 4;

/** What is still open, the first few by name. */
const openWords = (open: readonly string[]): string =>
  `Still open: ${open.slice(0, MOST_NAMED).join("; ")}${open.length > MOST_NAMED ? `; and ${open.length - MOST_NAMED} more` : ""}.`;

/** One press that calls a stage done and goes on to the next that has a page; pressed on a done stage it only goes on. */
export const StageDone = ({ stage, words, open = [] }: StageDoneProps) => {
  const { visitId, visit, change } = useCase();
  const navigate = useNavigate();
  const next = stageAfter(stage) === "options" ? "plan" : stageAfter(stage);
  const done = visit.done.includes(stage);
  const press = () => {
    if (!done) change("visit", (body) => ({ ...(body ?? visit), done: [...(body ?? visit).done, stage] }));
    if (next !== null) void navigate({ to: `/cases/$visit/${next}`, params: { visit: visitId } });
  };
  return (
    <p className="stage-done">
      {open.length === 0 || done ? null : <span className="label stage-open">{openWords(open)}</span>}
      <button type="button" className="press" onClick={press}>
        {words ??
          (next === null
            ? `${stageWords[stage]} done`
            : `${done ? "On" : open.length === 0 ? "Done, on" : `Leave ${open.length} open, on`} to ${stageWords[next]}`)}
      </button>
      {done ? (
        <button
          type="button"
          className="link"
          onClick={() =>
            change("visit", (body) => ({
              ...(body ?? visit),
              done: (body ?? visit).done.filter((one) => one !== stage),
            }))
          }
        >
          Not done yet
        </button>
      ) : null}
    </p>
  );
};
