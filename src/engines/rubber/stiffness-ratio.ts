import {
  addPolynomials,
  differentiatePolynomial,
  multiplyPolynomials,
  type Polynomial,
  scalePolynomial,
} from "#numeric";
import type { HydraulicBush } from "./hydraulic-bush.ts";

/** A complex polynomial of a real variable. */
interface ComplexPolynomial {
  readonly real: Polynomial;
  readonly imaginary: Polynomial;
}

/**
 * K(w) - M w² as a ratio over k_r of two complex polynomials in t = w/scale. As both ends of a search are finite, every
 * place where its size or its angle turns is a root of a real polynomial, and none can be missed between grid points.
 */
export interface StiffnessRatio {
  readonly above: ComplexPolynomial;
  readonly below: ComplexPolynomial;
}

/** The ratio for a sound bush that carries a mass (kg, nought: the bush alone), with t = 1 at `scale` (rad/s). */
export function makeStiffnessRatio(bush: HydraulicBush, mass: number, scale: number): StiffnessRatio {
  const kappa = bush.volume / bush.rubber;
  const inertia = (bush.fluidInertia * scale * scale) / bush.rubber;
  const damping = (bush.fluidDamping * scale) / bush.rubber;
  const carried = (mass * scale * scale) / bush.rubber;
  const zReal: Polynomial = [0, 0, -inertia];
  const zImaginary: Polynomial = [0, damping];
  const below = { real: addPolynomials([kappa], zReal), imaginary: zImaginary };
  const own: Polynomial = [1, 0, -carried];
  const eta = bush.lossFactor;
  return {
    below,
    above: {
      real: addPolynomials(
        multiplyPolynomials(own, below.real),
        scalePolynomial(below.imaginary, -eta),
        scalePolynomial(zReal, kappa),
      ),
      imaginary: addPolynomials(
        multiplyPolynomials(own, below.imaginary),
        scalePolynomial(below.real, eta),
        scalePolynomial(zImaginary, kappa),
      ),
    },
  };
}

const squaredSize = ({ real, imaginary }: ComplexPolynomial): Polynomial =>
  addPolynomials(multiplyPolynomials(real, real), multiplyPolynomials(imaginary, imaginary));

/** Derivative of the angle of a complex polynomial, times its squared size. */
const turning = ({ real, imaginary }: ComplexPolynomial): Polynomial =>
  addPolynomials(
    multiplyPolynomials(real, differentiatePolynomial(imaginary)),
    scalePolynomial(multiplyPolynomials(imaginary, differentiatePolynomial(real)), -1),
  );

/** A polynomial that is nought wherever the angle of the ratio has an extreme. */
export function angleExtremes({ above, below }: StiffnessRatio): Polynomial {
  return addPolynomials(
    multiplyPolynomials(turning(above), squaredSize(below)),
    scalePolynomial(multiplyPolynomials(turning(below), squaredSize(above)), -1),
  );
}

/** A polynomial that is nought wherever the size of the ratio has an extreme. */
export function sizeExtremes({ above, below }: StiffnessRatio): Polynomial {
  const up = squaredSize(above);
  const down = squaredSize(below);
  return addPolynomials(
    multiplyPolynomials(differentiatePolynomial(up), down),
    scalePolynomial(multiplyPolynomials(up, differentiatePolynomial(down)), -1),
  );
}
