import type { Metres } from "./unit.ts";

/**
 * Frames, after ISO 8855 (from memory): x forward, y left, z up.
 * "vehicle": origin on the centre line, at design ground level, x = 0 at the front axle.
 * "knuckle": the same axes and origin at design position, carried along by the moving knuckle.
 */
export type Frame = "vehicle" | "knuckle";

declare const frame: unique symbol;
/** A point as [x, y, z] in metres; the frame whose origin it is measured from stands in the type. */
export type PointIn<F extends Frame> = readonly [x: Metres, y: Metres, z: Metres] & { readonly [frame]?: F };
/** A direction (any length unless stated) as [x, y, z] in the axes of the frame. */
export type DirectionIn<F extends Frame> = readonly [x: number, y: number, z: number] & { readonly [frame]?: F };
