export { pointAlongBody } from "./body-place.ts";
export * from "./layout-hand.ts";
export * from "./layout-load-state.ts";
