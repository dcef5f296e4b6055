import { describe, expect, it } from "vitest";
import type { Vector } from "#numeric";
import { compareDerivatives, differentiateAll } from "../../../test/fuzz/differences.ts";
import { movePoint, readCorners } from "../../../test/fuzz/reference-corners.ts";
import type { CornerGeometry } from "./geometry.ts";
import { TravelBand } from "./solve-band.ts";
import { TravelSweep } from "./solve-travel.ts";

const TRAVEL = 0.04;

/** Camber, toe, their gains and the roll centre of a corner, by the ordinary solution. */
function figuresOf(geometry: CornerGeometry, travel: number): number[] {
  const p = new TravelSweep(geometry).solve({ travel, rack: 0 });
  if ("foldAt" in p) throw new Error("folds");
  return [p.attitude.camber, p.attitude.toe, p.camberGain, p.toeGain, p.rollCentreMigrating];
}

const sound = readCorners().filter(({ name }) => name !== "rear_five_link_weak");

describe.each(sound)("the derivatives of $name by its hard points", ({ geometry }) => {
  const band = new TravelBand(geometry, (names) => names.map(() => [1, 1, 1]));
  const found = band.solve(TRAVEL);
  if ("foldAt" in found) throw new Error("folds");
  const jets = [found.camberChange, found.toeChange, found.camberGain, found.toeGain, found.rollCentre].map(
    (f) => f.jet,
  );

  it("agree with differences of the ordinary solution, and are not made of them", () => {
    const { points } = band.jets.linkage.mechanism;
    let same = 0;
    let all = 0;
    points.forEach((point, k) => {
      for (const axis of [0, 1, 2]) {
        const differences = differentiateAll(
          (x) => figuresOf(movePoint(geometry, point as Vector, axis, x), TRAVEL),
          0,
          2e-3,
        );
        const exact = jets.map((jet) => jet[3 * k + axis + 1] as number);
        exact.forEach((e, i) => {
          const scale = Math.max(...jets.map((jet) => Math.abs(jet[3 * k + axis + 1] as number)), 1);
          expect(Math.abs(e - (differences[i] as number)), `${band.jets.linkage.mechanism.pointNames[k]}`).toBeLessThan(
            1e-8 * scale,
          );
        });
        const { identical, entries } = compareDerivatives(exact, differences);
        same += identical;
        all += entries;
      }
    });
    expect(all).toBeGreaterThan(7 * points.length);
    expect(same).toBeLessThan(all / 20);
  });

  it("give no deviation to a change at design, where there is none", () => {
    const still = band.solve(0);
    if ("foldAt" in still) throw new Error("folds");
    expect([still.camberChange.value, still.camberChange.sd, still.toeChange.value, still.toeChange.sd]).toEqual([
      0, 0, 0, 0,
    ]);
  });

  it("have values that are those of the ordinary solution", () => {
    const [camber, toe, camberGain, toeGain, rollCentre] = figuresOf(geometry, TRAVEL) as [
      number,
      number,
      number,
      number,
      number,
    ];
    expect(found.camberChange.value).toBeCloseTo(camber - geometry.wheel.camber, 14);
    expect(found.toeChange.value).toBeCloseTo(toe - geometry.wheel.toe, 14);
    expect(found.camberGain.value).toBeCloseTo(camberGain, 12);
    expect(found.toeGain.value).toBeCloseTo(toeGain, 12);
    expect(found.rollCentre.value).toBeCloseTo(rollCentre, 12);
  });
});
