import { expose } from "comlink";
import loadHighs from "highs";
import runtimeAddress from "highs/runtime?url";
import { type Appraisal, appraiseVisit, createMemory, highsSolver, type VisitRecord } from "#casework";

/** What the worker offers; the page calls it through comlink. */
export interface AppraisalWorker {
  readonly appraise: (record: VisitRecord) => Promise<Appraisal>;
}

const loading = loadHighs({ locateFile: () => runtimeAddress });
const memory = createMemory();

expose({
  appraise: async (record) => appraiseVisit(record, highsSolver(await loading), memory),
} satisfies AppraisalWorker);
