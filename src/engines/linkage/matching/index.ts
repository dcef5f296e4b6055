export type * from "./corner-readings.ts";
export { type Match, type MatchedReading, type MatchQuestion, Posterior, solveMatch } from "./match-corner.ts";
export type { SharedError } from "./point-errors.ts";
export * from "./sample-changes.ts";
export { shiftPoints } from "./shift-points.ts";
