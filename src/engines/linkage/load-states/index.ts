export * from "./hand-movement.ts";
export * from "./load-state.ts";
export { type MovingPart, movingParts, placeOf, pointOnPart } from "./moving-part.ts";
export * from "./play-seen.ts";
