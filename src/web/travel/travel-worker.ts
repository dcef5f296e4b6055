import { expose } from "comlink";
import { computeTravelSheet } from "#casework";

/** What the worker offers; the page calls it through comlink. */
export type TravelWorker = { readonly computeTravelSheet: typeof computeTravelSheet };
export type TravelAnswer = ReturnType<typeof computeTravelSheet>;

expose({ computeTravelSheet } satisfies TravelWorker);
