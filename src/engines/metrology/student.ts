import { computeNormalProbability } from "#numeric";
import { computeNormalQuantile } from "./normal.ts";

/** Beyond this many degrees of freedom the normal distribution is the same to all digits that matter. */
const AS_NORMAL = 1e7;

/**
 * Chance that a Student variable of a whole number of degrees of freedom (at least 1) lies within plus or minus t:
 * the finite sums of Abramowitz and Stegun 26.7.3 and 26.7.4, from memory.
 */
export function computeStudentProbability(t: number, degrees: number): number {
  if (degrees > AS_NORMAL) return 1 - 2 * computeNormalProbability(-t);
  const angle = Math.atan(t / Math.sqrt(degrees));
  const c2 = degrees / (degrees + t * t);
  const odd = degrees % 2 === 1;
  if (degrees === 1) return (2 * angle) / Math.PI;
  let term = odd ? Math.sqrt(c2) : 1;
  let sum = term;
  for (let k = odd ? 3 : 2; k < degrees; k += 2) {
    term *= (c2 * (k - 1)) / k;
    sum += term;
    if (term < sum * 1e-18) break;
  }
  return odd ? (2 / Math.PI) * (angle + Math.sin(angle) * sum) : Math.sin(angle) * sum;
}

/** Multiple of the standard uncertainty within which a share of a Student variable lies (share in (0, 1)). */
export function computeStudentQuantile(share: number, degrees: number): number {
  if (degrees > AS_NORMAL) return computeNormalQuantile((1 + share) / 2);
  let low = 0;
  let high = 1;
  while (computeStudentProbability(high, degrees) < share) high *= 2;
  for (let i = 0; i < 200; i++) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (computeStudentProbability(middle, degrees) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
