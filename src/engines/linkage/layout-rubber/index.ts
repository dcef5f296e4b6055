export * from "./layout-balance.ts";
export * from "./layout-band.ts";
export type * from "./layout-elasticity.ts";
export * from "./layout-equilibria.ts";
export * from "./layout-stability.ts";
export type { LooseGroup, Side } from "./loose-group.ts";
