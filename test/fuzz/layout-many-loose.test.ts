import { describe, expect, it } from "vitest";
import { readLayout } from "#contract";
import {
  buildLayoutLinkage,
  ComplianceSolver,
  type CornerLoad,
  isLayoutStable,
  LayoutBalance,
  type LayoutElasticity,
  type LayoutFault,
  type LayoutState,
  NO_LOAD,
  solveLayout,
} from "#engines/linkage";
import { degreesFromRadians } from "#quantity";
import { asLayout, readSingleCorners } from "../reference/layouts/elastic-layout.ts";
import { readExampleLayout } from "../reference/layouts/layout-rows.ts";

const TOTAL = 0.8e-3;
const loads: readonly Partial<CornerLoad>[] = [
  {},
  { lateral: 1000 },
  { lateral: -3000 },
  { braking: 3000 },
  { braking: -1000, aligning: 100 },
  { braking: 2000, lateral: -2000 },
];
const playOf = (part: string): LayoutFault => ({ kind: "play", part, total: TOTAL });

/** Loads under which a corner had more than one balance. */
const several: string[] = [];

describe.each(readSingleCorners())("$name as a layout, every link loose", ({ corner }) => {
  const [layout, elasticity] = asLayout(corner);
  const linkage = buildLayoutLinkage(layout);
  const names = corner.geometry.links.map(({ name }) => name);

  it.each(["wheel-load", "contact-height"] as const)("has the corner's own balances, %s held", (hold) => {
    const balance = new LayoutBalance(linkage, elasticity, hold, names.map(playOf));
    const faults = names.map((link) => ({ kind: "play" as const, link, total: TOTAL }));
    const solver = new ComplianceSolver({ ...corner, hold, faults });
    for (const change of loads) {
      const load = { ...NO_LOAD, ...change };
      const answer = solveLayout(balance, load);
      const states: readonly LayoutState[] = "unsolved" in answer ? [] : [answer.state, ...answer.others];
      const own = solver.solve(load);
      const wanted = "state" in own ? [own.state, ...own.others] : [];
      if (wanted.length > 1) several.push(`${names.length} links, ${JSON.stringify(change)}`);
      expect(states.length, JSON.stringify(change)).toBe(wanted.length);
      wanted.forEach((want, i) => {
        const sides = want.branch.join();
        const got = i === 0 ? states[0] : states.find((state) => state.sides.join() === sides);
        if (!got) throw new Error(`no balance on sides ${sides}`);
        expect(degreesFromRadians(Math.abs(got.attitude.toe - want.attitude.toe))).toBeLessThan(1e-9);
        expect(degreesFromRadians(Math.abs(got.attitude.camber - want.attitude.camber))).toBeLessThan(1e-9);
        expect(isLayoutStable(balance, got)).toBe(want.stable);
      });
    }
  });
});

it("looked at loads with more than one balance", () => {
  expect(several.length).toBeGreaterThan(0);
});

describe("two moving bodies, all six parts loose", () => {
  const carrier = readLayout(readExampleLayout(), "left");
  const elasticity: LayoutElasticity = {
    springRate: 70_000,
    wheelLoad: 4200,
    members: [],
    rubber: [
      { part: "arm-front", end: null, rate: { radial: 6e6, axial: 9e5, conical: 400, torsional: 150 } },
      { part: "arm-rear", end: null, rate: { radial: 4e6 } },
      { part: "toe-link", end: "from", rate: { radial: 1.1e7, axial: 9e5, axis: [1, 0.1, 0], conical: 200 } },
    ],
  };
  const parts = [...carrier.links, ...carrier.joints].map(({ name }) => name);
  const balance = new LayoutBalance(buildLayoutLinkage(carrier), elasticity, "contact-height", parts.map(playOf));

  it("stand at the end of every play, on the side each is pressed to", () => {
    expect(balance.loose.length).toBe(6);
    for (const change of loads) {
      const answer = solveLayout(balance, { ...NO_LOAD, ...change });
      if ("unsolved" in answer) throw new Error(answer.unsolved.end);
      const { state } = answer;
      const off = balance.stretches(state);
      balance.loose.forEach(({ terms, total, part }, g) => {
        const forces = terms.map((t) => state.forces[t] as number);
        const size = Math.hypot(...forces);
        expect(state.sides[g], part).not.toBe(0);
        terms.forEach((t, i) => {
          const force = forces[i] as number;
          const give = force / (balance.terms[t]?.rate ?? Number.NaN);
          expect(off[t], part).toBeCloseTo(give + ((total / 2) * force) / size, 12);
        });
      });
      expect(isLayoutStable(balance, state)).toBe(true);
      // What resists being turned is never loose.
      expect(balance.loose.flatMap(({ terms }) => terms).every((t) => balance.terms[t]?.measure.kind !== "twist")).toBe(
        true,
      );
    }
  });
});
