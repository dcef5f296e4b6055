import { describe, expect, it } from "vitest";
import type { Vector } from "#numeric";
import { differentiateAll } from "../../../test/fuzz/differences.ts";
import { movePoint, readElasticCorners, readVoidedCorners } from "../../../test/fuzz/reference-corners.ts";
import { type CornerLoad, type ElasticCorner, type ElasticFault, NO_LOAD } from "./elastic-corner.ts";
import { scaleRate } from "./elastic-terms.ts";
import { ComplianceSolver } from "./solve-compliance.ts";
import { FaultBand } from "./solve-fault-band.ts";

const load: CornerLoad = { ...NO_LOAD, braking: 1500, lateral: -600, contactRise: 0.01 };

/** Softens the first listed end; "strut_top" and "trailing_arm" are softened where there are any. */
function faultsFor(corner: ElasticCorner): ElasticFault[] {
  const [first] = corner.elasticity.rubber;
  const mount = corner.geometry.strut ? "strut_top" : corner.geometry.trailingArm ? "trailing_arm" : null;
  return [
    ...(first ? [{ kind: "soft" as const, link: first.link, end: first.end, factor: 0.3 }] : []),
    ...(mount ? [{ kind: "soft" as const, link: mount, end: "inner" as const, factor: 0.5 }] : []),
  ];
}

/** Toe and camber under a load, with the height held. */
function stateFigures(corner: ElasticCorner): number[] {
  const answer = new ComplianceSolver(corner).solve(load);
  if (!("state" in answer)) throw new Error("no balance");
  return [answer.state.attitude.toe, answer.state.attitude.camber];
}

/** Toe per newton of braking under the wheel load alone. */
function tangentFigures(corner: ElasticCorner): number[] {
  const rates = new ComplianceSolver(corner).solveLoadRates();
  if (!rates) throw new Error("no balance");
  return [rates.braking.toe];
}

/** All rates of one joint times 1 + x. */
function scaleRates(corner: ElasticCorner, name: string, x: number): ElasticCorner {
  const { elasticity } = corner;
  const factor = 1 + x;
  return {
    ...corner,
    elasticity: {
      ...elasticity,
      rubber: elasticity.rubber.map((r) =>
        `${r.link}.${r.end}` === name ? { ...r, rate: scaleRate(r.rate, factor) } : r,
      ),
      ...(elasticity.strutTop !== undefined && name === "strut_top"
        ? { strutTop: scaleRate(elasticity.strutTop, factor) }
        : {}),
      ...(elasticity.trailingArm && name === "trailing_arm"
        ? { trailingArm: scaleRate(elasticity.trailingArm, factor) }
        : {}),
    },
  };
}

function compare(exact: readonly number[], differences: readonly number[], what: string): void {
  const scale = Math.max(...exact.map(Math.abs), ...differences.map(Math.abs));
  exact.forEach((e, i) => {
    expect(Math.abs(e - (differences[i] as number)), what).toBeLessThan(1e-8 * scale + 1e-13);
  });
}

/** The corner with one link that does not give at all. */
function withRigidLink(corner: ElasticCorner): ElasticCorner {
  const link = corner.geometry.links.at(-1)?.name;
  const { elasticity } = corner;
  return {
    ...corner,
    elasticity: {
      ...elasticity,
      rubber: elasticity.rubber.filter((r) => r.link !== link),
      members: elasticity.members.filter((m) => m.link !== link),
    },
  };
}

const corners = [
  ...readElasticCorners().flatMap(({ name, corner }) => [
    { name, corner },
    { name: `${name} with a rigid link`, corner: withRigidLink(corner) },
  ]),
  ...readVoidedCorners().filter(({ name }) => /strut|double_wishbone|three/.test(name)),
];

describe.each(corners)("the derivatives of $name with rubber", ({ corner: healthy }) => {
  const rates = [
    ...healthy.elasticity.rubber.map((r) => `${r.link}.${r.end}`),
    ...(healthy.elasticity.strutTop === undefined ? [] : ["strut_top"]),
    ...(healthy.elasticity.trailingArm ? ["trailing_arm"] : []),
  ].map((name) => ({ name, sd: 0.1 }));
  const faulty: ElasticCorner = { ...healthy, faults: faultsFor(healthy) };
  const heldAtHeight: ElasticCorner = { ...faulty, hold: "contact-height" };
  const held = new FaultBand(heldAtHeight, (names) => names.map(() => [1, 1, 1]), rates);
  const answer = held.solver.solve(load);
  if (!("state" in answer)) throw new Error("no balance");
  const band = held.bandAt(answer.state, load);
  const free = new FaultBand(faulty, (names) => names.map(() => [1, 1, 1]), rates);
  const tangent = free.tangentBand();
  if (!band || !tangent) throw new Error("singular");
  const { points, pointNames } = held.jets.linkage.mechanism;
  const column = 3 * points.length;
  let same = 0;

  it("by hard points agree with differences of whole solutions: state with the height held", () => {
    points.forEach((point, k) => {
      for (const axis of [0, 1, 2]) {
        const moved = (x: number) => ({
          ...heldAtHeight,
          geometry: movePoint(healthy.geometry, point as Vector, axis, x),
        });
        const differences = differentiateAll((x) => stateFigures(moved(x)), 0, 2e-3);
        const exact = [band.toe, band.camber].map((jet) => jet[3 * k + axis + 1] as number);
        compare(exact, differences, `${pointNames[k]} ${axis}`);
        if (exact.some((e, i) => e !== 0 && e === differences[i])) same++;
      }
    });
    expect(same).toBeLessThan(column / 10);
  });

  it.each(["wheel-load", "contact-height"] as const)(
    "by hard points agree with differences of whole solutions: tangent, %s held",
    (hold) => {
      const one: ElasticCorner = { ...faulty, hold };
      const exact = new FaultBand(one, (names) => names.map(() => [1, 1, 1]), rates).tangentBand()?.toe;
      if (!exact) throw new Error("singular");
      const scale = Math.max(...exact.slice(1, column + 1).map(Math.abs));
      points.forEach((point, k) => {
        for (const axis of [0, 1, 2]) {
          const moved = (x: number) => ({ ...one, geometry: movePoint(healthy.geometry, point as Vector, axis, x) });
          const [difference] = differentiateAll((x) => tangentFigures(moved(x)), 0, 2e-3);
          const off = Math.abs((exact[3 * k + axis + 1] as number) - (difference as number));
          expect(off, `${pointNames[k]} ${axis}`).toBeLessThan(1e-8 * scale);
        }
      });
    },
  );

  it("by rubber rates agree with differences of whole solutions", () => {
    rates.forEach(({ name }, k) => {
      const differences = [
        ...differentiateAll((x) => stateFigures(scaleRates(heldAtHeight, name, x)), 0, 0.02),
        ...differentiateAll((x) => tangentFigures(scaleRates(faulty, name, x)), 0, 0.02),
      ];
      const exact = [band.toe, band.camber, tangent.toe].map((jet) => jet[column + k + 1] as number);
      const sizes = [band.toe, band.camber, tangent.toe].map((jet) => Math.max(...jet.slice(1).map(Math.abs)));
      exact.forEach((e, i) => {
        expect(Math.abs(e - (differences[i] as number)), `${name} ${i}`).toBeLessThan(1e-9 * (sizes[i] as number));
      });
    });
  });

  it("have values that are those of the ordinary solution", () => {
    expect(band.toe[0]).toBe(answer.state.attitude.toe);
    expect(tangent.toe[0]).toBeCloseTo(tangentFigures(faulty)[0] as number, 18);
  });
});
