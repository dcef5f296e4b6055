import { wrap } from "comlink";
import type { CarQuestion } from "#casework";
import { askNewestOnly } from "../worker/newest-question.ts";
import { type NewestAnswer, useNewestAnswer } from "../worker/use-newest-answer.ts";
import type { CarAnswer, CarWorker } from "./car-worker.ts";

const createClient = () =>
  askNewestOnly<CarQuestion, CarAnswer>(() => {
    const worker = new Worker(new URL("./car-worker.ts", import.meta.url), { type: "module" });
    const remote = wrap<CarWorker>(worker);
    return { worker, compute: async (question) => await remote.computeCar(question) };
  });

/** Four wheels over one motion of the car, computed in a worker. */
export const useCar = (question: CarQuestion): NewestAnswer<CarQuestion, CarAnswer> =>
  useNewestAnswer(createClient, question);
