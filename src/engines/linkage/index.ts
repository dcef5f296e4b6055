export * from "./binding.ts";
export * from "./corner-linkage.ts";
export { findDependentConstraints, findTravelBlock, turnsAboutStrut } from "./dependence.ts";
export type * from "./describe-position.ts";
export * from "./elastic-corner.ts";
export { scaleRate } from "./elastic-terms.ts";
export { ElasticBalance } from "./equilibrium.ts";
export { computeForeAftShare, type ForeAftShare } from "./fore-aft.ts";
export type * from "./geometry.ts";
export * from "./gradients.ts";
export { JetCorner, type PointDeviation } from "./jet-corner.ts";
export * from "./joint-angles.ts";
export * from "./layout-linkage.ts";
export * from "./layout-load/index.ts";
export * from "./layout-rubber/index.ts";
export * from "./layout-sweep.ts";
export * from "./load-states/index.ts";
export * from "./matching/index.ts";
export type { Pose } from "./pose.ts";
export { computeSeatLength } from "./seat.ts";
export * from "./solve-band.ts";
export * from "./solve-compliance.ts";
export * from "./solve-fault-band.ts";
export * from "./solve-travel.ts";
export * from "./steer-axle.ts";
export * from "./steering-geometry.ts";
export * from "./uncertain-numbers.ts";
export type { Drive } from "./wheel.ts";
export { computeDesignContact, type WheelAttitude } from "./wheel-figures.ts";
export * from "./whole-car/bar-of-points.ts";
export * from "./whole-car/bush-give.ts";
export * from "./whole-car/car-balance.ts";
export * from "./whole-car/car-balance-state.ts";
export {
  type AntiRollBar,
  type BarState,
  type BodyMotion,
  type CarOnGround,
  computeBar,
  placeCar,
  placeWheel,
  type Side,
  type WheelOnGround,
} from "./whole-car/car-pose.ts";
