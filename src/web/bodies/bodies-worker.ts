import { expose } from "comlink";
import { computeBodies } from "#casework";

/** What the worker offers; the page calls it through comlink. */
export type BodiesWorker = { readonly computeBodies: typeof computeBodies };
export type BodiesAnswer = ReturnType<typeof computeBodies>;

expose({ computeBodies } satisfies BodiesWorker);
