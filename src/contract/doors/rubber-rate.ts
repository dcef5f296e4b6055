import { z } from "zod";
import {
  type BondedBush,
  type BushRates,
  computeBushRates,
  computeShearModulus,
  HARDNESS_RANGE,
  HARDNESS_SCATTER,
} from "#engines/rubber";
import type { Finding } from "#numeric";
import { metresFromMm, mmFromMetres, perMmFromNewtonsPerMetre, radiansFromDegrees } from "#quantity";
import type { Door } from "../door.ts";
import { isNumber, isObject } from "./loose-corner.ts";

/** No figure of a bush is smaller; smaller ones are slips (key rubber-bound in docs/sources.md). */
const LEAST = 1e-3;
const MOST = 1e6;
const size = z.number().min(LEAST).max(MOST);

const input = z.strictObject({
  inner_radius_mm: size.meta({ description: "of the inner sleeve's outer face" }),
  outer_radius_mm: size.meta({ description: "of the outer sleeve's inner face; more than inner_radius_mm" }),
  length_mm: size,
  shear_modulus_n_per_mm2: size.optional().meta({ description: "this or hardness_shore_a" }),
  hardness_shore_a: z.number().min(HARDNESS_RANGE[0]).max(HARDNESS_RANGE[1]).optional(),
  hand_force_n: size.optional().meta({ description: "how far the bush gives under it, along and across" }),
  hand_moment_nm: size.optional().meta({ description: "how far the bush twists under it" }),
});
type Input = z.output<typeof input>;

const modulus = z.number();
const fitted = z.number().nullable();
const output = z.strictObject({
  shear_modulus_n_per_mm2: modulus,
  shear_modulus_5_points_softer_n_per_mm2: modulus.optional(),
  shear_modulus_5_points_harder_n_per_mm2: modulus.optional(),
  torsional_nm_per_deg: z.number(),
  axial_long_n_per_mm: z.number().meta({ description: "as if no end were near" }),
  radial_long_n_per_mm: z.number().meta({ description: "plane strain: no real bush is stiffer" }),
  radial_short_n_per_mm: z.number().meta({ description: "plane stress: no real bush is softer" }),
  axial_n_per_mm: fitted.meta({ description: "of this length; null outside the proportions it was fitted on" }),
  radial_n_per_mm: fitted.meta({ description: "of this length; null outside the proportions it was fitted on" }),
  hand: z
    .strictObject({
      torsional_deg: z.number().optional(),
      axial_mm: fitted.optional(),
      radial_mm: fitted.optional(),
      radial_at_least_mm: z.number().optional(),
      radial_at_most_mm: z.number().optional(),
    })
    .optional(),
});

function checkBush(document: unknown): readonly Finding[] {
  if (!isObject(document)) return [];
  const findings: Finding[] = [];
  const { inner_radius_mm: inner, outer_radius_mm: outer } = document;
  const has = (key: string): boolean => document[key] !== undefined;
  if (isNumber(inner) && isNumber(outer) && outer <= inner)
    findings.push({
      code: "not-consistent",
      path: "outer_radius_mm",
      got: String(outer),
      needed: `more than the inner radius, ${inner}`,
      hint: "Between the sleeves there must be rubber; perhaps the two are exchanged, or one is a diameter.",
    });
  if (has("hardness_shore_a") === has("shear_modulus_n_per_mm2"))
    findings.push({
      code: "one-of-two",
      path: "hardness_shore_a",
      got: has("hardness_shore_a")
        ? "both hardness_shore_a and shear_modulus_n_per_mm2"
        : "neither hardness_shore_a nor shear_modulus_n_per_mm2",
      needed: "exactly one of hardness_shore_a and shear_modulus_n_per_mm2",
      hint: "The modulus says more than a hardness; give the hardness where the modulus is not known.",
    });
  return findings;
}

const perMm2 = (pascals: number): number => pascals / 1e6;

/** The modulus asked with, or that of the hardness with what 5 points either way make of it. */
function readModulus(wire: Input) {
  const { hardness_shore_a: hardness, shear_modulus_n_per_mm2: given } = wire;
  if (given !== undefined) return { shear: given * 1e6, stated: { shear_modulus_n_per_mm2: given } };
  if (hardness === undefined) throw new Error("neither modulus nor hardness, though both were asked for");
  const shear = computeShearModulus(hardness);
  return {
    shear,
    stated: {
      shear_modulus_n_per_mm2: perMm2(shear),
      shear_modulus_5_points_softer_n_per_mm2: perMm2(computeShearModulus(hardness - HARDNESS_SCATTER)),
      shear_modulus_5_points_harder_n_per_mm2: perMm2(computeShearModulus(hardness + HARDNESS_SCATTER)),
    },
  };
}

/** What a hand finds: movement under the force and the moment asked with. */
function formatHand(wire: Input, rates: BushRates) {
  const { hand_force_n: force, hand_moment_nm: moment } = wire;
  if (force === undefined && moment === undefined) return {};
  const give = (f: number, rate: number | null): number | null => (rate === null ? null : mmFromMetres(f / rate));
  return {
    hand: {
      ...(moment !== undefined && { torsional_deg: moment / perDegree(rates.torsional) }),
      ...(force !== undefined && {
        axial_mm: give(force, rates.axial),
        radial_mm: give(force, rates.radial),
        radial_at_least_mm: give(force, rates.radialLong),
        radial_at_most_mm: give(force, rates.radialShort),
      }),
    },
  };
}

const perDegree = (perRadian: number): number => perRadian * radiansFromDegrees(1);
const orNull = (rate: number | null): number | null => (rate === null ? null : perMmFromNewtonsPerMetre(rate));

export const rubberRate: Door<Input> = {
  id: "rubber.rate",
  summary: "Rates of a bonded bush from its dimensions and hardness, and how far a hand moves it",
  input,
  output,
  relation:
    "torsional 4 pi G L a²b²/d, axial 2 pi G L/l, radial 4 pi G L s/(s l - d) long, 80 pi G L s/(25 s l - 9 d) short; finite length by fits; G from hardness by Gent's relation",
  source: "gent-hardness, bush-rates, bush-finite-length; docs/method/rubber.md",
  accuracy: "closed forms 1e-9; finite length within 5 % across and 0.2 % along; a hardness fixes G to about a fifth",
  check: checkBush,
  compute(wire) {
    const { shear, stated } = readModulus(wire);
    const bush: BondedBush = {
      inner: metresFromMm(wire.inner_radius_mm),
      outer: metresFromMm(wire.outer_radius_mm),
      length: metresFromMm(wire.length_mm),
      shearModulus: shear,
    };
    const rates = computeBushRates(bush);
    return {
      output: {
        ...stated,
        torsional_nm_per_deg: perDegree(rates.torsional),
        axial_long_n_per_mm: perMmFromNewtonsPerMetre(rates.axialLong),
        radial_long_n_per_mm: perMmFromNewtonsPerMetre(rates.radialLong),
        radial_short_n_per_mm: perMmFromNewtonsPerMetre(rates.radialShort),
        axial_n_per_mm: orNull(rates.axial),
        radial_n_per_mm: orNull(rates.radial),
        ...formatHand(wire, rates),
      },
    };
  },
};
