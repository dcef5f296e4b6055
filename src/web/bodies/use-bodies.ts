import { wrap } from "comlink";
import type { BodiesAsked } from "#casework";
import { askNewestOnly } from "../worker/newest-question.ts";
import { type NewestAnswer, useNewestAnswer } from "../worker/use-newest-answer.ts";
import type { BodiesAnswer, BodiesWorker } from "./bodies-worker.ts";

const createClient = () =>
  askNewestOnly<BodiesAsked, BodiesAnswer>(() => {
    const worker = new Worker(new URL("./bodies-worker.ts", import.meta.url), { type: "module" });
    const remote = wrap<BodiesWorker>(worker);
    return { worker, compute: async (asked) => await remote.computeBodies(asked) };
  });

/** A suspension of several bodies over its travel, computed in a worker; null asks nothing. */
export const useBodies = (asked: BodiesAsked | null): NewestAnswer<BodiesAsked, BodiesAnswer> =>
  useNewestAnswer(createClient, asked);
