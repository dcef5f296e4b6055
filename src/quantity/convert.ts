import type { Metres, MetresPerSecond, NewtonSecondsPerMetre, Newtons, NewtonsPerMetre, Radians } from "./unit.ts";

const DEGREES_PER_RADIAN = 180 / Math.PI;

/** Millimetres to metres. */
export const metresFromMm = (mm: number): Metres => mm / 1000;
/** Metres to millimetres. */
export const mmFromMetres = (m: Metres): number => m * 1000;
/** Degrees to radians. */
export const radiansFromDegrees = (degrees: number): Radians => degrees / DEGREES_PER_RADIAN;
/** Radians to degrees. */
export const degreesFromRadians = (radians: Radians): number => radians * DEGREES_PER_RADIAN;
/** Newtons per millimetre to newtons per metre. */
export const newtonsPerMetreFromPerMm = (perMm: number): NewtonsPerMetre => perMm * 1000;
/** Newtons per metre to newtons per millimetre. */
export const perMmFromNewtonsPerMetre = (perMetre: NewtonsPerMetre): number => perMetre / 1000;
/** Newton metres per degree of turn to newton metres per radian. */
export const perRadianFromPerDegree = (perDegree: number): number => perDegree * DEGREES_PER_RADIAN;
/** Newton metres per radian of turn to newton metres per degree. */
export const perDegreeFromPerRadian = (perRadian: number): number => perRadian / DEGREES_PER_RADIAN;
/** Newton seconds per millimetre to newton seconds per metre. */
export const newtonSecondsPerMetreFromPerMm = (perMm: number): NewtonSecondsPerMetre => perMm * 1000;
/** Kilonewtons to newtons. */
export const newtonsFromKn = (kn: number): Newtons => kn * 1000;
/** Kilometres per hour to metres per second. */
export const metresPerSecondFromKmPerHour = (kmPerHour: number): MetresPerSecond => kmPerHour / 3.6;
/** Metres per second to kilometres per hour. */
export const kmPerHourFromMetresPerSecond = (metresPerSecond: MetresPerSecond): number => metresPerSecond * 3.6;
