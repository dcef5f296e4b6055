import { expose } from "comlink";
import { type BodiesAsked, type BodiesFault, type BodiesFile, computeBodies, computeBodiesHold } from "#casework";

/** How a layout from a file is held is asked with its file and fault; forces on the road do not matter to it. */
export interface BodiesHoldAsked {
  readonly file: BodiesFile;
  readonly fault: BodiesFault | null;
}

const worker = {
  computeBodies: (asked: BodiesAsked) => computeBodies(asked),
  computeBodiesHold: ({ file, fault }: BodiesHoldAsked) => computeBodiesHold(file, fault),
};

/** What the worker offers; the page calls it through comlink. */
export type BodiesWorker = typeof worker;
export type BodiesAnswer = ReturnType<BodiesWorker["computeBodies"]>;
export type BodiesHoldAnswer = ReturnType<BodiesWorker["computeBodiesHold"]>;

expose(worker);
