import { wrap } from "comlink";
import type { BodiesAsked } from "#casework";
import { askNewestOnly } from "../worker/newest-question.ts";
import { type NewestAnswer, useNewestAnswer } from "../worker/use-newest-answer.ts";
import type { BodiesAnswer, BodiesHoldAnswer, BodiesHoldAsked, BodiesWorker } from "./bodies-worker.ts";

const open = () => {
  const worker = new Worker(new URL("./bodies-worker.ts", import.meta.url), { type: "module" });
  return { worker, remote: wrap<BodiesWorker>(worker) };
};

const createClient = () =>
  askNewestOnly<BodiesAsked, BodiesAnswer>(() => {
    const { worker, remote } = open();
    return { worker, compute: async (asked) => await remote.computeBodies(asked) };
  });

const createHoldClient = () =>
  askNewestOnly<BodiesHoldAsked, BodiesHoldAnswer>(() => {
    const { worker, remote } = open();
    return { worker, compute: async (asked) => await remote.computeBodiesHold(asked) };
  });

/** A suspension of several bodies over its travel, computed in a worker; null asks nothing. */
export const useBodies = (asked: BodiesAsked | null): NewestAnswer<BodiesAsked, BodiesAnswer> =>
  useNewestAnswer(createClient, asked);

/** The same held in every way, computed in a worker; null asks nothing. */
export const useBodiesHold = (asked: BodiesHoldAsked | null): NewestAnswer<BodiesHoldAsked, BodiesHoldAnswer> =>
  useNewestAnswer(createHoldClient, asked);
