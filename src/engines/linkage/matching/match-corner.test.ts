import { describe, expect, it } from "vitest";
import { norm, normalFrom, seededRandom, subtract, type Vector } from "#numeric";
import { differentiateAll } from "../../../../test/fuzz/differences.ts";
import { readCorners } from "../../../../test/fuzz/reference-corners.ts";
import type { CornerGeometry } from "../geometry.ts";
import { TravelBand } from "../solve-band.ts";
import { TravelSweep } from "../solve-travel.ts";
import type { CornerReadings } from "./corner-readings.ts";
import { type MatchQuestion, priorErrors, solveMatch } from "./match-corner.ts";
import { sampleChanges } from "./sample-changes.ts";
import { shiftPoints } from "./shift-points.ts";

const distance = (a: Vector, b: Vector): number => norm(subtract(a, b));
const TENTH_DEGREE = 0.1 * (Math.PI / 180);
const corners = readCorners().filter(({ name }) => name !== "rear_five_link_weak");
const NOTHING: CornerReadings = { wheel: [], lengths: [] };

const asked = (geometry: CornerGeometry, sd: number, readings: CornerReadings): MatchQuestion => ({
  geometry,
  deviations: (names) => names.map(() => [sd, sd, sd]),
  shared: [],
  readings,
});

/** Camber and toe of a geometry at a travel, the settings added. */
const angles = (geometry: CornerGeometry, travel: number): { camber: number; toe: number } => {
  const p = new TravelSweep(geometry).solve({ travel, rack: 0 });
  if ("foldAt" in p) throw new Error("folds");
  return { camber: p.attitude.camber, toe: p.attitude.toe };
};

/** What a stand would read of `truth` at some heights. */
const readAt = (
  truth: CornerGeometry,
  travels: readonly number[],
  u: number,
  normal: () => number,
  setting = { camber: 0, toe: 0 },
): CornerReadings => ({
  wheel: travels.map((travel) => {
    const { camber, toe } = angles(truth, travel);
    return {
      travel: { value: travel, u: 0 },
      camber: { value: camber + setting.camber + u * normal(), u },
      toe: { value: toe + setting.toe + u * normal(), u },
    };
  }),
  lengths: [],
});

