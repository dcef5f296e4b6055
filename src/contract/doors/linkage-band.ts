import { z } from "zod";
import {
  type BandFigure,
  differenceOf,
  FaultBand,
  type JetCorner,
  type PointDeviation,
  type PointErrors,
  priorErrors,
  sampleChanges,
  solveMatch,
  TravelBand,
} from "#engines/linkage";
import { computeNormalProbability, type Finding, type Jet, normalFrom, seededRandom } from "#numeric";
import { degreesFromRadians } from "#quantity";
import type { Door } from "../door.ts";
import { checkCorner, checkElasticity, checkSeat } from "./linkage-check.ts";
import { findDependence } from "./linkage-dependence.ts";
import { drawnToWire } from "./linkage-drawn.ts";
import { checkBases } from "./linkage-match-check.ts";
import { drawnChanges, drawsSchema, oneBase } from "./linkage-match-schema.ts";
import { sharedErrors } from "./linkage-one-base.ts";
import { elasticityFromWire, faultsFromWire, geometryFromWire, type WireElasticity } from "./linkage-reading.ts";
import { axleName, cornerKeys, memberSchema, rubberSchema, softSchema, springSchema } from "./linkage-schema.ts";
import { isObject } from "./loose-corner.ts";

const sd = z.number().min(0);
const compliance = z.strictObject({
  spring: springSchema,
  rubber: z
    .array(rubberSchema.extend({ rate_sd_share: z.number().min(0).max(10).optional() }))
    .max(60)
    .default([]),
  members: z.array(memberSchema).max(20).default([]),
  wheel_load_n: z.number().positive(),
  fault: softSchema.optional(),
});
const input = z.strictObject({
  ...cornerKeys,
  axle: axleName.optional(),
  sd_mm: z.strictObject({ x: sd, y: sd, z: sd }),
  one_base: oneBase,
  draws: drawsSchema.optional(),
  travels_mm: z.array(z.number()).min(1).max(2000),
  compliance: compliance.optional(),
});

const ranked = z.array(z.strictObject({ point: z.string(), axis: z.enum(["x", "y", "z"]), share: z.number() }));
const rankedKeys = {
  camber_change: ranked.optional(),
  toe_change: ranked.optional(),
  camber_gain: ranked,
  toe_gain: ranked,
  roll_centre_height: ranked,
};
const position = z.strictObject({
  travel_mm: z.number(),
  camber_change_deg: z.number(),
  camber_change_sd_deg: z.number(),
  toe_change_deg: z.number(),
  toe_change_sd_deg: z.number(),
  camber_gain_deg_per_m: z.number(),
  camber_gain_sd_deg_per_m: z.number(),
  toe_gain_deg_per_m: z.number(),
  toe_gain_sd_deg_per_m: z.number(),
  roll_centre_height_mm: z.number(),
  roll_centre_height_sd_mm: z.number(),
  toe_sign_probability: z.number().nullable(),
  drawn: drawnChanges.optional(),
  top: z.strictObject(rankedKeys),
});
const difference = z.strictObject({
  sound_toe_deg_per_kn: z.number(),
  torn_toe_deg_per_kn: z.number(),
  difference_deg_per_kn: z.number(),
  sound_sd_deg_per_kn: z.number(),
  torn_sd_deg_per_kn: z.number(),
  difference_sd_deg_per_kn: z.number(),
  sound_sd_share: z.number().nullable(),
  difference_sd_share: z.number().nullable(),
});
const output = z.strictObject({ positions: z.array(position), difference: difference.optional() });

type Input = z.output<typeof input>;
type Compliance = z.output<typeof compliance>;

const AXES = ["x", "y", "z"] as const;
const LISTED = 5;

/** The five coordinates with the largest shares of the variance. */
function rankShares(jets: JetCorner, jet: Jet): z.output<typeof ranked> {
  const shares = jets.shares(jet);
  return jets.parameters
    .flatMap((p, i) =>
      p.kind === "coordinate"
        ? [{ point: jets.linkage.mechanism.pointNames[p.point] ?? "", axis: AXES[p.axis], share: shares[i] as number }]
        : [],
    )
    .filter((entry) => entry.share > 0)
    .sort((a, b) => b.share - a.share)
    .slice(0, LISTED);
}

/** Chance that the sign is as computed; null at ride height, where there is no change. */
function signProbability(figure: BandFigure, travel: number): number | null {
  if (travel === 0) return null;
  if (figure.sd === 0) return figure.value === 0 ? 0.5 : 1;
  return computeNormalProbability(Math.abs(figure.value) / figure.sd);
}

