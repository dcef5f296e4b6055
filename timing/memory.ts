import { buildCornerLinkage } from "#engines/linkage";
import { designPose } from "../src/engines/linkage/pose.ts";
import { TravelSolver } from "../src/engines/linkage/travel-solver.ts";
import { drawCorners, sweep } from "./seeded-corners.ts";

/** Memory in use after collection, bytes, at the start of a long run and at its end. */
export interface MemoryGrowth {
  readonly solves: number;
  readonly before: number;
  readonly after: number;
}

/** Solves `solves` positions in one go; needs node --expose-gc. */
export function measureMemory(solves: number): MemoryGrowth {
  const { gc } = globalThis;
  if (!gc) throw new Error("start node with --expose-gc");
  const [corner] = drawCorners(1);
  if (!corner) throw new Error("no corner was drawn");
  const solver = new TravelSolver(buildCornerLinkage(corner));
  const pose = designPose(1);
  const inUse = (): number => {
    gc();
    const { heapUsed, external, arrayBuffers } = process.memoryUsage();
    return heapUsed + external + arrayBuffers;
  };
  const run = (count: number): void => {
    for (let i = 0; i < count; i++) solver.solveFrom(pose, sweep[i % sweep.length] as number, 0, "centre-height");
  };
  // Compiled code and caches are there after the first hundred thousand.
  run(100_000);
  const before = inUse();
  run(solves);
  return { solves, before, after: inUse() };
}
