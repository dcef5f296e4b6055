export type { Finding } from "./finding.ts";
export * from "./jet.ts";
export * from "./linear.ts";
export * from "./polynomial.ts";
export * from "./report.ts";
export * from "./scaled-normal.ts";
export * from "./special.ts";
export * from "./vector.ts";
