export * from "./bush-rates.ts";
export * from "./hardness-factor.ts";
export {
  type ComplexStiffness,
  computeComplexStiffness,
  computeDynamicStiffness,
  type DynamicStiffness,
  type FluidState,
  fluidStates,
  type HydraulicBush,
} from "./hydraulic-bush.ts";
export * from "./peak-loss.ts";
export * from "./shear-modulus.ts";
export * from "./wheel-shake.ts";
