import { describe, expect, it } from "vitest";
import { readLayout } from "#contract";
import {
  buildLayoutLinkage,
  ComplianceSolver,
  type CornerLoad,
  computeLayoutDerivatives,
  type ElasticCorner,
  type Hold,
  LayoutBalance,
  type LayoutElasticity,
  type LayoutRubber,
  type LayoutState,
  NO_LOAD,
  solveLayout,
} from "#engines/linkage";
import { CAR_BODY } from "#vehicle";
import { asLayout } from "../reference/layouts/elastic-layout.ts";
import { layoutOfCorner } from "../reference/layouts/layout-of-corner.ts";
import { readExampleLayout } from "../reference/layouts/layout-rows.ts";
import { differentiateAll } from "./differences.ts";
import { readElasticCorners, readVoidedCorners } from "./reference-corners.ts";

const load: CornerLoad = { ...NO_LOAD, lateral: 700, braking: 1500, aligning: 30, contactRise: 0.015 };
const holds = ["wheel-load", "contact-height"] as const;
const underOf = (hold: Hold): CornerLoad => (hold === "wheel-load" ? { ...load, contactRise: 0 } : load);

function solved(balance: LayoutBalance, under: CornerLoad): LayoutState {
  const answer = solveLayout(balance, under);
  if ("unsolved" in answer) throw new Error(`no balance: ${answer.unsolved.end}`);
  return answer.state;
}

/** With the spring on the knuckle, as one moving body has it. */
function onKnuckle(corner: ElasticCorner): ElasticCorner {
  const { spring, links } = corner.geometry;
  if (!spring || spring.seat.on === "knuckle") return corner;
  const [x, y, z] = links[0]?.outer ?? spring.body;
  const seat = { on: "knuckle" as const, moving: [x, y - 0.05, z] as const };
  return { ...corner, geometry: { ...corner.geometry, spring: { ...spring, seat } } };
}

/** Largest difference of the angles, rad, and places, m, of a layout and a corner in the same balance. */
function apart(balance: LayoutBalance, corner: ElasticCorner, under: CornerLoad): number {
  const answer = new ComplianceSolver(corner).solve(under);
  if (!("state" in answer)) throw new Error("no balance of the corner");
  const as = solved(balance, under);
  return Math.max(
    Math.abs(as.attitude.toe - answer.state.attitude.toe),
    Math.abs(as.attitude.camber - answer.state.attitude.camber),
    ...[0, 1, 2].map((c) => Math.abs((as.pose.t[c] as number) - (answer.state.pose.t[c] as number))),
  );
}

const singles = readVoidedCorners().filter(
  ({ corner: { geometry } }) => new Set(geometry.links.map((l) => l.outer.join())).size === geometry.links.length,
);

describe.each(singles)("$name as a layout of one body", ({ corner: own }) => {
  const corner = onKnuckle(own);
  const [layout, elasticity] = asLayout(corner);
  const linkage = buildLayoutLinkage(layout);

  it.each(holds)("balances as the corner does, sound, torn and firmer, %s held", (hold) => {
    const turning = elasticity.rubber.filter(({ rate }) => rate.conical !== undefined);
    expect(turning.length).toBeGreaterThan(0);
    const [first] = turning;
    if (!first) throw new Error("nothing resists turns");
    const isMount = first.end === null;
    for (const factor of [1, 0.3, 4]) {
      const link = first.part === "strut" ? "strut_top" : first.part === "trailing-arm" ? "trailing_arm" : first.part;
      const end = isMount || first.end === "from" ? ("inner" as const) : ("outer" as const);
      const soft = { ...corner, hold, faults: [{ kind: "soft" as const, link, end, factor }] };
      const balance = new LayoutBalance(linkage, elasticity, hold, [
        { kind: "soft", part: first.part, end: first.end, factor },
      ]);
      expect(apart(balance, soft, underOf(hold))).toBeLessThan(1e-11);
      // Without its rates against turns it stands elsewhere: they are in both.
      const free = elasticity.rubber.map(({ rate: { conical: _c, torsional: _t, ...rate }, ...r }) => ({ ...r, rate }));
      const without = new LayoutBalance(linkage, { ...elasticity, rubber: free }, hold, [
        { kind: "soft", part: first.part, end: first.end, factor },
      ]);
      expect(apart(without, soft, underOf(hold))).toBeGreaterThan(1e-6);
    }
  });
});

