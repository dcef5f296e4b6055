export * from "./hand-movement.ts";
export * from "./load-state.ts";
export * from "./play-seen.ts";
