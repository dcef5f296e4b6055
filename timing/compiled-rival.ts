import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { buildCornerLinkage } from "#engines/linkage";
import { copyPose, designPose } from "../src/engines/linkage/pose.ts";
import { TravelSolver } from "../src/engines/linkage/travel-solver.ts";
import { ROUNDS } from "./measure.ts";
import { drawCorners, sweep } from "./seeded-corners.ts";

/** Positions per second of the C program, and how far its answers lie from the engine's (metres and rotation entries). */
export interface CompiledRate {
  readonly compiler: string;
  readonly warm: number;
  readonly cold: number;
  readonly apart: number;
}

const source = fileURLToPath(new URL("./rival.c", import.meta.url));
const compilers = ["cc", "gcc", "clang"];

/** Compiles and runs the C program; null where there is no compiler. Throws where it does not run. */
export function rateOfCompiled(repeats: number): CompiledRate | null {
  const compiler = compilers.find((name) => spawnSync(name, ["--version"]).status === 0);
  if (compiler === undefined) return null;
  const folder = mkdtempSync(join(tmpdir(), "timing-"));
  try {
    const program = join(folder, "rival");
    const built = spawnSync(compiler, ["-O2", "-o", program, source, "-lm"], { encoding: "utf8" });
    if (built.status !== 0) throw new Error(`the C program was not compiled: ${built.stderr}`);
    const corners = drawCorners(8);
    const words = [
      [corners.length, sweep.length, repeats, ROUNDS].join(" "),
      ...corners.map((c) => [...c.wheel.centre, ...c.links.flatMap((l) => [...l.inner, ...l.outer])].join(" ")),
      sweep.join(" "),
    ];
    const ran = spawnSync(program, { input: words.join("\n"), encoding: "utf8" });
    const [warm, cold, sum] = ran.stdout.trim().split("\n").map(Number);
    if (ran.status !== 0 || warm === undefined || cold === undefined || sum === undefined)
      throw new Error("the C program did not finish");
    return { compiler, warm: 1e9 / warm, cold: 1e9 / cold, apart: Math.abs(sum - engineSum()) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The sum the C program prints, by the engine: every position once warm and once cold. */
function engineSum(): number {
  const start = designPose(1);
  const pose = designPose(1);
  let sum = 0;
  for (const cold of [false, true])
    for (const corner of drawCorners(8)) {
      const solver = new TravelSolver(buildCornerLinkage(corner));
      copyPose(start, pose);
      for (const travel of sweep) {
        if (cold) copyPose(start, pose);
        solver.solveFrom(pose, travel, 0, "centre-height");
        sum += (pose.t[0] as number) + (pose.t[1] as number) + (pose.r[1] as number) + (pose.r[5] as number);
      }
    }
  return sum;
}