function computeDifference(
  wire: Input,
  c: Compliance,
  points: ReturnType<PointErrors["spread"]>,
): { output: z.output<typeof difference> } | { findings: Finding[] } {
  const geometry = geometryFromWire(wire, c.spring);
  const elastic: WireElasticity = {
    rate_n_per_mm: c.spring.rate_n_per_mm,
    rubber: c.rubber,
    members: c.members,
    wheel_load_n: c.wheel_load_n,
  };
  const elasticity = elasticityFromWire(elastic, wire.side, wire.strut);
  const rates = c.rubber.flatMap((r) =>
    r.rate_sd_share !== undefined ? [{ name: `${r.link}.${r.end ?? "inner"}`, sd: r.rate_sd_share }] : [],
  );
  const band = (faults: readonly z.output<typeof softSchema>[]): FaultBand =>
    new FaultBand(
      { geometry, elasticity, hold: "wheel-load", faults: faultsFromWire(faults) },
      () => points.deviations,
      rates,
      () => points.correlations,
    );
  const sound = band([]);
  if (!sound.solver.carries)
    return {
      findings: [
        {
          code: "cannot-carry",
          path: "compliance.spring",
          got: "a spring that does not carry the wheel",
          needed: "a spring whose length changes when the wheel rises",
          hint: "Look at the spring's points.",
        },
      ],
    };
  const torn = band(c.fault ? [c.fault] : []);
  const soundToe = sound.tangentBand();
  const tornToe = torn.tangentBand();
  if (!soundToe || !tornToe)
    return {
      findings: [
        {
          code: "no-equilibrium",
          path: "compliance",
          got: "a corner that finds no balance",
          needed: "rates with which the wheel load is carried",
          hint: "Look at the fault's factor and the rates.",
        },
      ],
    };
  const perKn = (radiansPerNewton: number): number => degreesFromRadians(radiansPerNewton) * 1000;
  const d = differenceOf(sound.jets, tornToe.toe, soundToe.toe);
  const share = (s: number, v: number): number | null => (v === 0 ? null : s / Math.abs(v));
  const soundSd = sound.jets.deviation(soundToe.toe);
  return {
    output: {
      sound_toe_deg_per_kn: perKn(soundToe.toe[0] as number),
      torn_toe_deg_per_kn: perKn(tornToe.toe[0] as number),
      difference_deg_per_kn: perKn(d.value),
      sound_sd_deg_per_kn: perKn(soundSd),
      torn_sd_deg_per_kn: perKn(torn.jets.deviation(tornToe.toe)),
      difference_sd_deg_per_kn: perKn(d.sd),
      sound_sd_share: share(soundSd, soundToe.toe[0] as number),
      difference_sd_share: share(d.sd, d.value),
    },
  };
}

export const linkageBand: Door<Input> = {
  id: "linkage.band",
  summary: "What the tolerances of hard points do to the figures of one corner, and which coordinate does most",
  input: input as unknown as z.ZodType<Input>,
  output,
  relation:
    "sd = sqrt(sum of (derivative x sd)^2, points of one base with their correlations), derivatives exact by jets through the Jacobian of the nominal pose; drawn: geometries drawn from the same errors, each solved in full",
  source: "GUM (JCGM 100) law of propagation, from memory; definitions in docs/method/linkage.md",
  accuracy: "1e-7 relative against complex-step derivatives of an independent program (docs/verification.md)",
  check(document) {
    if (!isObject(document)) return [];
    const c = isObject(document.compliance) ? document.compliance : null;
    return [
      ...checkCorner(document),
      ...checkBases(document),
      ...(c
        ? [...checkSeat(c.spring, "compliance.spring", document), ...checkElasticity(c, "compliance", document)]
        : []),
    ];
  },
  compute(wire) {
    const geometry = geometryFromWire(wire);
    const dependent = findDependence(geometry);
    if (dependent) return { findings: [dependent] };
    const one: PointDeviation = [wire.sd_mm.x / 1000, wire.sd_mm.y / 1000, wire.sd_mm.z / 1000];
    const prior = {
      geometry,
      deviations: (names: readonly string[]): PointDeviation[] => names.map(() => one),
      shared: sharedErrors(wire.one_base, geometry),
    };
    const points = priorErrors(prior).spread();
    const band = new TravelBand(
      geometry,
      () => points.deviations,
      () => points.correlations,
    );
    const drawn =
      wire.draws &&
      sampleChanges(
        geometry,
        solveMatch({ ...prior, readings: { wheel: [], lengths: [] } }),
        wire.travels_mm.map((travel) => travel / 1000),
        wire.draws.count,
        normalFrom(seededRandom(wire.draws.seed)),
      );
    const findings: Finding[] = [];
    const positions: z.output<typeof position>[] = [];
    wire.travels_mm.forEach((travel, i) => {
      const p = band.solve(travel / 1000);
      if ("foldAt" in p) {
        findings.push({
          code: "beyond-fold",
          path: `travels_mm[${i}]`,
          got: String(travel),
          needed: `a travel on this side of the fold at ${(p.foldAt * 1000).toFixed(4)} mm`,
          hint: "The linkage binds there: it cannot move further.",
        });
        return;
      }
      const deg = degreesFromRadians;
      const ranks = (f: BandFigure): z.output<typeof ranked> => rankShares(band.jets, f.jet);
      positions.push({
        travel_mm: travel,
        camber_change_deg: deg(p.camberChange.value),
        camber_change_sd_deg: deg(p.camberChange.sd),
        toe_change_deg: deg(p.toeChange.value),
        toe_change_sd_deg: deg(p.toeChange.sd),
        camber_gain_deg_per_m: deg(p.camberGain.value),
        camber_gain_sd_deg_per_m: deg(p.camberGain.sd),
        toe_gain_deg_per_m: deg(p.toeGain.value),
        toe_gain_sd_deg_per_m: deg(p.toeGain.sd),
        roll_centre_height_mm: p.rollCentre.value * 1000,
        roll_centre_height_sd_mm: p.rollCentre.sd * 1000,
        toe_sign_probability: signProbability(p.toeChange, travel),
        ...(drawn ? { drawn: drawnToWire(drawn[i] ?? null) } : {}),
        top: {
          ...(travel === 0 ? {} : { camber_change: ranks(p.camberChange), toe_change: ranks(p.toeChange) }),
          camber_gain: ranks(p.camberGain),
          toe_gain: ranks(p.toeGain),
          roll_centre_height: ranks(p.rollCentre),
        },
      });
    });
    if (findings.length > 0) return { findings };
    if (!wire.compliance) return { output: { positions } };
    const d = computeDifference(wire, wire.compliance, points);
    return "findings" in d ? d : { output: { positions, difference: d.output } };
  },
};
