import { wrap } from "comlink";
import type { MatchAsked } from "#casework";
import { askNewestOnly } from "../worker/newest-question.ts";
import { type NewestAnswer, useNewestAnswer } from "../worker/use-newest-answer.ts";
import type { MatchAnswer, MatchWorker } from "./match-worker.ts";

const createClient = () =>
  askNewestOnly<MatchAsked, MatchAnswer>(() => {
    const worker = new Worker(new URL("./match-worker.ts", import.meta.url), { type: "module" });
    const remote = wrap<MatchWorker>(worker);
    return { worker, compute: async (asked) => await remote.computeMatch(asked) };
  });

/** A corner matched to its readings, computed in a worker; null asks nothing. */
export const useMatch = (asked: MatchAsked | null): NewestAnswer<MatchAsked, MatchAnswer> =>
  useNewestAnswer(createClient, asked);
