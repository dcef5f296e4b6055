import { describe, expect, it } from "vitest";
import { readLayout } from "#contract";
import {
  buildLayoutLinkage,
  ComplianceSolver,
  type CornerLoad,
  computeLayoutDerivatives,
  LayoutBalance,
  type LayoutElasticity,
  type LayoutFault,
  type LayoutRubber,
  type LayoutState,
  NO_LOAD,
  solveLayout,
} from "#engines/linkage";
import { asLayout, readSingleCorners } from "../reference/layouts/elastic-layout.ts";
import { readExampleLayout } from "../reference/layouts/layout-rows.ts";
import { differentiateAll } from "./differences.ts";

const load: CornerLoad = { ...NO_LOAD, lateral: 700, braking: 1500, aligning: 30, contactRise: 0.015 };

const single = readSingleCorners();

function solved(balance: LayoutBalance, under: CornerLoad = load): LayoutState {
  const answer = solveLayout(balance, under);
  if ("unsolved" in answer) throw new Error(`no balance: ${answer.unsolved.end}`);
  return answer.state;
}

describe.each(single)("$name as a layout of bodies with rubber", ({ corner }) => {
  const [layout, elasticity] = asLayout(corner);
  const linkage = buildLayoutLinkage(layout);
  const [first] = elasticity.rubber;
  const [own] = corner.elasticity.rubber;

  it.each(["wheel-load", "contact-height"] as const)("balances as the corner does, sound and torn, %s held", (hold) => {
    for (const factor of [1, 0.3]) {
      const faults: LayoutFault[] = first ? [{ kind: "soft", part: first.part, end: first.end, factor }] : [];
      const soft = own ? [{ kind: "soft" as const, link: own.link, end: own.end, factor }] : [];
      const under = hold === "wheel-load" ? { ...load, contactRise: 0 } : load;
      const as = solved(new LayoutBalance(linkage, elasticity, hold, faults), under);
      const solver = new ComplianceSolver({ ...corner, hold, faults: soft });
      const answer = solver.solve(under);
      if (!("state" in answer)) throw new Error("no balance of the corner");
      expect(as.attitude.toe).toBeCloseTo(answer.state.attitude.toe, 12);
      expect(as.attitude.camber).toBeCloseTo(answer.state.attitude.camber, 12);
      expect(as.wheelLoad).toBeCloseTo(answer.state.wheelLoad, 6);
      as.pose.t.forEach((t, c) => {
        expect(t).toBeCloseTo(answer.state.pose.t[c] as number, 12);
      });
    }
  });
});

describe("a soft corner under much braking", () => {
  /** What it comes to in each form: toe, or null where its branch ends before the load. */
  const toes = single.flatMap(({ corner }) => {
    const [layout, elasticity] = asLayout(corner);
    const linkage = buildLayoutLinkage(layout);
    return elasticity.rubber.flatMap(({ part, end }, i) => {
      const own = corner.elasticity.rubber[i];
      if (own === undefined) return [];
      return [0.2, 0.1, 0.05, 0.02].flatMap((factor) =>
        [2000, 4000, 6000, 9000, 14_000].map((braking) => {
          const under: CornerLoad = { ...NO_LOAD, braking };
          const soft = { kind: "soft" as const, part, end, factor };
          const as = solveLayout(new LayoutBalance(linkage, elasticity, "wheel-load", [soft]), under);
          const faults = [{ kind: "soft" as const, link: own.link, end: own.end, factor }];
          const answer = new ComplianceSolver({ ...corner, hold: "wheel-load", faults }).solve(under);
          return [
            "unsolved" in as ? null : as.state.attitude.toe,
            "state" in answer ? answer.state.attitude.toe : null,
          ] as const;
        }),
      );
    });
  });

  it("is answered on the branch it stands on, as the corner is, or refused", () => {
    expect(toes.length).toBeGreaterThan(200);
    const answered = toes.filter(([layout]) => layout !== null);
    for (const [layout, corner] of answered) {
      expect(corner, `the corner is refused, the layout has toe ${layout}`).not.toBeNull();
      expect(layout).toBeCloseTo(corner ?? Number.NaN, 9);
    }
    expect(answered.length).toBeGreaterThan(100);
    expect(answered.length).toBeLessThan(toes.length);
  });
});

const carrier = readLayout(readExampleLayout(), "left");

/** Rates of the example with an integral link (invented). */
const rubber: readonly LayoutRubber[] = [
  { part: "arm-front", end: null, rate: { radial: 6e6, axial: 9e5, voided: { rate: 2e6, through: [0.2, 1, 0] } } },
  { part: "arm-rear", end: null, rate: { radial: 4e6 } },
  { part: "arm-ball", end: null, rate: { radial: 6e7 } },
  { part: "integral-link", end: "from", rate: { radial: 8e6, axial: 1e6, axis: [0, 1, 0.2] } },
  { part: "camber-link", end: "from", rate: { radial: 9e6, axial: 8e5, axis: [1, 0, 0] } },
  { part: "toe-link", end: "from", rate: { radial: 1.1e7, axial: 9e5, axis: [1, 0.1, 0] } },
  { part: "toe-link", end: "to", rate: { radial: 5e7 } },
];
const elasticity: LayoutElasticity = {
  springRate: 70_000,
  rubber,
  members: [{ link: "camber-link", rate: 9e7 }],
  wheelLoad: 4200,
};
const torn: LayoutFault[] = [{ kind: "soft", part: "arm-front", end: null, factor: 0.3 }];

