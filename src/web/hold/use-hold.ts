import { wrap } from "comlink";
import type { HandQuestion } from "#casework";
import type { Corner, Family } from "../car.ts";
import { askNewestOnly } from "../worker/newest-question.ts";
import { type NewestAnswer, useNewestAnswer } from "../worker/use-newest-answer.ts";
import type { HandAnswer, HoldAnswer, HoldWorker } from "./hold-worker.ts";

export interface AskedHold {
  readonly family: Family;
  readonly corner: Corner;
}
export interface AskedHand {
  readonly family: Family;
  readonly question: HandQuestion;
}

/** The same test by every way of the hand. */
export interface AskedWays {
  readonly family: Family;
  readonly questions: readonly HandQuestion[];
}

const openWorker = () => {
  const worker = new Worker(new URL("./hold-worker.ts", import.meta.url), { type: "module" });
  return { worker, remote: wrap<HoldWorker>(worker) };
};

const createHoldClient = () =>
  askNewestOnly<AskedHold, HoldAnswer>(() => {
    const { worker, remote } = openWorker();
    return { worker, compute: async ({ family, corner }) => await remote.computeHold(family, corner) };
  });

const createHandClient = () =>
  askNewestOnly<AskedHand, HandAnswer>(() => {
    const { worker, remote } = openWorker();
    return { worker, compute: async ({ family, question }) => await remote.computeHandTest(family, question) };
  });

const createWaysClient = () =>
  askNewestOnly<AskedWays, readonly HandAnswer[]>(() => {
    const { worker, remote } = openWorker();
    return { worker, compute: async ({ family, questions }) => await remote.computeHandTests(family, questions) };
  });

/** Load states of a corner, computed in a worker. */
export const useHold = (asked: AskedHold): NewestAnswer<AskedHold, HoldAnswer> =>
  useNewestAnswer(createHoldClient, asked);

/** What a hand does at a joint, computed in a worker of its own, so that a slider does not wait for the load states. */
export const useHandTest = (asked: AskedHand | null): NewestAnswer<AskedHand, HandAnswer> =>
  useNewestAnswer(createHandClient, asked);

/** The other ways of the hand, computed in a worker of their own; null asks nothing. */
export const useHandWays = (asked: AskedWays | null): NewestAnswer<AskedWays, readonly HandAnswer[]> =>
  useNewestAnswer(createWaysClient, asked);
