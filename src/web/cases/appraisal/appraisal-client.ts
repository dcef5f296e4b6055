import { type Remote, wrap } from "comlink";
import type { Appraisal, VisitRecord } from "#casework";
import type { AppraisalWorker } from "./appraisal-worker.ts";

interface Asked {
  readonly record: VisitRecord;
  readonly settle: (answer: Appraisal | null) => void;
  readonly fail: (cause: unknown) => void;
}

export interface AppraisalClient {
  /** Appraises in the worker; null when a newer record or a stop has taken its place. */
  readonly ask: (record: VisitRecord) => Promise<Appraisal | null>;
  /** Ends what is being computed; the next question starts a fresh worker. */
  readonly stop: () => void;
}

/** One worker that appraises one record at a time; of those that wait only the newest is kept. */
const createAppraisalClient = (): AppraisalClient => {
  let worker: Worker | null = null;
  let remote: Remote<AppraisalWorker> | null = null;
  let running: Asked | null = null;
  let waiting: Asked | null = null;

  const startWorker = (): Remote<AppraisalWorker> => {
    worker = new Worker(new URL("./appraisal-worker.ts", import.meta.url), { type: "module" });
    return wrap<AppraisalWorker>(worker);
  };

  const run = async (asked: Asked): Promise<void> => {
    running = asked;
    remote ??= startWorker();
    try {
      const answer = await remote.appraise(asked.record);
      asked.settle(running === asked ? answer : null);
    } catch (cause) {
      asked.fail(cause);
    }
    if (running !== asked) return;
    running = null;
    const next = waiting;
    waiting = null;
    if (next !== null) void run(next);
  };

  return {
    ask: (record) =>
      new Promise((settle, fail) => {
        const asked = { record, settle, fail };
        if (running === null) {
          void run(asked);
          return;
        }
        waiting?.settle(null);
        waiting = asked;
      }),
    stop: () => {
      worker?.terminate();
      worker = null;
      remote = null;
      running?.settle(null);
      waiting?.settle(null);
      running = null;
      waiting = null;
    },
  };
};

/** The one worker of this window: what it has computed of a car stays with it from page to page. */
export const appraisals = createAppraisalClient();
