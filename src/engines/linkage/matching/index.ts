export type * from "./corner-readings.ts";
export {
  type Match,
  type MatchedReading,
  type MatchQuestion,
  Posterior,
  priorErrors,
  solveMatch,
} from "./match-corner.ts";
export { PointErrors, type SharedError } from "./point-errors.ts";
export * from "./sample-changes.ts";
export { shiftPoints } from "./shift-points.ts";
