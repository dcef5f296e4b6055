export * from "./axle-toe.ts";
export * from "./caster-sweep.ts";
export * from "./rigid-sweep.ts";
