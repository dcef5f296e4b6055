/** A function of one number with its first three derivatives. */
export type WithDerivatives = readonly [value: number, first: number, second: number, third: number];

/** Most terms of either series; they converge long before, at any angle a joint turns through. */
const MOST_TERMS = 200;
const NEGLIGIBLE = 1e-19;

/**
 * Angle over its sine, by the cosine c of the angle: what the cross product of two unit vectors is multiplied with to
 * become the rotation vector of the shortest turn between them. Power series in 1 - c, good to rounding for angles below
 * 2 rad, with no loss at none.
 */
export function angleOverSine(c: number): WithDerivatives {
  const t = 1 - c;
  let coefficient = 1;
  const power = [1, 0, 0, 0];
  const sum = [0, 0, 0, 0];
  for (let n = 0; n < MOST_TERMS; n++) {
    for (let k = 0; k < 4; k++) sum[k] = (sum[k] as number) + coefficient * (power[k] as number);
    if (n > 4 && coefficient * (power[3] as number) < NEGLIGIBLE) break;
    raise(power, t, n);
    coefficient *= (n + 1) / (2 * n + 3);
  }
  // By c, not by t.
  return [sum[0] as number, -(sum[1] as number), sum[2] as number, -(sum[3] as number)];
}

/** Riemann's zeta at 2, 4, 6 ...: pi^2/6, then by its sum, whose rest past 40 falls below rounding. */
function evenZeta(n: number): number {
  if (n === 1) return Math.PI ** 2 / 6;
  if (n === 2) return Math.PI ** 4 / 90;
  if (n === 3) return Math.PI ** 6 / 945;
  if (n === 4) return Math.PI ** 8 / 9450;
  let sum = 0;
  for (let k = 40; k >= 1; k--) sum += k ** (-2 * n);
  return sum;
}

const ROTATION_TERMS = Array.from({ length: 24 }, (_, i) => (2 * evenZeta(i + 1)) / (2 * Math.PI) ** (2 * i + 2));

/**
 * (1 - x/2 cot(x/2))/x^2 by z = x^2: the factor of the double cross product in the derivative of a rotation vector by a
 * small turn. Power series in z, good to rounding for turns below 2 rad.
 */
export function rotationVectorFactor(z: number): WithDerivatives {
  const power = [1, 0, 0, 0];
  const sum = [0, 0, 0, 0];
  ROTATION_TERMS.forEach((coefficient, n) => {
    for (let k = 0; k < 4; k++) sum[k] = (sum[k] as number) + coefficient * (power[k] as number);
    raise(power, z, n);
  });
  return [sum[0] as number, sum[1] as number, sum[2] as number, sum[3] as number];
}

/** From t^n and its first three derivatives to those of t^(n + 1). */
function raise(power: number[], t: number, n: number): void {
  const [p, p1, p2] = power as [number, number, number, number];
  power[3] = t * (power[3] as number) + 3 * p2;
  power[2] = t * p2 + 2 * p1;
  power[1] = (n + 1) * p;
  power[0] = t * p;
}
