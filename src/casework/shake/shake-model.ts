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
import {
  addComplex,
  type Complex,
  complex,
  divideComplex,
  dot,
  multiplyComplex,
  scaleComplex,
  sizeOfComplex,
  subtract,
  unitVector,
} from "#numeric";
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
  /** Thickness variation, peak to peak, once per turn. */
  readonly variation: Metres;
}

/**
 * The corner with its hydraulic bush; null where it finds no balance or the link is rigid. The joint at the inner end of
 * `link` must have a rate and fluid.
 */
export function makeShakeModel(
  assembly: CornerAssembly,
  link: string,
  wheel: Pick<ShakeModel, "disc" | "circumference" | "variation">,
): ShakeModel | null {
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

/** Flexibility along the road (m/N) once the link's rate has changed by d: its part of the stiffness is of rank one. */
const flexibility = (straight: number, byPull: number, stretch: number, d: Complex, stretchByPull: number): Complex =>
  addComplex(
    complex(straight),
    divideComplex(scaleComplex(d, -byPull * stretch), addComplex(complex(1), scaleComplex(d, stretchByPull))),
  );

/**
 * Movement of the wheel centre along the road per newton of braking at the contact patch (m/N) at w rad/s:
 * C_b/(1 - M w² C_o), C_b and C_o the corner's flexibilities for a force at the contact patch and at the wheel centre
 * with the bush's complex stiffness in its link. The other joints are taken without loss; the mass moves along the road only.
 */
export function computeGive(model: ShakeModel, state: FluidState, angular: number): number {
  const { foreAft: c, bush, mass } = model;
  const stiffness = computeComplexStiffness(bush, state, angular);
  const flexible = addComplex(complex(model.rest), divideComplex(complex(model.across), stiffness));
  const d = addComplex(divideComplex(complex(1), flexible), complex(-c.linkRate));
  const braking = flexibility(c.centreByBraking, c.centreByPull, c.stretchByBraking, d, c.stretchByPull);
  const own = flexibility(c.centreByOwn, c.centreByPull, c.stretchByOwn, d, c.stretchByPull);
  const carried = addComplex(complex(1), scaleComplex(own, -mass * angular * angular));
  return sizeOfComplex(multiplyComplex(braking, divideComplex(complex(1), carried)));
}

/** Amplitude of the force along the road that the uneven disc makes, newtons; the same at every speed. */
export const computeShakeForce = ({ variation, disc, circumference }: ShakeModel): number =>
  computeRoadForce(computeTorqueRipple(variation, disc), circumference);

/** How often the thick place comes by at a speed, rad/s. */
export const angularAt = (model: ShakeModel, speed: MetresPerSecond): number =>
  2 * Math.PI * computeOrderFrequency(1, speed, model.circumference);

/** Amplitude of the wheel's movement along the road at a road speed, metres. */
export const computeAmplitude = (model: ShakeModel, state: FluidState, speed: MetresPerSecond): Metres =>
  computeShakeForce(model) * computeGive(model, state, angularAt(model, speed));
