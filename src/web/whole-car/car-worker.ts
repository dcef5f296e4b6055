import { expose } from "comlink";
import { computeCar } from "#casework";

/** What the worker offers; the page calls it through comlink. */
export type CarWorker = { readonly computeCar: typeof computeCar };
export type CarAnswer = ReturnType<typeof computeCar>;

expose({ computeCar } satisfies CarWorker);
