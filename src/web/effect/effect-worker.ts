import { expose } from "comlink";
import { computeFaultEffect } from "#casework";

/** What the worker offers; the page calls it through comlink. */
export type EffectWorker = { readonly computeFaultEffect: typeof computeFaultEffect };
/** The effect, or the findings of a question that could not be computed. */
export type EffectAnswer = ReturnType<typeof computeFaultEffect>;

expose({ computeFaultEffect } satisfies EffectWorker);
