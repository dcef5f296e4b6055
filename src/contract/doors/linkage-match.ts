import type { z } from "zod";
import {
  type BandFigure,
  type CornerGeometry,
  type Match,
  type MatchedReading,
  type PointDeviation,
  sampleChanges,
  solveMatch,
  TravelBand,
} from "#engines/linkage";
import { computeNormalProbability, type Finding, normalFrom, parameterJet, seededRandom } from "#numeric";
import { degreesFromRadians, radiansFromDegrees } from "#quantity";
import type { Door } from "../door.ts";
import { findDependence } from "./linkage-dependence.ts";
import { drawnToWire } from "./linkage-drawn.ts";
import { checkMatch } from "./linkage-match-check.ts";
import { type MatchInput, type MatchOutput, matchInput, matchOutput } from "./linkage-match-schema.ts";
import { pointNaming, sharedErrors } from "./linkage-one-base.ts";
import { geometryFromWire, sideways } from "./linkage-reading.ts";

const deg = degreesFromRadians;
const metres = ({ x, y, z }: { x: number; y: number; z: number }): PointDeviation => [x / 1000, y / 1000, z / 1000];
const still = (names: readonly string[]): PointDeviation[] => names.map(() => [0, 0, 0]);

function matchOf(wire: MatchInput, geometry: CornerGeometry): Match {
  const naming = pointNaming(geometry);
  const own = new Map(wire.points.map(({ point, sd_mm }) => [naming(point), metres(sd_mm)]));
  const read = (value: number | undefined, u: number | undefined) =>
    value === undefined || u === undefined ? null : { value: radiansFromDegrees(value), u: radiansFromDegrees(u) };
  return solveMatch({
    geometry,
    deviations: (names) => names.map((name) => own.get(name) ?? metres(wire.sd_mm)),
    shared: sharedErrors(wire.one_base, geometry),
    readings: {
      wheel: wire.readings.map((r) => ({
        travel: { value: r.travel_mm / 1000, u: r.travel_u_mm / 1000 },
        camber: read(r.camber_deg, r.camber_u_deg),
        toe: read(r.toe_deg, r.toe_u_deg),
      })),
      lengths: wire.lengths.map(({ link, length_mm, u_mm }) => ({
        link,
        length: { value: length_mm / 1000, u: u_mm / 1000 },
      })),
    },
  });
}

/** Where a height cannot be reached, by the points as they were given or as they were fitted. */
const beyondFold = (path: string, travel: number, foldAt: number): Finding => ({
  code: "beyond-fold",
  path,
  got: String(travel),
  needed: `a travel on this side of the fold at ${(foldAt * 1000).toFixed(4)} mm`,
  hint: "The linkage binds there: it cannot move further.",
});

/** Heights that the points as given do not reach: those read and those asked. */
function findFolds(wire: MatchInput, geometry: CornerGeometry): Finding[] {
  const band = new TravelBand(geometry, still);
  const asked = [
    ...wire.readings.map((r, i) => [`readings[${i}].travel_mm`, r.travel_mm] as const),
    ...wire.travels_mm.map((t, i) => [`travels_mm[${i}]`, t] as const),
  ];
  return asked.flatMap(([path, travel]) => {
    const at = band.solve(travel / 1000);
    return "foldAt" in at ? [beyondFold(path, travel, at.foldAt)] : [];
  });
}

function changeOf(match: Match, before: BandFigure, after: BandFigure, travel: number) {
  const sd = match.posterior.deviation(after.jet);
  const certain = after.value === 0 ? 0.5 : 1;
  return {
    before_deg: deg(before.value),
    before_sd_deg: deg(match.posterior.priorDeviation(before.jet)),
    deg: deg(after.value),
    sd_deg: deg(sd),
    sign_probability: travel === 0 ? null : sd === 0 ? certain : computeNormalProbability(Math.abs(after.value) / sd),
  };
}

function nameOf({ name }: MatchedReading): string {
  return name.kind === "length" ? `lengths[${name.index}].length_mm` : `readings[${name.index}].${name.kind}_deg`;
}

function pointsToWire(wire: MatchInput, match: Match): MatchOutput["points"] {
  const n = 3 * match.errors.names.length;
  return match.errors.names.map((point, i) => {
    const shift = match.shifts[i] ?? [0, 0, 0];
    const sdAlong = (axis: number): number => match.posterior.deviation(parameterJet(0, 3 * i + axis, n)) * 1000;
    return {
      point,
      shift_mm: [shift[0] * 1000, sideways(shift[1] * 1000, wire.side), shift[2] * 1000],
      sd_mm: [sdAlong(0), sdAlong(1), sdAlong(2)],
    };
  });
}

export const linkageMatch: Door<MatchInput> = {
  id: "linkage.match",
  summary: "One corner fitted to its own camber and toe at several heights and to lengths from the bench",
  input: matchInput as unknown as z.ZodType<MatchInput>,
  output: matchOutput,
  relation:
    "least of sum((reading - computed)^2/u^2) + sum((point - given)^2/sd^2), settings of camber and toe free; what stays unsure: I - Jt P J, P = (J Jt + R)^-1 less what the settings explain",
  source: "regularised-least-squares, forward-derivatives, from memory; docs/method/rungs.md",
  accuracy: "slope of the misfit below 1e-4 per standard deviation; derivatives exact (src/engines/linkage/matching)",
  check: checkMatch,
  compute(wire) {
    const geometry = geometryFromWire(wire);
    const dependent = findDependence(geometry);
    if (dependent) return { findings: [dependent] };
    const folds = findFolds(wire, geometry);
    if (folds.length > 0) return { findings: folds };
    const match = matchOf(wire, geometry);
    const before = new TravelBand(geometry, still);
    const after = new TravelBand(match.geometry, still);
    const drawn = wire.draws
      ? sampleChanges(
          geometry,
          match,
          wire.travels_mm.map((t) => t / 1000),
          wire.draws.count,
          normalFrom(seededRandom(wire.draws.seed)),
        )
      : null;
    const findings: Finding[] = [];
    const positions: MatchOutput["positions"] = [];
    wire.travels_mm.forEach((travel, i) => {
      const was = before.solve(travel / 1000);
      const is = after.solve(travel / 1000);
      if ("foldAt" in was || "foldAt" in is) {
        if ("foldAt" in is) findings.push(beyondFold(`travels_mm[${i}]`, travel, is.foldAt));
        return;
      }
      positions.push({
        travel_mm: travel,
        camber_change: changeOf(match, was.camberChange, is.camberChange, travel),
        toe_change: changeOf(match, was.toeChange, is.toeChange, travel),
        ...(drawn ? { drawn: drawnToWire(drawn[i] ?? null) } : {}),
      });
    });
    if (findings.length > 0) return { findings };
    return {
      output: {
        positions,
        points: pointsToWire(wire, match),
        readings: match.readings.map((r) => {
          const show = r.name.kind === "length" ? (x: number) => x * 1000 : deg;
          return {
            reading: nameOf(r),
            observed: show(r.observed),
            fitted: show(r.fitted),
            contradiction: r.contradiction,
          };
        }),
        settled: match.settled,
        chi_squared: match.chiSquared,
        degrees_of_freedom: match.degreesOfFreedom,
        report: { ...match.report },
      },
    };
  },
};
