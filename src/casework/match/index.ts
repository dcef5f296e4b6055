export { LEAST_HEIGHTS } from "./check-match.ts";
export { computeMatch } from "./compute-match.ts";
export { takeOverMatch } from "./matched-family.ts";
