import { dependentRows } from "#numeric";
import { buildCornerLinkage } from "./corner-linkage.ts";
import type { CornerGeometry } from "./geometry.ts";
import { MeasureEvaluator } from "./measures.ts";
import { designPose } from "./pose.ts";

/** Below this relative size a combination of constraint gradients counts as nothing. */
const NOTHING = 1e-10;

/**
 * Names of the joints whose constraints are not independent at design (their gradients, angles weighted by 0.3 m, add
 * up to nothing); null where every constraint holds something of its own.
 */
export function findDependentConstraints(geometry: CornerGeometry): string[] | null {
  const linkage = buildCornerLinkage(geometry);
  const { mechanism } = linkage;
  const m = mechanism.constraints.length;
  const n = 6 * mechanism.origins.length;
  const values = new Float64Array(m);
  const rows = new Float64Array(m * n);
  new MeasureEvaluator(mechanism, mechanism.constraints).evaluate(designPose(mechanism.origins.length), 0, values, rows);
  const scaled = Array.from({ length: m }, (_, i) =>
    Array.from({ length: n }, (__, j) => (rows[i * n + j] as number) / (j % 6 < 3 ? 1 : 0.3)),
  );
  const [weights] = dependentRows(scaled, NOTHING);
  if (!weights) return null;
  const names = weights.flatMap((w, i) => (Math.abs(w) > 1e-6 ? [mechanism.constraints[i]?.joint ?? ""] : []));
  return [...new Set(names)];
}
