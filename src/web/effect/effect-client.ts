import { type Remote, wrap } from "comlink";
import type { FaultQuestion } from "#casework";
import type { Family } from "../car.ts";
import type { EffectAnswer, EffectWorker } from "./effect-worker.ts";

interface Asked {
  readonly family: Family;
  readonly question: FaultQuestion;
  readonly settle: (answer: EffectAnswer | null) => void;
  readonly fail: (cause: unknown) => void;
}

export interface EffectClient {
  /** Computes in the worker; null when a newer question or a stop has taken its place. */
  readonly ask: (family: Family, question: FaultQuestion) => Promise<EffectAnswer | null>;
  /** Ends what is being computed; the next question starts a fresh worker. */
  readonly stop: () => void;
}

/** One worker that answers one question at a time; of those that wait only the newest is kept. */
export const createEffectClient = (): EffectClient => {
  let worker: Worker | null = null;
  let remote: Remote<EffectWorker> | null = null;
  let running: Asked | null = null;
  let waiting: Asked | null = null;

  const startWorker = (): Remote<EffectWorker> => {
    worker = new Worker(new URL("./effect-worker.ts", import.meta.url), { type: "module" });
    return wrap<EffectWorker>(worker);
  };

  const run = async (asked: Asked): Promise<void> => {
    running = asked;
    remote ??= startWorker();
    try {
      const answer = await remote.computeFaultEffect(asked.family, asked.question);
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
    ask: (family, question) =>
      new Promise((settle, fail) => {
        const asked = { family, question, settle, fail };
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
