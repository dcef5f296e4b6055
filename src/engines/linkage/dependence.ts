import { cross, dependentRows, dot, subtract, unitVector } from "#numeric";
import type { CornerGeometry } from "./geometry.ts";
import { MeasureEvaluator } from "./measures.ts";
import type { Mechanism } from "./mechanism.ts";
import { designPose } from "./pose.ts";

/** Below this relative size a combination of constraint gradients counts as nothing. */
const NOTHING = 1e-10;

/** Constraint gradients at design, angles weighted by 0.3 m, with the joint each belongs to. */
function gradientsAtDesign(mechanism: Mechanism): { rows: number[][]; joints: string[] } {
  const m = mechanism.constraints.length;
  const n = 6 * mechanism.origins.length;
  const values = new Float64Array(m);
  const rows = new Float64Array(m * n);
  new MeasureEvaluator(mechanism, mechanism.constraints).evaluate(
    designPose(mechanism.origins.length),
    0,
    values,
    rows,
  );
  return {
    rows: Array.from({ length: m }, (_, i) =>
      Array.from({ length: n }, (__, j) => (rows[i * n + j] as number) / (j % 6 < 3 ? 1 : 0.3)),
    ),
    joints: mechanism.constraints.map((c) => c.joint),
  };
}

/** Names of the joints that take part in a vanishing combination of rows. */
function namesIn(weights: readonly number[], joints: readonly string[]): string[] {
  return [...new Set(weights.flatMap((w, i) => (Math.abs(w) > 1e-6 && joints[i] !== undefined ? [joints[i]] : [])))];
}

/**
 * Names of the joints whose constraints are not independent at design (their gradients add up to nothing); null where
 * every constraint holds something of its own.
 */
export function findDependentConstraints(mechanism: Mechanism): string[] | null {
  const { rows, joints } = gradientsAtDesign(mechanism);
  const [weights] = dependentRows(rows, NOTHING);
  return weights ? namesIn(weights, joints) : null;
}

/**
 * Names of the joints that together keep the wheel centre from rising at design (the one motion they leave is level);
 * null where it can rise. The constraints must be independent.
 */
export function findTravelBlock(mechanism: Mechanism): string[] | null {
  const { rows, joints } = gradientsAtDesign(mechanism);
  const rise = Array.from({ length: 6 * mechanism.origins.length }, (_, j) => (j === 2 ? 1 : 0));
  const [weights] = dependentRows([...rows, rise], NOTHING);
  return weights ? namesIn(weights, joints) : null;
}

/** A link whose line passes the strut line nearer than this holds nothing against a turn about it (metres, invented). */
const LEAST_LEVER = 1e-3;

/**
 * Whether every link's line meets the strut line at design, so that nothing holds the knuckle against turning about it and
 * the wheel steers itself; false without a strut.
 */
export function turnsAboutStrut({ strut, links }: Pick<CornerGeometry, "strut" | "links">): boolean {
  if (!strut) return false;
  const line = unitVector(subtract(strut.top, strut.axisPoint));
  return links.every(({ inner, outer }) => {
    const along = unitVector(subtract(outer, inner));
    return Math.abs(dot(cross(subtract(outer, strut.top), along), line)) < LEAST_LEVER;
  });
}
