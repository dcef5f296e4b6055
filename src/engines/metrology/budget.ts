import { computeStudentQuantile } from "./student.ts";

/** One cause of uncertainty. */
export interface Component {
  readonly name: string;
  /** Standard uncertainty in the unit of the cause. */
  readonly u: number;
  /** Change of the result per change of the cause; absent = 1. */
  readonly sensitivity?: number;
  /** How well u itself is known; absent = exactly. */
  readonly degreesOfFreedom?: number;
}

/** Standard uncertainty of a value known to lie within plus or minus a half width and no better (rectangular). */
export const ofHalfWidth = (halfWidth: number): number => halfWidth / Math.sqrt(3);

/** Standard uncertainty that a display of this step adds (rectangular, plus or minus half a step). */
export const ofResolution = (step: number): number => ofHalfWidth(step / 2);

/** Standard uncertainty of a stated plus or minus; `multiple` is that of the statement, usually 2. */
export const ofExpanded = (plusMinus: number, multiple = 2): number => plusMinus / multiple;

export interface BudgetPart {
  readonly name: string;
  /** What this cause alone adds to the result, as a standard uncertainty. */
  readonly u: number;
  /** Its share of the variance. */
  readonly share: number;
}

export interface Budget {
  /** Combined standard uncertainty of the result. */
  readonly u: number;
  /** Effective degrees of freedom (Welch and Satterthwaite); infinite where every part is known exactly. */
  readonly degreesOfFreedom: number;
  readonly parts: readonly BudgetPart[];
}

/** Combines independent causes in squares (JCGM 100, from memory). */
export function combineComponents(components: readonly Component[]): Budget {
  const parts = components.map((c) => Math.abs((c.sensitivity ?? 1) * c.u));
  const u = Math.hypot(...parts);
  const spread = components.reduce((sum, c, i) => {
    const degrees = c.degreesOfFreedom ?? Number.POSITIVE_INFINITY;
    return sum + (u === 0 ? 0 : ((parts[i] as number) / u) ** 4 / degrees);
  }, 0);
  return {
    u,
    degreesOfFreedom: 1 / spread,
    parts: components.map((c, i) => {
      const part = parts[i] as number;
      return { name: c.name, u: part, share: u === 0 ? 0 : (part / u) ** 2 };
    }),
  };
}

/**
 * The part of second order that a product of two independent causes adds where both lie at or near nought
 * (result = factor x a x b): |factor| u(a) u(b).
 */
export const ofProduct = (factor: number, a: number, b: number): number => Math.abs(factor) * a * b;

/** Plus or minus within which the result lies with a confidence: Student's multiple at the whole degrees of freedom below. */
export function computeExpanded(
  budget: Budget,
  confidence: number,
): { readonly multiple: number; readonly plusMinus: number } {
  const degrees = Math.max(1, Math.floor(budget.degreesOfFreedom));
  const multiple = computeStudentQuantile(confidence, degrees);
  return { multiple, plusMinus: multiple * budget.u };
}

export interface Propagation {
  readonly u: readonly number[];
  /** Correlations of the results; 0 where one of the two has no uncertainty. */
  readonly correlation: readonly (readonly number[])[];
}

/**
 * Standard uncertainties and correlations of several results from correlated causes: C' = J C J^T.
 * `jacobian[i][j]` is the change of result i per change of cause j; `correlation` is symmetric with ones on its diagonal.
 */
export function propagateCorrelated(
  jacobian: readonly (readonly number[])[],
  u: readonly number[],
  correlation: readonly (readonly number[])[],
): Propagation {
  const at = (m: readonly (readonly number[])[], i: number, j: number): number => m[i]?.[j] as number;
  const covariance = jacobian.map((_, a) =>
    jacobian.map((_row, b) => {
      let sum = 0;
      u.forEach((ui, i) => {
        u.forEach((uj, j) => {
          sum += at(jacobian, a, i) * ui * at(correlation, i, j) * uj * at(jacobian, b, j);
        });
      });
      return sum;
    }),
  );
  const out = covariance.map((_, i) => Math.sqrt(Math.max(0, at(covariance, i, i))));
  return {
    u: out,
    correlation: covariance.map((row, i) =>
      row.map((c, j) => {
        const scale = (out[i] as number) * (out[j] as number);
        return scale === 0 ? 0 : c / scale;
      }),
    ),
  };
}
