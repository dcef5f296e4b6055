import { solveDeficient } from "#numeric";
import type { CornerLoad } from "./elastic-corner.ts";
import { type Balance, type Branch, type ElasticBalance, isStride, REACH, SETTLED_PROMISED } from "./equilibrium.ts";
import { advancePose, clonePose, orthonormalise, type Pose } from "./pose.ts";

const LIMIT = 40;
/** Least over largest pivot below which a stiffness leaves a move free. */
const LEAVES_FREE = 1e-12;
/** The same on the way there: a move that is nearly free is left where it is. */
const NEARLY_FREE = 1e-6;
/** Sizes that make a turn comparable with a shift (m), and the force of a rigid member with that of an elastic one (N). */
const ARM = 0.3;
const FORCE = 1000;
/** Force, N (moment, N m; gap, m), below which nothing is left unbalanced. */
const NOTHING_LEFT = 1e-6;

/**
 * A balance near a pose where the members leave some moves free, with how many; null where there is none near or nothing
 * is free. Newton by an elimination that leaves free unknowns where they are.
 */
export function findFreeBalance(
  balance: ElasticBalance,
  start: Pose,
  load: CornerLoad,
  startLoad: number,
  branch: Branch,
): Balance | null {
  const pose = clonePose(start);
  const { rigid, right, factorisation, size } = balance;
  const multipliers = new Float64Array(Math.max(1, rigid.length));
  let wheelLoad = startLoad;
  const sizes = Array.from({ length: size }, (_, i) => (i < 3 ? 1 : i < 6 ? 1 / ARM : FORCE));
  for (let iterations = 0; iterations < LIMIT; iterations++) {
    const forces: number[] = [];
    const values: number[] = [];
    balance.assemble(pose, load, wheelLoad, branch, multipliers, forces, values);
    if (!right.every(Number.isFinite)) return null;
    const { x } = solveDeficient(factorisation.lu, right, sizes, NEARLY_FREE);
    const left = Math.max(...right.map(Math.abs));
    const step = Math.max(...x.subarray(0, 6).map(Math.abs));
    if (step <= SETTLED_PROMISED) {
      // What the free moves would have to carry must be nothing, else there is no balance here.
      const { free } = solveDeficient(factorisation.lu, right, sizes, LEAVES_FREE);
      if (free === 0 || left > NOTHING_LEFT) return null;
      const report = { end: "singular" as const, iterations, residual: step };
      return { pose, forces, values, wheelLoad, branch, sign: 0, report, freeMoves: free };
    }
    advancePose(pose, x);
    orthonormalise(pose);
    for (let i = 0; i < rigid.length; i++) multipliers[i] = (multipliers[i] as number) + (x[6 + i] as number);
    if (balance.corner.hold === "contact-height") wheelLoad += x[size - 1] as number;
    if (!isStride(start, pose, REACH)) return null;
  }
  return null;
}
