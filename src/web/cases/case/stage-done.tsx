import { useNavigate } from "@tanstack/react-router";
import { type Stage, stageWords } from "#casework";
import { useCase } from "./case-context.tsx";
import { stageAfter } from "./progress.ts";

/** One press that calls a stage done and goes on to the next that has a page; pressed on a done stage it only goes on. */
export const StageDone = ({ stage, words }: { readonly stage: Stage; readonly words?: string }) => {
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
      <button type="button" className="press" onClick={press}>
        {words ?? (next === null ? `${stageWords[stage]} done` : `${done ? "On" : "Done, on"} to ${stageWords[next]}`)}
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
