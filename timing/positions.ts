import { levenbergMarquardt } from "ml-levenberg-marquardt";
import { buildCornerLinkage, type CornerGeometry, type Pose } from "#engines/linkage";
import { MeasureEvaluator } from "../src/engines/linkage/measures.ts";
import { advancePose, copyPose, designPose } from "../src/engines/linkage/pose.ts";
import { TravelSolver } from "../src/engines/linkage/travel-solver.ts";
import { medianMilliseconds, ROUNDS } from "./measure.ts";
import { drawCorners, sweep } from "./seeded-corners.ts";

/** Positions per second of one way to solve, and how far its joints were open at worst, metres. */
export interface Rate {
  readonly warm: number;
  readonly cold: number;
  readonly closure: number;
}

/** A solver that takes a pose to a travel in place and returns the largest joint error, metres. */
type Solve = (pose: Pose, travel: number) => number;

const corners = drawCorners(8);

/** Runs the same sweeps warm (from the position before) and cold (from design). */
function rateOf(make: (corner: CornerGeometry) => Solve, repeats: number): Rate {
  const solvers = corners.map(make);
  const start = designPose(1);
  const pose = designPose(1);
  let closure = 0;
  const run = (cold: boolean) => () => {
    for (const solve of solvers) {
      copyPose(start, pose);
      for (let repeat = 0; repeat < repeats; repeat++)
        for (const travel of sweep) {
          if (cold) copyPose(start, pose);
          closure = Math.max(closure, solve(pose, travel));
        }
    }
  };
  const count = corners.length * sweep.length * repeats;
  const perSecond = (cold: boolean): number => (1000 * count) / medianMilliseconds(ROUNDS, run(cold));
  return { warm: perSecond(false), cold: perSecond(true), closure };
}

/** The engine: one Newton from the pose given. */
export function rateOfEngine(repeats: number): Rate {
  return rateOf((corner) => {
    const solver = new TravelSolver(buildCornerLinkage(corner));
    return (pose, travel) => solver.solveFrom(pose, travel, 0, "centre-height").residual;
  }, repeats);
}

/** Change of the rotation vector into a turn of the body: the left Jacobian of exp(w) at w, row-major. */
function turnOf(x: number, y: number, z: number): readonly number[] {
  const a2 = x * x + y * y + z * z;
  const a = Math.sqrt(a2);
  const b = a < 1e-4 ? 0.5 - a2 / 24 : (1 - Math.cos(a)) / a2;
  const c = a < 1e-4 ? 1 / 6 - a2 / 120 : (a - Math.sin(a)) / (a2 * a);
  return [
    1 - c * (y * y + z * z),
    c * x * y - b * z,
    c * x * z + b * y,
    c * x * y + b * z,
    1 - c * (x * x + z * z),
    c * y * z - b * x,
    c * x * z - b * y,
    c * y * z + b * x,
    1 - c * (x * x + y * y),
  ];
}

/** The rival stops when the sum of squares is below this: joints within about 1e-12 m, as the engine promises. */
const ENOUGH = 1e-24;

/**
 * The general least-squares package on the same six errors with the same analytic Jacobian and the same start: unknown are
 * the shift and the rotation vector from the pose given.
 */
export function rateOfLeastSquares(repeats: number): Rate {
  return rateOf((corner) => {
    const { mechanism } = buildCornerLinkage(corner);
    const evaluator = new MeasureEvaluator(mechanism, mechanism.constraints);
    const [design, values, rows] = [new Float64Array(5), new Float64Array(5), new Float64Array(36)];
    evaluator.evaluate(designPose(1), 0, design, rows);
    const trial = designPose(1);
    const data = { x: [0, 1, 2, 3, 4, 5], y: [0, 0, 0, 0, 0, 0] };
    return (pose, travel) => {
      const place = (step: readonly number[]): void => {
        copyPose(pose, trial);
        advancePose(trial, Float64Array.from(step));
        evaluator.evaluate(trial, 0, values, rows);
      };
      const errors = (step: number[]) => {
        place(step);
        const now = [...values.map((v, i) => v - (design[i] as number)), (trial.t[2] as number) - travel];
        return (i: number): number => now[i] as number;
      };
      const jacobian = (step: number[]) => {
        place(step);
        const turn = turnOf(step[3] as number, step[4] as number, step[5] as number);
        const derivatives = Array.from({ length: 5 }, (_, i) => {
          const g = (j: number): number => rows[6 * i + j] as number;
          const w = [0, 1, 2].map(
            (j) => g(3) * (turn[j] as number) + g(4) * (turn[3 + j] as number) + g(5) * (turn[6 + j] as number),
          );
          return [g(0), g(1), g(2), ...w];
        });
        derivatives.push([0, 0, 1, 0, 0, 0]);
        return (i: number): number[] => derivatives[i] as number[];
      };
      const { parameterValues } = levenbergMarquardt(data, errors, {
        initialValues: [0, 0, 0, 0, 0, 0],
        jacobianFunction: jacobian,
        damping: 1e-9,
        errorTolerance: ENOUGH,
        maxIterations: 30,
      });
      const left = errors(parameterValues);
      copyPose(trial, pose);
      return Math.max(...data.x.map((i) => Math.abs(left(i))));
    };
  }, repeats);
}
