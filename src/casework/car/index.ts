export { alongForm, carMotionForm, carMotions } from "./car-motions.ts";
export { computeCar } from "./compute-car.ts";
export type { CornerRow } from "./corner-rows.ts";
