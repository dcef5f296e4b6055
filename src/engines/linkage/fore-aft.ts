import { cross, type Vector } from "#numeric";
import { NO_LOAD } from "./elastic-corner.ts";
import type { ComplianceSolver } from "./solve-compliance.ts";
import { contactWithChange } from "./wheel-forces.ts";

/**
 * How far the wheel centre gives along the road, and what part one link has in it: exact tangents at the balance under
 * the wheel load alone, m/N, rearward and lengthening positive. A pull is a pair of unit forces that lengthens the link.
 */
export interface ForeAftShare {
  /** Rate of the link along its line with all that is in it, N/m. */
  readonly linkRate: number;
  readonly centreByBraking: number;
  readonly centreByOwn: number;
  readonly centreByPull: number;
  readonly stretchByBraking: number;
  readonly stretchByOwn: number;
  readonly stretchByPull: number;
}

/**
 * Fore-aft flexibility of a corner with the share of one link. A change d of the link's rate alone, even a complex one,
 * then gives exactly C - d (centre by pull)(stretch by force)/(1 + d stretch by pull), as the link's part of the
 * stiffness is of rank one. Null where there is no such link, nothing in it gives, or no balance is found.
 */
export function computeForeAftShare(solver: ComplianceSolver, link: string): ForeAftShare | null {
  const { balance } = solver;
  const term = balance.terms.find(({ kind, name }) => kind === "link" && name === link);
  if (term === undefined || !Number.isFinite(term.rate)) return null;
  const answer = solver.solve(NO_LOAD);
  if (!("state" in answer) || !balance.factoriseAt(answer.state.balance, NO_LOAD)) return null;
  const { pose } = answer.state;
  const { row } = term.at(pose, NO_LOAD.rack);
  const rearward: Vector = [-1, 0, 0];
  const { offset } = contactWithChange(balance.linkage, pose);
  const give = (wrench: readonly number[]): { readonly centre: number; readonly stretch: number } => {
    const { v, w } = balance.responseTo(wrench);
    return { centre: -v[0], stretch: [...v, ...w].reduce((sum, x, i) => sum + x * (row[i] as number), 0) };
  };
  const braking = give([...rearward, ...cross(offset, rearward)]);
  const own = give([...rearward, 0, 0, 0]);
  const pull = give([...row]);
  return {
    linkRate: term.rate,
    centreByBraking: braking.centre,
    centreByOwn: own.centre,
    centreByPull: pull.centre,
    stretchByBraking: braking.stretch,
    stretchByOwn: own.stretch,
    stretchByPull: pull.stretch,
  };
}
