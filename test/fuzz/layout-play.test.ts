import { describe, expect, it } from "vitest";
import { readLayout } from "#contract";
import {
  buildLayoutLinkage,
  ComplianceSolver,
  type CornerLoad,
  computeLayoutDerivatives,
  type ElasticState,
  isLayoutStable,
  LayoutBalance,
  type LayoutElasticity,
  type LayoutFault,
  type LayoutRubber,
  type LayoutState,
  NO_LOAD,
  solveLayout,
} from "#engines/linkage";
import { degreesFromRadians } from "#quantity";
import { asLayout, readKnuckleCorners } from "../reference/layouts/elastic-layout.ts";
import { readExampleLayout } from "../reference/layouts/layout-rows.ts";
import { readReference } from "../reference/linkage/corner-record.ts";
import { type ComplianceFile, elasticCorner, engineLoad } from "../reference/linkage/elastic-record.ts";
import { differentiateAll } from "./differences.ts";

const TOTAL = 0.8e-3;
const loads: readonly Partial<CornerLoad>[] = [
  {},
  { lateral: 1000 },
  { lateral: -3000 },
  { braking: 3000 },
  { braking: -1000 },
  { drive: 2000 },
  { aligning: 100 },
  { braking: 2000, lateral: -2000 },
];

function allOf(balance: LayoutBalance, load: CornerLoad): readonly LayoutState[] {
  const answer = solveLayout(balance, load);
  return "unsolved" in answer ? [] : [answer.state, ...answer.others];
}

describe.each(readKnuckleCorners())("$name as a layout, loose in one link", ({ corner }) => {
  const [layout, elasticity] = asLayout(corner);
  const linkage = buildLayoutLinkage(layout);

  it.each(["wheel-load", "contact-height"] as const)("has the corner's own balances, %s held", (hold) => {
    for (const { name: link } of corner.geometry.links) {
      const balance = new LayoutBalance(linkage, elasticity, hold, [{ kind: "play", part: link, total: TOTAL }]);
      const solver = new ComplianceSolver({ ...corner, hold, faults: [{ kind: "play", link, total: TOTAL }] });
      for (const change of loads) {
        const load = { ...NO_LOAD, ...change };
        const states = allOf(balance, load);
        const answer = solver.solve(load);
        const wanted: readonly ElasticState[] = "state" in answer ? [answer.state, ...answer.others] : [];
        expect(states.length, `${link} ${JSON.stringify(change)}`).toBe(wanted.length);
        wanted.forEach((want, i) => {
          const got = i === 0 ? states[0] : states.find(({ sides }) => sides[0] === want.branch[0]);
          if (!got) throw new Error(`no balance on side ${want.branch[0]}`);
          const off = [
            got.attitude.toe - want.attitude.toe,
            got.attitude.camber - want.attitude.camber,
            got.attitude.spin - want.attitude.spin,
          ].map((x) => Math.abs(degreesFromRadians(x)));
          expect(Math.max(...off), link).toBeLessThan(1e-9);
          expect(got.wheelLoad).toBeCloseTo(want.wheelLoad, 5);
          expect(isLayoutStable(balance, got)).toBe(want.stable);
        });
      }
    }
  });
});