describe.each(corners)("a $name matched to its own readings", ({ geometry }) => {
  it("stays where it is, with the band of its tolerances, where nothing was read", () => {
    const match = solveMatch(asked(geometry, 0.002, NOTHING));
    expect(match.report).toEqual({ end: "converged", iterations: 0, residual: 0 });
    expect(match.settled).toBe(0);
    const plain = new TravelBand(geometry, (names) => names.map(() => [0.002, 0.002, 0.002])).solve(0.03);
    if ("foldAt" in plain) throw new Error("folds");
    expect(match.posterior.deviation(plain.toeChange.jet) / plain.toeChange.sd).toBeCloseTo(1, 12);
  });

  it("comes to rest where the misfit has no slope, by differences of an own misfit", () => {
    const errors = priorErrors(asked(geometry, 0.003, NOTHING));
    const random = seededRandom(7);
    const normal = normalFrom(random);
    const truth = shiftPoints(geometry, errors.shifts(Float64Array.from({ length: errors.count }, normal)));
    const readings = readAt(truth, [-0.04, 0, 0.04], TENTH_DEGREE, normal);
    const match = solveMatch(asked(geometry, 0.003, readings));
    expect(match.report.end).toBe("converged");
    const misfit = (sources: Float64Array): number => {
      const moved = shiftPoints(geometry, errors.shifts(sources));
      let sum = sources.slice(0, errors.count).reduce((s, x) => s + x * x, 0);
      // The settings are free: what is left about the mean of each kind counts.
      for (const kind of ["camber", "toe"] as const) {
        const left = readings.wheel.map((r) => angles(moved, r.travel.value)[kind] - (r[kind]?.value ?? 0));
        const mean = left.reduce((a, b) => a + b, 0) / left.length;
        sum += left.reduce((s, x) => s + ((x - mean) / TENTH_DEGREE) ** 2, 0);
      }
      return sum;
    };
    expect(misfit(match.sources)).toBeCloseTo(match.chiSquared, 8);
    for (const k of [0, 4, 8, 13]) {
      const [slope] = differentiateAll(
        (x) => {
          const sources = match.sources.slice();
          sources[k] = (sources[k] as number) + x;
          return [misfit(sources)];
        },
        0,
        1e-2,
      );
      expect(Math.abs(slope as number), `source ${k}`).toBeLessThan(1e-4);
    }
  });

  it("leaves the settings free: readings all set otherwise by the same angles change nothing but the settings", () => {
    const normal = normalFrom(seededRandom(8));
    const truth = priorErrors(asked(geometry, 0.003, NOTHING));
    const other = shiftPoints(geometry, truth.shifts(Float64Array.from({ length: truth.count }, normal)));
    const exact = readAt(other, [-0.04, 0, 0.04], TENTH_DEGREE, () => 0);
    const set = readAt(other, [-0.04, 0, 0.04], TENTH_DEGREE, () => 0, { camber: 0.2, toe: -0.1 });
    const [plain, moved] = [solveMatch(asked(geometry, 0.003, exact)), solveMatch(asked(geometry, 0.003, set))];
    expect(moved.chiSquared).toBeCloseTo(plain.chiSquared, 9);
    expect(moved.settings.camber - plain.settings.camber).toBeCloseTo(0.2, 10);
    expect(moved.settings.toe - plain.settings.toe).toBeCloseTo(-0.1, 10);
    moved.shifts.forEach((shift, i) => {
      expect(distance(shift, plain.shifts[i] ?? [1, 1, 1])).toBeLessThan(1e-10);
    });
  });

  it("learns nothing of the points from one height: it serves the setting", () => {
    const match = solveMatch(
      asked(
        geometry,
        0.003,
        readAt(geometry, [0.02], TENTH_DEGREE, () => 1),
      ),
    );
    expect(match.report.end).toBe("converged");
    expect(match.settled).toBeCloseTo(0, 9);
    expect(match.degreesOfFreedom).toBe(0);
    for (const { contradiction } of match.readings) expect(contradiction).toBe(0);
  });

  it("foresees heights nobody read better than before, and no surer than it should be", () => {
    const errors = priorErrors(asked(geometry, 0.004, NOTHING));
    const normal = normalFrom(seededRandom(20));
    const unread = 0.03;
    let [before, after, inside] = [0, 0, 0];
    const tries = 12;
    for (let k = 0; k < tries; k++) {
      const truth = shiftPoints(geometry, errors.shifts(Float64Array.from({ length: errors.count }, normal)));
      const setting = { camber: 0.01 * normal(), toe: 0.005 * normal() };
      const readings = readAt(truth, [-0.05, -0.025, 0, 0.05], TENTH_DEGREE / 5, normal, setting);
      const match = solveMatch(asked(geometry, 0.004, readings));
      expect(match.report.end).toBe("converged");
      const change = (g: CornerGeometry): number => angles(g, unread).toe - g.wheel.toe;
      const band = new TravelBand(match.geometry, (names) => names.map(() => [0, 0, 0])).solve(unread);
      if ("foldAt" in band) throw new Error("folds");
      const sd = match.posterior.deviation(band.toeChange.jet);
      expect(sd).toBeLessThan(match.posterior.priorDeviation(band.toeChange.jet));
      before += (change(geometry) - change(truth)) ** 2;
      after += (change(match.geometry) - change(truth)) ** 2;
      if (Math.abs(change(match.geometry) - change(truth)) < 2 * sd) inside++;
    }
    expect(after).toBeLessThan(before / 4);
    // 95.4 % of 12 are 11.4; fewer than 8 come about once in some ten thousand seeds.
    expect(inside).toBeGreaterThanOrEqual(8);
  });
});