describe.each(["wheel-load", "contact-height"] as const)("two moving bodies with rubber, %s held", (hold) => {
  const under: CornerLoad = hold === "wheel-load" ? { ...load, contactRise: 0 } : load;
  const balanceOf = (of: LayoutElasticity = elasticity, layout = carrier) =>
    new LayoutBalance(buildLayoutLinkage(layout), of, hold, torn);
  const balance = balanceOf();
  const state = solved(balance, under);

  it("stand at design, sound under the wheel load alone", () => {
    const sound = new LayoutBalance(buildLayoutLinkage(carrier), elasticity, hold, []);
    const still = solved(sound, NO_LOAD);
    expect(Math.max(...still.pose.t.map(Math.abs))).toBeLessThan(1e-12);
    expect(Math.abs(solved(balance, NO_LOAD).attitude.toe - still.attitude.toe)).toBeGreaterThan(1e-6);
  });

  it("have tangents that agree with differences of whole balances, and are reciprocal", () => {
    const rates = balance.loadRates(state);
    if (!rates) throw new Error("singular");
    for (const [kind, step] of [
      ["lateral", 200],
      ["braking", 200],
      ["drive", 200],
      ["aligning", 20],
    ] as const) {
      const differences = differentiateAll(
        (x) => {
          const { attitude } = solved(balance, { ...under, [kind]: under[kind] + x });
          return [attitude.toe, attitude.camber, -attitude.spin, ...attitude.centre];
        },
        0,
        step,
      );
      const rate = rates[kind];
      const exact = [rate.toe, rate.camber, rate.caster, ...rate.centre];
      const size = Math.max(...exact.map(Math.abs));
      exact.forEach((e, i) => {
        expect(Math.abs(e - (differences[i] as number)), `${kind} ${i}`).toBeLessThan(1e-7 * size);
      });
    }
    const still = balance.loadRates(solved(balance, NO_LOAD));
    // Turn about z under drive against shift forward under a moment: one potential.
    if (!still) throw new Error("singular");
    expect(still.drive.centre[1]).not.toBe(0);
    expect(still.aligning.centre[0]).toBeCloseTo(turnAboutZ(balance), 14);
  });

  /** Rotation about z per newton of drive under the wheel load alone, from balances. */
  function turnAboutZ(of: LayoutBalance): number {
    const [turn] = differentiateAll(
      (x) => {
        const { r } = solved(of, { ...NO_LOAD, drive: x }).pose;
        const before = solved(of, NO_LOAD).pose.r;
        // Row 1, column 0 of the turn from before to now.
        return [[0, 1, 2].reduce((sum, k) => sum + (r[3 + k] as number) * (before[k] as number), 0)];
      },
      0,
      200,
    );
    return turn as number;
  }

  it("have derivatives by every point and rate that agree with differences, and are not made of them", () => {
    const exact = computeLayoutDerivatives(balance, state);
    if (!exact) throw new Error("singular");
    const { points, pointNames } = balance.linkage.mechanism;
    const sizes = [exact.toe, exact.camber].map((list) => Math.max(...list.map(Math.abs)));
    let same = 0;
    exact.parameters.forEach((parameter, p) => {
      const figures = (x: number): readonly number[] => {
        if (parameter.kind === "rate") {
          const changed = rubber.map((r) => ({ ...r, rate: nameOf(r) === parameter.name ? times(r, 1 + x) : r.rate }));
          const { attitude } = solved(balanceOf({ ...elasticity, rubber: changed }), under);
          return [attitude.toe, attitude.camber];
        }
        const name = pointNames[parameter.point] as string;
        const at = [...(points[parameter.point] as readonly number[])] as [number, number, number];
        at[parameter.axis] += x;
        const moved = { ...carrier, points: { ...carrier.points, [name]: at } };
        const { attitude } = solved(balanceOf(elasticity, moved), under);
        return [attitude.toe, attitude.camber];
      };
      const differences = differentiateAll(figures, 0, parameter.kind === "rate" ? 0.02 : 2e-3);
      [exact.toe, exact.camber].forEach((list, i) => {
        const off = Math.abs((list[p] as number) - (differences[i] as number));
        expect(off, JSON.stringify(parameter)).toBeLessThan(1e-7 * (sizes[i] as number));
        if (list[p] !== 0 && list[p] === differences[i]) same++;
      });
    });
    expect(same).toBeLessThan(4);
  });
});

const nameOf = ({ part, end }: LayoutRubber): string => (end ? `${part}.${end}` : part);

function times({ rate }: LayoutRubber, factor: number): LayoutRubber["rate"] {
  return {
    ...rate,
    radial: rate.radial * factor,
    ...(rate.axial === undefined ? {} : { axial: rate.axial * factor }),
    ...(rate.voided ? { voided: { ...rate.voided, rate: rate.voided.rate * factor } } : {}),
  };
}
