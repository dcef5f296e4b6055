import { describe, expect, it } from "vitest";
import { buildCornerLinkage, computeSpinAxis, findDependentConstraints, TravelSweep } from "#engines/linkage";
import { makeRandom } from "./differences.ts";
import { followBranch } from "./own-continuation.ts";
import { disturb, readCorners } from "./reference-corners.ts";

const corners = readCorners();
const TRIALS = 10_000;
/** Of the corners that close, one in so many is followed by the second continuation too; of those that fold, every one. */
const FOLLOWED = 100;
/** Metres: far enough that a good share of the branches end before the asked travel. */
const DISTURBANCE = 0.08;
const TRAVEL = 0.09;

describe("10,000 disturbed corners", () => {
  it("close where a second continuation closes, at the same place, and fold where it folds", () => {
    const random = makeRandom(20_240_917);
    let folds = 0;
    for (let trial = 0; trial < TRIALS; trial++) {
      const { name, geometry } = corners[trial % corners.length] as (typeof corners)[number];
      const { spring: _spring, damper: _damper, ...bare } = geometry;
      const corner = disturb(bare, random, DISTURBANCE);
      const travel = random() < 0.5 ? -TRAVEL : TRAVEL;
      expect(findDependentConstraints(buildCornerLinkage(corner).mechanism)).toBeNull();
      const got = new TravelSweep(corner).solve({ travel, rack: 0 });
      if ("attitude" in got) expect(got.closure, `${name}, trial ${trial}`).toBeLessThan(1e-12);
      if ("attitude" in got && trial % FOLLOWED > 0) continue;
      const own = followBranch(corner, computeSpinAxis(corner.wheel.camber, corner.wheel.toe), travel);
      const what = `${name}, trial ${trial}`;
      if (!own) throw new Error(`the second continuation does not end: ${what}`);
      expect("foldAt" in got, what).toBe("foldAt" in own);
      if ("foldAt" in own) {
        folds++;
        expect("foldAt" in got && Math.abs(got.foldAt - own.foldAt), what).toBeLessThan(1e-7);
      } else if ("attitude" in got) {
        const { centre, axis } = got.attitude;
        const off = [0, 1, 2].flatMap((i) => [
          Math.abs((centre[i] as number) - (own.centre[i] as number)),
          Math.abs((axis[i] as number) - (own.axis[i] as number)),
        ]);
        expect(Math.max(...off), what).toBeLessThan(1e-9);
      }
    }
    expect(folds).toBeGreaterThan(1000);
    expect(folds).toBeLessThan(2000);
  }, 300_000);
});