describe("a matched corner", () => {
  const geometry = corners.find(({ name }) => name === "rear_five_link")?.geometry ?? corners[0]?.geometry;
  if (!geometry) throw new Error("no corner");
  const [link] = geometry.links;
  if (!link) throw new Error("no link");
  const length = distance(link.inner, link.outer);

  it("takes a length of the bench as the weighted mean of bench and points", () => {
    const [sd, u, read] = [1e-5, 2e-5, length + 3e-5];
    const readings = { wheel: [], lengths: [{ link: link.name, length: { value: read, u } }] };
    const match = solveMatch(asked(geometry, sd, readings));
    const foreseen = 2 * sd ** 2;
    const mean = (length * u ** 2 + read * foreseen) / (u ** 2 + foreseen);
    const moved = match.geometry.links[0];
    expect(moved && Math.abs(distance(moved.inner, moved.outer) - mean)).toBeLessThan(1e-10);
    expect(match.settled).toBeCloseTo(foreseen / (u ** 2 + foreseen), 9);
    expect(match.readings[0]?.contradiction).toBeCloseTo((read - length) / Math.sqrt(foreseen + u ** 2), 5);
  });

  it("moves points of one base together, and leaves those known exactly", () => {
    const readings = { wheel: [], lengths: [{ link: link.name, length: { value: length + 0.001, u: 1e-4 } }] };
    const inner = `${link.name}.inner`;
    const other = `${geometry.links[1]?.name}.inner`;
    const match = solveMatch({
      geometry,
      deviations: (names) => names.map(() => [0, 0, 0]),
      shared: [{ points: [inner, other], sd: [0.002, 0.002, 0.002] }],
      readings,
    });
    const shift = (name: string) => match.shifts[match.errors.names.indexOf(name)];
    expect(shift(inner)).toEqual(shift(other));
    expect(Math.hypot(...(shift(inner) ?? [0, 0, 0]))).toBeGreaterThan(5e-4);
    match.errors.names.forEach((name) => {
      if (name !== inner && name !== other) expect(shift(name)).toEqual([0, 0, 0]);
    });
  });

  it("names the one reading that contradicts the others", () => {
    const normal = normalFrom(seededRandom(3));
    const { wheel } = readAt(geometry, [-0.05, -0.025, 0, 0.025, 0.05], TENTH_DEGREE / 5, normal);
    const slipped = wheel.map((r, i) =>
      i === 3 && r.toe ? { ...r, toe: { ...r.toe, value: r.toe.value + 5 * TENTH_DEGREE } } : r,
    );
    const match = solveMatch(asked(geometry, 0.001, { wheel: slipped, lengths: [] }));
    const worst = [...match.readings].sort((a, b) => Math.abs(b.contradiction) - Math.abs(a.contradiction))[0];
    expect(worst?.name).toEqual({ kind: "toe", index: 3 });
    expect(Math.abs(worst?.contradiction ?? 0)).toBeGreaterThan(5);
  });

  it("is as wide by drawn geometries as by derivatives where tolerances are small, and draws the same for a seed", () => {
    const readings = readAt(geometry, [-0.04, 0, 0.04], TENTH_DEGREE, () => 0);
    const match = solveMatch(asked(geometry, 0.0005, readings));
    const draw = () => sampleChanges(geometry, match, [0.03], 1500, normalFrom(seededRandom(11)))[0];
    const sampled = draw();
    const band = new TravelBand(match.geometry, (names) => names.map(() => [0, 0, 0])).solve(0.03);
    if ("foldAt" in band || !sampled) throw new Error("folds");
    const sd = match.posterior.deviation(band.toeChange.jet);
    // The relative scatter of a standard deviation from 1500 draws is 1/sqrt(3000) = 1.8 %.
    expect(Math.abs(sampled.toeChange.sd / sd - 1)).toBeLessThan(0.08);
    expect(Math.abs(sampled.toeChange.mean - band.toeChange.value)).toBeLessThan(0.15 * sd);
    expect(draw()).toEqual(sampled);
  });

  it("says that a height cannot be reached, and gives the points back as they were", () => {
    const readings: CornerReadings = {
      wheel: [{ travel: { value: 3, u: 0 }, camber: { value: 0, u: TENTH_DEGREE }, toe: null }],
      lengths: [],
    };
    const match = solveMatch(asked(geometry, 0.001, readings));
    expect(match.report.end).toBe("infeasible");
    expect(match.geometry).toBe(geometry);
  });
});
