import { readFileSync } from "node:fs";
import { parseBodiesFile } from "#contract";
import {
  buildLayoutLinkage,
  computeLayoutDerivatives,
  LayoutBalance,
  type LayoutEquilibria,
  type LayoutFault,
  NO_LOAD,
  solveLayout,
} from "#engines/linkage";
import { copyPose, designPose } from "../src/engines/linkage/pose.ts";
import { TravelSolver } from "../src/engines/linkage/travel-solver.ts";
import { medianMilliseconds } from "./measure.ts";
import { sweep } from "./seeded-corners.ts";

const HEIGHTS = Array.from({ length: 60 }, (_, i) => (-60 + 2 * i) / 1000);
const BRAKING = 2500;

/** The invented example of two moving bodies with rubber between them. */
function readExample() {
  const text = readFileSync(
    new URL("../docs/examples/layouts/rear-integral-link-rubber.json", import.meta.url),
    "utf8",
  );
  const parsed = parseBodiesFile(text);
  if ("findings" in parsed) throw new Error("the example cannot be read");
  return parsed.value;
}

/** Positions of the rigid layout per second, each from the one before. */
export function rateOfLayout(rounds: number, repeats: number): number {
  const solver = new TravelSolver(buildLayoutLinkage(readExample().layout));
  const start = designPose(solver.linkage.mechanism.origins.length);
  const pose = designPose(solver.linkage.mechanism.origins.length);
  const run = (): void => {
    copyPose(start, pose);
    for (let repeat = 0; repeat < repeats; repeat++)
      for (const travel of sweep) solver.solveFrom(pose, travel, 0, "centre-height");
  };
  return (1000 * sweep.length * repeats) / medianMilliseconds(rounds, run);
}

/** 4 states x 60 heights of the layout under braking: balance and the bands of toe and camber, milliseconds. */
export function timeLayoutStates(rounds: number): { readonly milliseconds: number; readonly positions: number } {
  const { layout, elasticity } = readExample();
  const soft = (factor: number): readonly LayoutFault[] => [{ kind: "soft", part: "arm-front", end: null, factor }];
  const states: readonly { readonly faults: readonly LayoutFault[]; readonly lower: number }[] = [
    { faults: [], lower: 0 },
    { faults: soft(0.25), lower: 0 },
    { faults: soft(1.8), lower: 0 },
    { faults: [], lower: 0.02 },
  ];
  let positions = 0;
  const call = (): void => {
    positions = 0;
    for (const { faults, lower } of states) {
      const balance = new LayoutBalance(buildLayoutLinkage(layout), elasticity, "contact-height", faults);
      let near: LayoutEquilibria | null = null;
      for (const height of HEIGHTS) {
        const load = { ...NO_LOAD, braking: BRAKING, contactRise: height + lower };
        near = solveLayout(balance, load, near);
        if ("unsolved" in near || !computeLayoutDerivatives(balance, near.state)) throw new Error("no balance");
        positions++;
      }
    }
  };
  return { milliseconds: medianMilliseconds(rounds, call), positions };
}