describe("an arm as a body of its own, on two bushes that give only when turned", () => {
  const all = readElasticCorners().flatMap(({ name, corner }) => {
    const { links } = corner.geometry;
    const legs = links.filter((l) => links.some((m) => m !== l && m.outer.join() === l.outer.join()));
    return legs.length > 0 ? [{ name, corner: onKnuckle(corner), legs }] : [];
  });

  it.each(all)("is $name, to which its bushes give the same moment", ({ corner, legs }) => {
    const { geometry, elasticity } = corner;
    const { spring } = geometry;
    if (spring?.seat.on !== "knuckle") throw new Error("no spring on the knuckle");
    const isLeg = (name: string): boolean => legs.some((l) => l.name === name);
    const rigid = Number.POSITIVE_INFINITY;
    const axisOf = (name: string): readonly [number, number, number] => {
      const leg = legs.find((l) => l.name === name);
      const other = legs.find((l) => l !== leg && l.outer.join() === leg?.outer.join());
      if (!leg || !other) throw new Error("no arm");
      return [0, 1, 2].map((c) => (other.inner[c] as number) - (leg.inner[c] as number)) as [number, number, number];
    };
    const turning = legs.map(({ name }) => ({
      link: name,
      end: "inner" as const,
      rate: { radial: rigid, axis: axisOf(name), torsional: 150, conical: 400 },
    }));
    const others = elasticity.rubber.filter(({ link }) => !isLeg(link));
    const as: ElasticCorner = {
      ...corner,
      hold: "contact-height",
      elasticity: {
        ...elasticity,
        rubber: [...others, ...turning],
        members: elasticity.members.filter(({ link }) => !isLeg(link)),
      },
    };
    const bare = layoutOfCorner(geometry, "bodies");
    const layout = {
      ...bare,
      points: { ...bare.points, body: spring.body, seat: spring.seat.moving },
      spring: { from: { on: CAR_BODY, at: "body" }, to: { on: "knuckle", at: "seat" } },
    };
    const rubber: LayoutRubber[] = [
      ...others.map((r) => ({
        part: r.link,
        end: r.end === "inner" ? ("from" as const) : ("to" as const),
        rate: r.rate,
      })),
      ...turning.map(({ link, rate }) => ({ part: link, end: null, rate })),
      ...(elasticity.strutTop ? [{ part: "strut", end: null, rate: elasticity.strutTop }] : []),
    ];
    const of: LayoutElasticity = { ...as.elasticity, rubber };
    const balance = new LayoutBalance(buildLayoutLinkage(layout), of, "contact-height", []);
    expect(apart(balance, as, { ...load, contactRise: 0.03 })).toBeLessThan(1e-11);
  });
});

const carrier = readLayout(readExampleLayout(), "left");
const turning = { conical: 400, torsional: 150 };
/** Rates of the example with an integral link (invented). */
const rubber: readonly LayoutRubber[] = [
  {
    part: "arm-front",
    end: null,
    rate: { radial: 6e6, axial: 9e5, voided: { rate: 2e6, through: [0.2, 1, 0] }, ...turning },
  },
  { part: "arm-rear", end: null, rate: { radial: 4e6, conical: 300 } },
  { part: "arm-ball", end: null, rate: { radial: 6e7 } },
  { part: "integral-link", end: "from", rate: { radial: 8e6, axial: 1e6, axis: [0, 1, 0.2], ...turning } },
  { part: "integral-link", end: "to", rate: { radial: 8e6, axial: 1e6, axis: [0.1, 1, 0.2], torsional: 90 } },
  { part: "camber-link", end: "from", rate: { radial: 9e6, axial: 8e5, axis: [1, 0, 0], conical: 200 } },
  { part: "toe-link", end: "to", rate: { radial: 1.1e7, axial: 9e5, axis: [1, 0.1, 0.3], ...turning } },
];
const elasticity: LayoutElasticity = { springRate: 70_000, rubber, members: [], wheelLoad: 4200 };

const balanceAt =
  (hold: Hold) =>
  (of: LayoutElasticity = elasticity, layout = carrier): LayoutBalance =>
    new LayoutBalance(buildLayoutLinkage(layout), of, hold, [
      { kind: "soft", part: "arm-front", end: null, factor: 0.3 },
    ]);

