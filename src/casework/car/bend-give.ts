import { type BalancedWheel, computeLoadsInBend, FaultBand } from "#engines/linkage";
import { subtractJets } from "#numeric";
import type { CornerModel } from "../fault/corner-model.ts";
import { findSettlingReading, isSignSure } from "../fault/settle.ts";

/** Toe a wheel turns by as its joints give, radians, in positive. */
export interface Give {
  readonly toe: number;
  readonly sd: number;
  /** What reading would settle its sign; null where it is sure. */
  readonly settle: string | null;
}

/** Toe one wheel of a balanced car gives by its forces; null where its corner finds no balance. */
export function giveOf(model: CornerModel, side: "left" | "right", wheel: BalancedWheel): Give | null {
  const { geometry, elasticity, deviations, rates, correlations, assembly } = model;
  const loads = computeLoadsInBend(geometry, side, wheel);
  const corner = { geometry, elasticity, hold: "contact-height" as const, faults: [] };
  const band = new FaultBand(corner, deviations, rates, correlations);
  if (!loads || !band.solver.carries) return null;
  const [still, loaded] = [loads.still, loads.loaded].map((load) => {
    const answer = band.solver.solve(load);
    return "state" in answer ? band.bandAt(answer.state, load) : null;
  });
  if (!still || !loaded) return null;
  const change = subtractJets(loaded.toe, still.toe);
  const [toe, sd] = [change[0] as number, band.jets.deviation(change)];
  return { toe, sd, settle: isSignSure(toe, sd) ? null : findSettlingReading(band.jets, change, assembly) };
}
