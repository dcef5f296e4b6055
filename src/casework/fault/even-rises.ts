/** Curves are computed at every so many metres of travel, so that curves of different stops share their heights. */
const EVERY = 0.01;
/** The last even height is left out where the end lies nearer than this, metres. */
const TOO_NEAR = 0.001;

/** Heights from ride height (left out) to the end of a curve, metres, away from it: every 10 mm, and the end itself. */
export function evenRises(end: number): readonly number[] {
  const count = Math.max(0, Math.ceil((Math.abs(end) - TOO_NEAR) / EVERY - 1));
  return [...Array.from({ length: count }, (_, i) => Math.sign(end) * ((i + 1) / 100)), end];
}