describe("the strut of the reference as a layout, loose in one link", () => {
  const file = readReference<ComplianceFile>("linkage/compliance-more.json");
  const [record, elastic] = [file.geometries.front_strut_open, file.elastic.front_strut_open];
  const cases = file.cases.filter(({ geometry, fault }) => geometry === "front_strut_open" && fault?.type === "play");

  it("stands where the reference says", () => {
    if (!record || !elastic) throw new Error("no strut in the reference");
    expect(cases.length).toBeGreaterThan(3);
    for (const one of cases) {
      if (one.fault?.type !== "play") continue;
      const { hold, ...corner } = elasticCorner(record, elastic, one);
      const [layout, elasticity] = asLayout({ ...corner, hold });
      const loose: LayoutFault = { kind: "play", part: one.fault.link, total: one.fault.total / 1000 };
      const balance = new LayoutBalance(buildLayoutLinkage(layout), elasticity, hold, [loose]);
      for (const [name, wanted] of Object.entries(one.states)) {
        const states = allOf(balance, engineLoad(file.loads[name] ?? {}, one.contact_rise));
        expect(states.length).toBe(wanted.length);
        const [got, want] = [states[0], wanted[0]];
        expect(Math.abs(degreesFromRadians(got?.attitude.toe ?? 0) - Number(want?.toe)), name).toBeLessThan(1e-9);
        expect(Math.abs(degreesFromRadians(got?.attitude.camber ?? 0) - Number(want?.camber)), name).toBeLessThan(1e-9);
      }
    }
  });
});

const carrier = readLayout(readExampleLayout(), "left");
const rubber: readonly LayoutRubber[] = [
  { part: "arm-front", end: null, rate: { radial: 6e6, axial: 9e5, voided: { rate: 2e6, through: [0.2, 1, 0] } } },
  { part: "arm-rear", end: null, rate: { radial: 4e6 } },
  { part: "integral-link", end: "from", rate: { radial: 8e6, axial: 1e6, axis: [0, 1, 0.2] } },
  { part: "toe-link", end: "from", rate: { radial: 1.1e7, axial: 9e5, axis: [1, 0.1, 0] } },
];
const elasticity: LayoutElasticity = { springRate: 70_000, rubber, members: [], wheelLoad: 4200 };
const elastic: LayoutElasticity = {
  ...elasticity,
  rubber: [...rubber, { part: "arm-ball", end: null, rate: { radial: 6e7 } }],
};
const under: CornerLoad = { ...NO_LOAD, lateral: 700, braking: 1500, contactRise: 0.01 };
const linkage = buildLayoutLinkage(carrier);
const loose = (part: string, total = TOTAL): LayoutFault => ({ kind: "play", part, total });

/** A rigid ball, one in rubber, a bush with voids, one that slides, a link with rubber and one without. */
const places: readonly (readonly [string, LayoutElasticity])[] = [
  ["arm-ball", elasticity],
  ["arm-ball", elastic],
  ["arm-front", elasticity],
  ["arm-rear", elasticity],
  ["toe-link", elasticity],
  ["camber-link", elasticity],
];

