export * from "./budget.ts";
export * from "./conformity.ts";
export * from "./decision-risk.ts";
export * from "./instruments.ts";
export * from "./judgement.ts";
export { computeNormalQuantile, type Estimate, type Limits } from "./normal.ts";
export * from "./student.ts";
