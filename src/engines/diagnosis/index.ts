export * from "./belief.ts";
export * from "./look.ts";
export * from "./network.ts";
export * from "./seed-model.ts";
export * from "./suspects.ts";