describe.each(places)("two moving bodies, loose in %s", (part, of) => {
  const balanceOf = (total: number, layout = linkage, rates = of) =>
    new LayoutBalance(layout, rates, "contact-height", [loose(part, total)]);
  const at = (total: number, load = under): LayoutState => {
    const [state] = allOf(balanceOf(total), load);
    if (!state) throw new Error("no balance");
    return state;
  };
  const sound = solvedSound(of);

  it("are sound where the play is nothing, and near it where it is small", () => {
    expect(at(0).pose).toEqual(sound.pose);
    expect(at(0).sides).toEqual([]);
    const toes = [1e-6, 2e-6].map((total) => at(total).attitude.toe - sound.attitude.toe);
    expect(Math.abs(toes[0] as number)).toBeGreaterThan(0);
    expect((toes[1] as number) / (toes[0] as number)).toBeCloseTo(2, 3);
  });

  it("press every loose member at the end of its play, along its force", () => {
    const balance = balanceOf(TOTAL);
    const state = at(TOTAL);
    const off = balance.stretches(state);
    const [group] = balance.loose;
    if (!group) throw new Error("nothing loose");
    const forces = group.terms.map((t) => state.forces[t] as number);
    const size = Math.hypot(...forces);
    expect(size).toBeGreaterThan(50);
    group.terms.forEach((t, i) => {
      const rate = balance.terms[t]?.rate ?? Number.NaN;
      const force = forces[i] as number;
      expect(off[t]).toBeCloseTo(force / rate + ((TOTAL / 2) * force) / size, 12);
    });
    expect(isLayoutStable(balance, state)).toBe(true);
  });

  it("take in as energy what the load gives", () => {
    const balance = balanceOf(TOTAL);
    const steps = 12;
    const states = Array.from({ length: 2 * steps + 1 }, (_, i) =>
      at(TOTAL, { ...NO_LOAD, drive: 1000 + (500 * i) / (2 * steps) }),
    );
    const energy = ({ forces }: LayoutState): number =>
      forces.reduce((sum, force, i) => sum + (force * force) / (2 * (balance.terms[i]?.rate ?? Number.NaN)), 0);
    const [first, last] = [states[0], states.at(-1)];
    if (!first || !last) throw new Error("no states");
    const drive = states.map(({ load }) => load.drive);
    const x = states.map(({ attitude }) => attitude.centre[0]);
    // The work of drive along the way by parts, Simpson's rule on the rest; the ground at its height gives none.
    const rest = Array.from({ length: steps }, (_, k) => {
      const h = ((drive[2 * k + 1] as number) - (drive[2 * k] as number)) / 3;
      return h * ((x[2 * k] as number) + 4 * (x[2 * k + 1] as number) + (x[2 * k + 2] as number));
    }).reduce((sum, part_) => sum + part_, 0);
    const work = last.load.drive * last.attitude.centre[0] - first.load.drive * first.attitude.centre[0] - rest;
    expect(Math.abs(work)).toBeGreaterThan(1e-3);
    expect(energy(last) - energy(first)).toBeCloseTo(work, 8);
  });

  it("have derivatives by points and rates that agree with differences of whole balances", () => {
    const exact = computeLayoutDerivatives(balanceOf(TOTAL), at(TOTAL));
    if (!exact) throw new Error("singular");
    const most = Math.max(...exact.toe.map(Math.abs));
    const { points, pointNames } = linkage.mechanism;
    exact.parameters.forEach((parameter, p) => {
      if (parameter.kind === "coordinate" && (parameter.point + 2 * parameter.axis) % 7 !== 0) return;
      const toe = (x: number): readonly number[] => {
        const moved = [...(points[parameter.kind === "coordinate" ? parameter.point : 0] as readonly number[])];
        const name = parameter.kind === "coordinate" ? (pointNames[parameter.point] as string) : "";
        if (parameter.kind === "coordinate") moved[parameter.axis] = (moved[parameter.axis] as number) + x;
        const layout =
          parameter.kind === "coordinate"
            ? buildLayoutLinkage({
                ...carrier,
                points: { ...carrier.points, [name]: moved as [number, number, number] },
              })
            : linkage;
        const rates =
          parameter.kind === "rate"
            ? { ...of, rubber: of.rubber.map((r) => (rateName(r) === parameter.name ? times(r, 1 + x) : r)) }
            : of;
        const [state] = allOf(balanceOf(TOTAL, layout, rates), under);
        return [state?.attitude.toe ?? Number.NaN];
      };
      const [difference] = differentiateAll(toe, 0, parameter.kind === "rate" ? 0.02 : 1e-3);
      const off = Math.abs((exact.toe[p] as number) - (difference as number));
      expect(off, JSON.stringify(parameter)).toBeLessThan(1e-6 * most);
    });
  });
});

function solvedSound(of: LayoutElasticity): LayoutState {
  const [state] = allOf(new LayoutBalance(linkage, of, "contact-height", []), under);
  if (!state) throw new Error("no balance");
  return state;
}

const rateName = ({ part, end }: LayoutRubber): string => (end ? `${part}.${end}` : part);

function times(r: LayoutRubber, factor: number): LayoutRubber {
  const { radial, axial, voided, ...rest } = r.rate;
  return {
    ...r,
    rate: {
      ...rest,
      radial: radial * factor,
      ...(axial === undefined ? {} : { axial: axial * factor }),
      ...(voided ? { voided: { ...voided, rate: voided.rate * factor } } : {}),
    },
  };
}
