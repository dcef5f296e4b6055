import { wrap } from "comlink";
import type { ShakeQuestion } from "#casework";
import type { Family } from "../car.ts";
import { askNewestOnly, type NewestQuestion } from "../worker/newest-question.ts";
import type { ShakeAnswer, ShakeWorker } from "./shake-worker.ts";

export interface AskedShake {
  readonly family: Family;
  readonly question: ShakeQuestion;
}
export type ShakeClient = NewestQuestion<AskedShake, ShakeAnswer>;

/** A worker that computes how a wheel shakes on a hydraulic bush with and without its fluid. */
export const createShakeClient = (): ShakeClient =>
  askNewestOnly<AskedShake, ShakeAnswer>(() => {
    const worker = new Worker(new URL("./shake-worker.ts", import.meta.url), { type: "module" });
    const remote = wrap<ShakeWorker>(worker);
    return { worker, compute: async ({ family, question }) => await remote.computeShake(family, question) };
  });
