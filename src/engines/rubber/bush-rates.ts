import type { Metres, NewtonMetresPerRadian, NewtonsPerMetre, Pascals } from "#quantity";

/** A cylinder of rubber bonded to an inner and an outer sleeve. */
export interface BondedBush {
  /** Radius of the inner sleeve's outer face. */
  readonly inner: Metres;
  /** Radius of the outer sleeve's inner face; larger than inner. */
  readonly outer: Metres;
  readonly length: Metres;
  readonly shearModulus: Pascals;
}

export interface BushRates {
  /** Twist about the axis; exact at any length. */
  readonly torsional: NewtonMetresPerRadian;
  /** Push along the axis, as if no end were near. */
  readonly axialLong: NewtonsPerMetre;
  /** Push across the axis, as if no end were near (plane strain): no real bush is stiffer. */
  readonly radialLong: NewtonsPerMetre;
  /** Push across the axis of a thin slice (plane stress): no real bush is softer. */
  readonly radialShort: NewtonsPerMetre;
  /** With its ends free; null where the fit was not made. */
  readonly axial: NewtonsPerMetre | null;
  readonly radial: NewtonsPerMetre | null;
}

/** A proportion exactly on an end of the fitted range counts as in it, however its radii were rounded. */
const SLACK = 1e-12;
const atLeast = (x: number, least: number): boolean => x >= least * (1 - SLACK);
const atMost = (x: number, most: number): boolean => x <= most * (1 + SLACK);

/**
 * (1 + u²) artanh u - u, for 0 < u < 1. Both parts are nearly u for a thin layer of rubber and what is left is of the
 * third order: there by its series, u³ (1 + 1/3) + u⁵ (1/3 + 1/5) + ...
 */
function computeRadialTerm(u: number): number {
  if (u > 0.25) return (1 + u * u) * Math.atanh(u) - u;
  let sum = 0;
  let power = u;
  for (let k = 1; k < 20; k++) {
    power *= u * u;
    sum += power * (1 / (2 * k - 1) + 1 / (2 * k + 1));
  }
  return sum;
}

/**
 * Rates of a bonded cylindrical bush, sleeves rigid, rubber incompressible and linear, end faces free. With l = ln(b/a),
 * s = a² + b², d = b² - a², t = b - a: torsional 4 pi G L a² b²/d; axial, long 2 pi G L/l; radial, long 4 pi G L s/(s l - d)
 * and short 80 pi G L s/(25 s l - 9 d). Of finite length: axial (1 - (0.2305 - 0.0133 l²) t/L) of long; radial from long
 * toward short by tanh(x)/x, x = L/(a + b): fits to own finite elements, axial within 0.2 %, radial within 5 %, for
 * 0.3 <= a/b <= 0.9, L/t <= 12 and L/t >= 1.5 (axial) or 0.5 (radial); null outside. Real rubber is compressible: softer
 * across by 1 to 5 % in common proportions, more in thin layers (keys bush-rates and bush-finite-length in
 * docs/sources.md). Needs 0 < inner < outer and length > 0.
 */
export function computeBushRates(bush: BondedBush): BushRates {
  const { inner: a, outer: b, length: L } = bush;
  const gl = Math.PI * bush.shearModulus * L;
  const wall = b - a;
  const u = wall / (a + b);
  const l = 2 * Math.atanh(u);
  const s = a * a + b * b;
  const d = wall * (a + b);
  const axialLong = (2 * gl) / l;
  const radialLong = (4 * gl * s) / ((a + b) ** 2 * computeRadialTerm(u));
  const radialShort = (80 * gl * s) / (25 * s * l - 9 * d);
  const slenderness = L / wall;
  const fitted = atLeast(a / b, 0.3) && atMost(a / b, 0.9) && atMost(slenderness, 12);
  const x = L / (a + b);
  return {
    torsional: (4 * gl * a * a * b * b) / d,
    axialLong,
    radialLong,
    radialShort,
    axial: fitted && atLeast(slenderness, 1.5) ? axialLong * (1 - (0.2305 - 0.0133 * l * l) / slenderness) : null,
    radial: fitted && atLeast(slenderness, 0.5) ? radialLong - ((radialLong - radialShort) * Math.tanh(x)) / x : null,
  };
}
