import { expose } from "comlink";
import { computeTravelEffect } from "./travel-effect.ts";

/** What the worker offers; the page calls it through comlink. */
export type TravelWorker = { readonly computeTravelEffect: typeof computeTravelEffect };

expose({ computeTravelEffect } satisfies TravelWorker);
