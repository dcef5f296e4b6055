import type { Newtons, Radians } from "#quantity";
import { type CornerElasticity, type ElasticCorner, NO_LOAD } from "../elastic-corner.ts";
import type { CornerGeometry } from "../geometry.ts";
import { ComplianceSolver } from "../solve-compliance.ts";
import { TravelSweep } from "../solve-travel.ts";
import type { BalancedWheel } from "./car-balance.ts";

/** What the joints of one wheel give under the lateral force a bend puts on it. */
export interface BushGive {
  /** Change by the force, the contact height held, toe in and top outward positive. */
  readonly toe: Radians;
  readonly camber: Radians;
  /** The force toward the left, N. */
  readonly lateral: Newtons;
}

/**
 * Toe and camber a wheel of a balanced car changes by as its joints give under its lateral force, at the height it stands
 * at: the balance with the force less that without, the force level with the body's own floor. The left corner's geometry;
 * a right wheel is its mirror image. Null where there is no balance.
 */
export function computeBushGive(
  geometry: CornerGeometry,
  elasticity: CornerElasticity,
  side: "left" | "right",
  { travel, lateral }: BalancedWheel,
): BushGive | null {
  const at = new TravelSweep(geometry).solve({ travel, rack: 0 });
  if ("foldAt" in at) return null;
  const corner: ElasticCorner = { geometry, elasticity, hold: "contact-height", faults: [] };
  const solver = new ComplianceSolver(corner);
  if (!solver.carries) return null;
  const rest = { ...NO_LOAD, contactRise: at.attitude.contact[2] - solver.designContact[2] };
  const own = side === "left" ? lateral : -lateral;
  const [still, loaded] = [solver.solve(rest), solver.solve({ ...rest, lateral: own })];
  if (!("state" in still) || !("state" in loaded)) return null;
  return {
    toe: loaded.state.attitude.toe - still.state.attitude.toe,
    camber: loaded.state.attitude.camber - still.state.attitude.camber,
    lateral,
  };
}
