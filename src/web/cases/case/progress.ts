import type { Stage } from "#casework";
import { computeStageMarks, countingLooks, type StageMark, stageOrder } from "#casework";
import type { CaseRecord } from "./case-record.ts";

/** Marks of the job line from the records alone, before anything has been appraised. */
export const stagesOfRecord = ({ car, visit, enquiry, plan, jobCard, looks }: CaseRecord): readonly StageMark[] => {
  const counting = countingLooks(looks);
  const asked = counting.filter(
    ({ content }) => content.kind === "reading" || (content.kind === "not-taken" && content.quantity !== null),
  ).length;
  const stepsDone = jobCard?.steps.length ?? 0;
  return computeStageMarks({
    visit,
    hasWords: (enquiry?.words ?? "") !== "",
    hasFamily: car.family !== null,
    readings: asked,
    looks: counting.length - asked,
    places: 0,
    findings: counting.filter(({ content: { kind } }) => kind === "signs" || kind === "reading").length,
    agreed: plan?.agreed.length ?? 0,
    stepsDone,
    steps: stepsDone,
    gatesOpen: 0,
  });
};

/** The stage a visit stands at: the first that is not done and has a page. */
export const stageNow = (done: readonly Stage[]): Stage =>
  stageOrder.find((stage) => stage !== "options" && !done.includes(stage)) ?? "hand-over";

/** The stage that follows one; null after the last. */
export const stageAfter = (stage: Stage): Stage | null => stageOrder[stageOrder.indexOf(stage) + 1] ?? null;
