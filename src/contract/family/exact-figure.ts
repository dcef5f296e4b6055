import type { Metres, NewtonSecondsPerMetre, NewtonsPerMetre, Radians } from "#quantity";
import {
  metresFromMm,
  newtonSecondsPerMetreFromPerMm,
  newtonsPerMetreFromPerMm,
  perDegreeFromPerRadian,
  perRadianFromPerDegree,
  radiansFromDegrees,
} from "#quantity";

/**
 * The figure in the file's unit that reads back as exactly the same double.
 * Every figure that once came from a file has one; it is found among the short decimals first, then among the
 * neighbours of the plain conversion. A figure that has none (no double in the file's unit lands on it) gets the nearest.
 */
export function exactFigure(inside: number, estimate: number, readBack: (outside: number) => number): number {
  for (const digits of [6, 9, 12, 14, 15, 16, 17]) {
    const short = Number(estimate.toPrecision(digits));
    if (readBack(short) === inside) return short;
  }
  const step = Math.abs(estimate) * Number.EPSILON;
  for (const steps of [1, -1, 0.5, -0.5, 2, -2, 1.5, -1.5]) {
    const near = estimate + steps * step;
    if (readBack(near) === inside) return near;
  }
  return estimate;
}

/** Metres as millimetres that read back exactly. */
export const exactMm = (metres: Metres): number => exactFigure(metres, metres * 1000, metresFromMm);
/** Radians as degrees that read back exactly. */
export const exactDegrees = (radians: Radians): number =>
  exactFigure(radians, (radians * 180) / Math.PI, radiansFromDegrees);
/** N/m as N/mm that read back exactly. */
export const exactPerMm = (rate: NewtonsPerMetre): number => exactFigure(rate, rate / 1000, newtonsPerMetreFromPerMm);
/** N m per radian as N m per degree that read back exactly. */
export const exactPerDegree = (moment: number): number =>
  exactFigure(moment, perDegreeFromPerRadian(moment), perRadianFromPerDegree);
/** N s/m as N s/mm that read back exactly. */
export const exactDampingPerMm = (damping: NewtonSecondsPerMetre): number =>
  exactFigure(damping, damping / 1000, newtonSecondsPerMetreFromPerMm);
