import type { Radians } from "#quantity";
import { type CornerElasticity, type CornerLoad, NO_LOAD } from "../elastic-corner.ts";
import type { CornerGeometry } from "../geometry.ts";
import { ComplianceSolver } from "../solve-compliance.ts";
import { TravelSweep } from "../solve-travel.ts";
import { computeDesignContact } from "../wheel-figures.ts";
import type { BalancedWheel } from "./car-balance-state.ts";

/** What the joints of one wheel give under the lateral force a bend puts on it. */
export interface BushGive {
  /** Change by the forces, the contact height held, toe in and top outward positive. */
  readonly toe: Radians;
  readonly camber: Radians;
}

/** What loads a left-hand corner at the height a wheel of a balanced car stands at: nothing more, and its sideways force, brake and drive too. */
export interface LoadsInBend {
  readonly still: CornerLoad;
  readonly loaded: CornerLoad;
}

/** The loads of one wheel in a bend for its left-hand corner, contact height held; null where it does not reach that height. */
export function computeLoadsInBend(
  geometry: CornerGeometry,
  side: "left" | "right",
  { travel, lateral, braking, drive }: BalancedWheel,
): LoadsInBend | null {
  const sweep = new TravelSweep(geometry);
  const at = sweep.solve({ travel, rack: 0 });
  if ("foldAt" in at) return null;
  const still = { ...NO_LOAD, contactRise: at.attitude.contact[2] - computeDesignContact(sweep.linkage)[2] };
  return { still, loaded: { ...still, lateral: side === "left" ? lateral : -lateral, braking, drive } };
}

/**
 * Toe and camber a wheel of a balanced car changes by as its joints give under its sideways force, brake and drive, at the height it
 * stands at: the balance with the forces less that without, the forces level with the body's own floor. The left corner's geometry;
 * a right wheel is its mirror image. Null where there is no balance.
 */
export function computeBushGive(
  geometry: CornerGeometry,
  elasticity: CornerElasticity,
  side: "left" | "right",
  wheel: BalancedWheel,
): BushGive | null {
  const loads = computeLoadsInBend(geometry, side, wheel);
  const solver = new ComplianceSolver({ geometry, elasticity, hold: "contact-height", faults: [] });
  if (!loads || !solver.carries) return null;
  const [still, loaded] = [solver.solve(loads.still), solver.solve(loads.loaded)];
  if (!("state" in still) || !("state" in loaded)) return null;
  return {
    toe: loaded.state.attitude.toe - still.state.attitude.toe,
    camber: loaded.state.attitude.camber - still.state.attitude.camber,
  };
}
