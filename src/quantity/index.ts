export * from "./convert.ts";
export * from "./frame.ts";
export * from "./unit.ts";
