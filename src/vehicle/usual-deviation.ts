import type { Metres, Share } from "#quantity";
import type { Origin } from "./family.ts";

/**
 * Standard deviation of a coordinate along x, y, z where nobody gave one, by where it comes from.
 * template, level-plane, tape and bench: the rungs of the method page; the others: invented.
 */
export const usualPointDeviation: Readonly<Record<Origin, readonly [x: Metres, y: Metres, z: Metres]>> = {
  template: [0.02, 0.02, 0.012],
  "level-plane": [0.005, 0.005, 0.001],
  tape: [0.005, 0.005, 0.005],
  bench: [0.0005, 0.0005, 0.0005],
  drawing: [0.0005, 0.0005, 0.0005],
  maker: [0.0005, 0.0005, 0.0005],
  invented: [0.001, 0.001, 0.001],
  practice: [0.02, 0.02, 0.012],
  guess: [0.03, 0.03, 0.02],
};

/** Relative standard deviation of a rubber rate where nobody gave one, by where it comes from. template: the rungs of the method page; the others: invented. */
export const usualRateDeviation: Readonly<Record<Origin, Share>> = {
  template: 0.4,
  "level-plane": 0.3,
  tape: 0.3,
  bench: 0.05,
  drawing: 0.15,
  maker: 0.15,
  invented: 0.15,
  practice: 0.3,
  guess: 0.5,
};
