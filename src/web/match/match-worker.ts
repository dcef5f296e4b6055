import { expose } from "comlink";
import { computeMatch } from "#casework";

/** What the worker offers; the page calls it through comlink. */
export type MatchWorker = { readonly computeMatch: typeof computeMatch };
export type MatchAnswer = ReturnType<typeof computeMatch>;

expose({ computeMatch } satisfies MatchWorker);
