import { expose } from "comlink";
import { computeHandTest, computeHold, type HandQuestion } from "#casework";
import type { Family } from "../car.ts";

/** What the worker offers; the page calls it through comlink. */
export type HoldWorker = {
  readonly computeHold: typeof computeHold;
  readonly computeHandTest: typeof computeHandTest;
  readonly computeHandTests: typeof computeHandTests;
};
export type HoldAnswer = ReturnType<typeof computeHold>;
export type HandAnswer = ReturnType<typeof computeHandTest>;

/** Several hand tests of one car line, in the order asked. */
const computeHandTests = (family: Family, questions: readonly HandQuestion[]): readonly HandAnswer[] =>
  questions.map((question) => computeHandTest(family, question));

expose({ computeHold, computeHandTest, computeHandTests } satisfies HoldWorker);
