import { wrap } from "comlink";
import type { FaultQuestion } from "#casework";
import type { Family } from "../car.ts";
import { askNewestOnly, type NewestQuestion } from "../worker/newest-question.ts";
import type { EffectAnswer, EffectWorker } from "./effect-worker.ts";

/** What one fault of a family does at one condition. */
export interface EffectQuestion {
  readonly family: Family;
  readonly question: FaultQuestion;
}
export type EffectClient = NewestQuestion<EffectQuestion, EffectAnswer>;

/** A worker that computes what a fault does. */
export const createEffectClient = (): EffectClient =>
  askNewestOnly<EffectQuestion, EffectAnswer>(() => {
    const worker = new Worker(new URL("./effect-worker.ts", import.meta.url), { type: "module" });
    const remote = wrap<EffectWorker>(worker);
    return { worker, compute: async ({ family, question }) => await remote.computeFaultEffect(family, question) };
  });
