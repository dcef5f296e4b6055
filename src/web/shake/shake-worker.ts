import { expose } from "comlink";
import { type computeShake, rememberShake } from "#casework";

/** What the worker offers; the page calls it through comlink. */
export type ShakeWorker = { readonly computeShake: typeof computeShake };
/** The shake, or the findings of a question that could not be computed. */
export type ShakeAnswer = ReturnType<typeof computeShake>;

expose({ computeShake: rememberShake() } satisfies ShakeWorker);
