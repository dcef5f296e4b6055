import { wrap } from "comlink";
import type { TravelSheetQuestion } from "#casework";
import { askNewestOnly } from "../worker/newest-question.ts";
import { type NewestAnswer, useNewestAnswer } from "../worker/use-newest-answer.ts";
import type { TravelAnswer, TravelWorker } from "./travel-worker.ts";

const createClient = () =>
  askNewestOnly<TravelSheetQuestion, TravelAnswer>(() => {
    const worker = new Worker(new URL("./travel-worker.ts", import.meta.url), { type: "module" });
    const remote = wrap<TravelWorker>(worker);
    return { worker, compute: async (question) => await remote.computeTravelSheet(question) };
  });

/** A travel sheet computed in a worker, null asks nothing; the last answer stays while the next is computed. */
export const useTravelSheet = (question: TravelSheetQuestion | null): NewestAnswer<TravelSheetQuestion, TravelAnswer> =>
  useNewestAnswer(createClient, question);
