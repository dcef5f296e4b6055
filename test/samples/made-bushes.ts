import fc from "fast-check";
import type { HydraulicBush } from "#engines/rubber";

/** An invented hydraulic bush; N/m, kg, N s/m. */
export const madeBush: HydraulicBush = {
  rubber: 320_000,
  lossFactor: 0.08,
  volume: 410_000,
  fluidInertia: 31,
  fluidDamping: 1900,
};

/** Hydraulic bushes from far softer to far stiffer than those of cars (bounds invented). */
export const madeBushes: fc.Arbitrary<HydraulicBush> = fc.record({
  rubber: fc.double({ min: 5e4, max: 2e6, noNaN: true }),
  lossFactor: fc.double({ min: 0.01, max: 0.3, noNaN: true }),
  volume: fc.double({ min: 5e4, max: 2e6, noNaN: true }),
  fluidInertia: fc.double({ min: 1, max: 120, noNaN: true }),
  fluidDamping: fc.double({ min: 10, max: 4e4, noNaN: true }),
});
