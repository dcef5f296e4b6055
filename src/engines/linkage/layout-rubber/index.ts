export * from "./layout-balance.ts";
export * from "./layout-band.ts";
export type * from "./layout-elasticity.ts";
