export type * from "./family.ts";
export type * from "./position.ts";
