import { expose } from "comlink";
import { computeHandTest, computeHold } from "#casework";

/** What the worker offers; the page calls it through comlink. */
export type HoldWorker = {
  readonly computeHold: typeof computeHold;
  readonly computeHandTest: typeof computeHandTest;
};
export type HoldAnswer = ReturnType<typeof computeHold>;
export type HandAnswer = ReturnType<typeof computeHandTest>;

expose({ computeHold, computeHandTest } satisfies HoldWorker);