describe.each(holds)("two moving bodies whose rubber resists turns, %s held", (hold) => {
  const under = underOf(hold);
  const balance = balanceAt(hold)();
  const state = solved(balance, under);

  it("stand at design, sound under the wheel load alone", () => {
    const sound = new LayoutBalance(buildLayoutLinkage(carrier), elasticity, hold, []);
    expect(Math.max(...solved(sound, NO_LOAD).pose.t.map(Math.abs))).toBeLessThan(1e-12);
  });

  it("have tangents that agree with differences of whole balances", () => {
    const rates = balance.loadRates(state);
    if (!rates) throw new Error("singular");
    for (const [kind, step] of [
      ["lateral", 200],
      ["braking", 200],
      ["aligning", 20],
    ] as const) {
      const differences = differentiateAll(
        (x) => {
          const { attitude } = solved(balance, { ...under, [kind]: under[kind] + x });
          return [attitude.toe, attitude.camber, ...attitude.centre];
        },
        0,
        step,
      );
      const exact = [rates[kind].toe, rates[kind].camber, ...rates[kind].centre];
      const size = Math.max(...exact.map(Math.abs));
      exact.forEach((e, i) => {
        expect(Math.abs(e - (differences[i] as number)), `${kind} ${i}`).toBeLessThan(1e-7 * size);
      });
    }
  });
});

describe("two moving bodies whose rubber resists turns, at a held height", () => {
  const under = underOf("contact-height");
  const balanceOf = balanceAt("contact-height");
  const balance = balanceOf();
  const state = solved(balance, under);

  it("take in as energy what the load gives", () => {
    // With the height held the drive alone works: by parts along the way, Simpson's rule on the rest.
    const steps = 12;
    const states = Array.from({ length: 2 * steps + 1 }, (_, i) =>
      solved(balance, { ...NO_LOAD, drive: (3000 * i) / (2 * steps) }),
    );
    const energy = ({ forces }: LayoutState): number =>
      forces.reduce((sum, force, i) => sum + (force * force) / (2 * (balance.terms[i]?.rate ?? Number.NaN)), 0);
    const [first, last] = [states[0], states.at(-1)];
    if (!first || !last) throw new Error("no states");
    const x = states.map(({ attitude }) => attitude.centre[0]);
    const rest = Array.from({ length: steps }, (_, k) => {
      const h = 3000 / (2 * steps) / 3;
      return h * ((x[2 * k] as number) + 4 * (x[2 * k + 1] as number) + (x[2 * k + 2] as number));
    }).reduce((sum, part) => sum + part, 0);
    const work = last.load.drive * last.attitude.centre[0] - rest;
    const turned = balance.terms.reduce(
      (sum, { measure, rate }, i) =>
        measure.kind === "swing" || measure.kind === "twist" ? sum + (last.forces[i] as number) ** 2 / (2 * rate) : sum,
      0,
    );
    expect(turned).toBeGreaterThan(1e-4);
    expect(energy(last) - energy(first)).toBeCloseTo(work, 8);
  });

  it("have derivatives by every point and rate that agree with differences", () => {
    const exact = computeLayoutDerivatives(balance, state);
    if (!exact) throw new Error("singular");
    const { points, pointNames } = balance.linkage.mechanism;
    const sizes = [exact.toe, exact.camber].map((list) => Math.max(...list.map(Math.abs)));
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
      const differences = differentiateAll(figures, 0, parameter.kind === "rate" ? 0.02 : 2e-3, 3);
      [exact.toe, exact.camber].forEach((list, i) => {
        const off = Math.abs((list[p] as number) - (differences[i] as number));
        expect(off, JSON.stringify(parameter)).toBeLessThan(1e-7 * (sizes[i] as number));
      });
    });
  });
});

const nameOf = ({ part, end }: LayoutRubber): string => (end ? `${part}.${end}` : part);

function times({ rate }: LayoutRubber, factor: number): LayoutRubber["rate"] {
  return {
    ...rate,
    radial: rate.radial * factor,
    ...(rate.axial === undefined ? {} : { axial: rate.axial * factor }),
    ...(rate.voided ? { voided: { ...rate.voided, rate: rate.voided.rate * factor } } : {}),
    ...(rate.conical === undefined ? {} : { conical: rate.conical * factor }),
    ...(rate.torsional === undefined ? {} : { torsional: rate.torsional * factor }),
  };
}
