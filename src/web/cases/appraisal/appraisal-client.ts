import { wrap } from "comlink";
import type { Appraisal, VisitRecord } from "#casework";
import { askNewestOnly } from "../../worker/newest-question.ts";
import type { AppraisalWorker } from "./appraisal-worker.ts";

/** The one worker of this window: what it has computed of a car stays with it from page to page. */
export const appraisals = askNewestOnly<VisitRecord, Appraisal>(() => {
  const worker = new Worker(new URL("./appraisal-worker.ts", import.meta.url), { type: "module" });
  const remote = wrap<AppraisalWorker>(worker);
  return { worker, compute: (record) => remote.appraise(record) };
});
