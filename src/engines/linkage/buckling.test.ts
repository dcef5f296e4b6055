import { describe, expect, it } from "vitest";
import { makeRandom } from "../../../test/fuzz/differences.ts";
import { disturb, readElasticCorners } from "../../../test/fuzz/reference-corners.ts";
import { type CornerLoad, type ElasticCorner, type EndRate, mixLoads, NO_LOAD } from "./elastic-corner.ts";
import type { Balance } from "./equilibrium.ts";
import { ComplianceSolver } from "./solve-compliance.ts";
import { computeWheelWrench } from "./wheel-forces.ts";

const random = makeRandom(20_260);

/** Rates from 20 N/mm to 6300 N/mm, even in the logarithm: far softer than any car's at the low end. */
const someRate = (): number => 10 ** (4.3 + 2.5 * random());

function withSomeRates(corner: ElasticCorner): ElasticCorner {
  const soften = (rate: EndRate): EndRate => ({
    ...rate,
    radial: someRate() as typeof rate.radial,
    ...(rate.axial === undefined ? {} : { axial: someRate() as typeof rate.axial }),
  });
  const { rubber, strutTop, trailingArm, ...rest } = corner.elasticity;
  return {
    ...corner,
    geometry: disturb(corner.geometry, random, 0.03),
    hold: random() < 0.5 ? "wheel-load" : "contact-height",
    elasticity: {
      ...rest,
      rubber: rubber.map((r) => ({ ...r, rate: soften(r.rate) })),
      ...(strutTop ? { strutTop: soften(strutTop) } : {}),
      ...(trailingArm ? { trailingArm: soften(trailingArm) } : {}),
    },
  };
}

/** How fast the wheel moves with the share of a load at a share of it, metres (and radians) for the whole. */
function speedAt(solver: ComplianceSolver, load: CornerLoad, share: number): number {
  const part = mixLoads(NO_LOAD, load, share);
  const answer = solver.solve(part);
  if (!("state" in answer)) throw new Error(`no balance at ${share} of the load`);
  const { balance } = answer.state;
  expect(solver.balance.factoriseAt(balance, part)).toBe(true);
  const { v, w } = solver.balance.responseTo(computeWheelWrench(solver.balance.linkage, balance.pose, load, 0).wrench);
  return Math.max(...v.map(Math.abs), ...w.map(Math.abs));
}

/** The load put on in many equal steps, each begun at the one before; null where a step does not settle. */
function followInEqualSteps(solver: ComplianceSolver, load: CornerLoad, steps: number): Balance | null {
  const first = solver.balance.solve(NO_LOAD, []);
  let at = first;
  for (let k = 1; k <= steps; k++) {
    at = solver.balance.solveFrom(at.pose, mixLoads(NO_LOAD, load, k / steps), at.wheelLoad, []);
    if (at.report.end !== "converged") return null;
  }
  return at;
}

describe("corners with very soft joints under up to 4 kN", () => {
  it("are answered on the branch that begins at rest, or refused where it turns back", () => {
    const corners = readElasticCorners();
    let answered = 0;
    let buckled = 0;
    for (let trial = 0; trial < 240; trial++) {
      const { name, corner } = corners[trial % corners.length] as (typeof corners)[number];
      const solver = new ComplianceSolver(withSomeRates(corner));
      expect(solver.carries).toBe(true);
      const load = { ...NO_LOAD, lateral: 8000 * (random() - 0.5), braking: 8000 * (random() - 0.5) };
      const answer = solver.solve(load);
      const what = `${name}, trial ${trial}`;
      if ("state" in answer) {
        answered++;
        if (trial % 4 > 0) continue;
        const other = followInEqualSteps(solver, load, 200);
        if (!other) throw new Error(`equal steps do not arrive: ${what}`);
        const { t } = answer.state.pose;
        expect(Math.max(...t.map((x, i) => Math.abs(x - (other.pose.t[i] as number)))), what).toBeLessThan(1e-9);
      } else {
        buckled++;
        const { carried } = answer;
        if (!carried) throw new Error(`refused without saying where: ${what}`);
        expect(carried.leg).toBe("load");
        // Where a branch turns back it moves as the root of what is left: four times nearer, twice as fast.
        const [far, near] = [1e-4, 2.5e-5].map((left) => speedAt(solver, load, carried.share * (1 - left)));
        const ratio = (near as number) / (far as number);
        expect(ratio, what).toBeGreaterThan(1.7);
        expect(ratio, what).toBeLessThan(2.3);
      }
    }
    expect(answered).toBeGreaterThan(80);
    expect(buckled).toBeGreaterThan(80);
  });
});
