import { wrap } from "comlink";
import { askNewestOnly, type NewestQuestion } from "../../worker/newest-question.ts";
import type { TravelEffect, TravelQuestion } from "./travel-effect.ts";
import type { TravelWorker } from "./travel-worker.ts";

export type TravelClient = NewestQuestion<TravelQuestion, TravelEffect>;

/** A worker that moves the wheel of an axle through its travel. */
export const createTravelClient = (): TravelClient =>
  askNewestOnly<TravelQuestion, TravelEffect>(() => {
    const worker = new Worker(new URL("./travel-worker.ts", import.meta.url), { type: "module" });
    const remote = wrap<TravelWorker>(worker);
    return { worker, compute: async (question) => await remote.computeTravelEffect(question) };
  });
