export type * from "./fault-effect.ts";
