export type * from "./fault-effect.ts";
export type * from "./ports.ts";
