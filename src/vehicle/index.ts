export * from "./assemble-corner.ts";
export type * from "./corner.ts";
export type * from "./family.ts";
export * from "./mirror.ts";
export type * from "./position.ts";
export { STRUT_TOP, TRAILING_ARM } from "./positions/joint-positions.ts";
export * from "./positions/positions-of.ts";
export * from "./seat.ts";
