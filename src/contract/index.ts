export type * from "./door.ts";
