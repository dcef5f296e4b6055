import type { Axle } from "#vehicle";
import type { ShakeWheel } from "./shake-model.ts";

/** Thickness variation a new disc may have, peak to peak (key disc-thickness-variation in docs/sources.md), metres. */
export const NEW_DISC_VARIATION = 15e-6;
/** Friction of pad on disc (from memory) and clamp force per thickness at a held pedal, N/m (key caliper-rate in docs/sources.md). */
const FRICTION = 0.4;
const CALIPER_RATE = 30e6;
/** Relative standard deviations of friction, clamp rate and moving mass; invented. */
export const WHEEL_SPREAD = { friction: 0.12, caliper: 0.25, mass: 0.05 } as const;

/**
 * What makes torque of an uneven disc on an axle. Effective radius: half of disc less piston diameter (common practice,
 * no source). Rolling circumference: 2 pi times the free radius less a third of what the load takes off it (from memory).
 */
export function shakeWheelOf(axle: Axle): ShakeWheel {
  const { freeRadius, loadedRadius } = axle.wheel;
  return {
    circumference: 2 * Math.PI * (freeRadius - (freeRadius - loadedRadius) / 3),
    disc: {
      effectiveRadius: (axle.brake.discDiameter - axle.brake.pistonDiameter) / 2,
      friction: FRICTION,
      caliper: CALIPER_RATE,
    },
  };
}
