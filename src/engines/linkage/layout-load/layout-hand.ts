import { add, cross, dot, factorise, makeFactorisation, solveFactorised, subtract } from "#numeric";
import type { Metres } from "#quantity";
import type { BodyLayout } from "#vehicle";
import { buildLayoutLinkage } from "../layout-linkage.ts";
import type { LayoutElasticity, LayoutFault } from "../layout-rubber/layout-elasticity.ts";
import { buildLayoutTerms } from "../layout-rubber/layout-terms.ts";
import { placeElastic } from "../layout-rubber/place-elastic.ts";
import type { HandPush } from "../load-states/index.ts";
import type { LayoutLoadState } from "./layout-load-state.ts";

/**
 * How far the place read moves under a hand's push on the wheel, from rubber and members about a state of the car: linear,
 * what carries the wheel held rigidly, forces of the state left out of the stiffness. Play among the faults adds nothing here.
 * Metres; null where the joints leave a move free.
 */
export function computeLayoutHandMovement(
  layout: BodyLayout,
  elasticity: LayoutElasticity,
  faults: readonly LayoutFault[],
  state: LayoutLoadState,
  push: HandPush,
): Metres | null {
  const linkage = buildLayoutLinkage(layout);
  const terms = buildLayoutTerms(linkage, elasticity, faults).map(({ rate, measure }) => ({
    rate,
    row: placeElastic(linkage.mechanism, measure, state.pose, 0).row,
  }));
  const rigid = [
    ...terms.flatMap(({ rate, row }) => (Number.isFinite(rate) ? [] : [row])),
    ...(state.carrierRow ? [state.carrierRow] : []),
  ];
  const steps = 6 * linkage.bodies.length;
  const n = steps + rigid.length;
  const f = makeFactorisation(n);
  f.lu.fill(0);
  for (const { rate, row } of terms) {
    if (!Number.isFinite(rate)) continue;
    for (let i = 0; i < steps; i++)
      for (let j = 0; j < steps; j++)
        f.lu[i * n + j] = (f.lu[i * n + j] as number) + rate * (row[i] as number) * (row[j] as number);
  }
  rigid.forEach((row, k) => {
    for (let i = 0; i < steps; i++) {
      f.lu[i * n + steps + k] = row[i] as number;
      f.lu[(steps + k) * n + i] = row[i] as number;
    }
  });
  const b = new Float64Array(n);
  b.set([...push.force, ...push.moment]);
  if (!factorise(f) || f.pivotRatio < 1e-15) return null;
  solveFactorised(f, b);
  const at = (i: number): number => b[i] as number;
  const arm = subtract(push.readAt, state.attitude.centre);
  return dot(add([at(0), at(1), at(2)], cross([at(3), at(4), at(5)], arm)), push.readAlong);
}

/**
 * How far the place read moves freely for a play in a part, everything else rigid: by virtual work the play times what a unit
 * push at that place and along that line brings into the part. Metres, 0 or more; null where nothing is found.
 */
export function computeLayoutFreeMovement(
  state: LayoutLoadState,
  part: string,
  play: Metres,
  { readAt, readAlong }: Pick<HandPush, "readAt" | "readAlong">,
): Metres | null {
  const passed = state.passedBy(part, readAlong, cross(subtract(readAt, state.attitude.centre), readAlong));
  return passed === null ? null : play * passed;
}
