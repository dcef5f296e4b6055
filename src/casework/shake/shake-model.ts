import { ComplianceSolver, computeForeAftShare, type ForeAftShare } from "#engines/linkage";
import {
  computeComplexStiffness,
  computeOrderFrequency,
  computeRoadForce,
  computeTorqueRipple,
  type DiscBrake,
  type FluidState,
  type HydraulicBush,
} from "#engines/rubber";
import { dot, subtract, unitVector } from "#numeric";
import type { Kilograms, Metres, MetresPerSecond } from "#quantity";
import type { CornerAssembly } from "#vehicle";
import { modelOfAssembly } from "../fault/corner-model.ts";

/** Everything one shake is computed from, in numbers. */
export interface ShakeModel {
  readonly foreAft: ForeAftShare;
  readonly bush: HydraulicBush;
  /** Flexibility of the link along its line without the bush's rate across its axis, m/N. */
  readonly rest: number;
  /**
   * Part of the bush's rate across its axis that works along the link: 1 - cos² of the angle between axis and link; of a
   * voided one, whose chambers lie in its voids, cos² of the angle between voids and link.
   */
  readonly across: number;
  readonly mass: Kilograms;
  readonly disc: DiscBrake;
  readonly circumference: Metres;
}

/** What makes torque of an uneven disc, and how often. */
export type ShakeWheel = Pick<ShakeModel, "disc" | "circumference">;

/**
 * The corner with its hydraulic bush; null where it finds no balance or the link is rigid. The joint at the inner end of
 * `link` must have a rate and fluid.
 */
export function makeShakeModel(assembly: CornerAssembly, link: string, wheel: ShakeWheel): ShakeModel | null {
  const own = assembly.links.find(({ name }) => name === link);
  const joint = own?.innerJoint;
  if (!own || !joint || joint.radial === null || joint.fluid === null) return null;
  const { geometry, elasticity } = modelOfAssembly(assembly);
  const solver = new ComplianceSolver({ geometry, elasticity, hold: "contact-height", faults: [] });
  const foreAft = solver.carries ? computeForeAftShare(solver, link) : null;
  if (foreAft === null) return null;
  const line = unitVector(subtract(own.outer.at, own.inner.at));
  const along = joint.axis ? dot(line, joint.axis) ** 2 : 0;
  const { fluid, voided } = joint;
  const across = voided ? dot(line, voided.through) ** 2 : 1 - along;
  const rubber = voided?.rate ?? joint.radial;
  return {
    foreAft,
    rest: 1 / foreAft.linkRate - across / rubber,
    across,
    bush: {
      rubber,
      lossFactor: fluid.lossFactor,
      volume: fluid.volume,
      fluidInertia: fluid.inertia,
      fluidDamping: fluid.damping,
    },
    mass: assembly.unsprungMass,
    ...wheel,
  };
}

/**
 * Movement of the wheel centre along the road per newton of braking at the contact patch (m/N) at w rad/s:
 * C_b/(1 - M w² C_o), C_b and C_o the corner's flexibilities for a force at the contact patch and at the wheel centre
 * with the bush's complex stiffness K in its link. The other joints are taken without loss; the mass moves along the road
 * only. Allocates nothing but K, as a band asks for it some hundred thousand times.
 */
export function computeGive(model: ShakeModel, state: FluidState, angular: number): number {
  const { foreAft: c, bush, mass, rest, across } = model;
  const { real, imaginary } = computeComplexStiffness(bush, state, angular);
  // The link's new rate is K/D with D = rest K + across, its change d = N/D; C (D + N p) is then linear in K.
  const kept = 1 - c.linkRate * rest;
  const nReal = kept * real - c.linkRate * across;
  const nImaginary = kept * imaginary;
  const wholeReal = rest * real + across + c.stretchByPull * nReal;
  const wholeImaginary = rest * imaginary + c.stretchByPull * nImaginary;
  const byBraking = c.centreByPull * c.stretchByBraking;
  const byOwn = c.centreByPull * c.stretchByOwn;
  const braking = size(
    c.centreByBraking * wholeReal - byBraking * nReal,
    c.centreByBraking * wholeImaginary - byBraking * nImaginary,
  );
  const inertia = mass * angular * angular;
  const carried = size(
    wholeReal - inertia * (c.centreByOwn * wholeReal - byOwn * nReal),
    wholeImaginary - inertia * (c.centreByOwn * wholeImaginary - byOwn * nImaginary),
  );
  return braking / carried;
}

const size = (real: number, imaginary: number): number => Math.sqrt(real * real + imaginary * imaginary);

/** Amplitude of the force along the road that an uneven disc makes, newtons; the same at every speed. */
export const computeShakeForce = ({ disc, circumference }: ShakeWheel, variation: Metres): number =>
  computeRoadForce(computeTorqueRipple(variation, disc), circumference);

/** How often the thick place comes by at a speed, rad/s. */
export const angularAt = ({ circumference }: ShakeWheel, speed: MetresPerSecond): number =>
  2 * Math.PI * computeOrderFrequency(1, speed, circumference);
