import { describe, expect, it } from "vitest";
import type { Vector } from "#numeric";
import { readElasticCorners, readVoidedCorners } from "../../../test/fuzz/reference-corners.ts";
import { type CornerElasticity, type CornerLoad, type ElasticCorner, type EndRate, NO_LOAD } from "./elastic-corner.ts";
import { ComplianceSolver, type ElasticState } from "./solve-compliance.ts";

const load: CornerLoad = { ...NO_LOAD, lateral: 800, braking: 1500, contactRise: 0.02 };

/** The corner with every bush, and the strut top, sent through a map. */
function withRates(corner: ElasticCorner, map: <T extends EndRate>(rate: T, line: Vector) => T): ElasticCorner {
  const { rubber, strutTop, trailingArm, ...rest } = corner.elasticity;
  const { strut } = corner.geometry;
  const line: Vector = strut
    ? [strut.top[0] - strut.axisPoint[0], strut.top[1] - strut.axisPoint[1], strut.top[2] - strut.axisPoint[2]]
    : [0, 0, 1];
  const elasticity: CornerElasticity = {
    ...rest,
    rubber: rubber.map((r) => (r.rate.axis ? { ...r, rate: map(r.rate, r.rate.axis) } : r)),
    ...(strutTop ? { strutTop: map(strutTop, line) } : {}),
    ...(trailingArm?.axis ? { trailingArm: map(trailingArm, trailingArm.axis) } : {}),
  };
  return { ...corner, hold: "contact-height", elasticity };
}

function solved(corner: ElasticCorner): ElasticState {
  const answer = new ComplianceSolver(corner).solve(load);
  if (!("state" in answer)) throw new Error("no balance");
  return answer.state;
}

/** Largest difference of two poses, metres and parts of one. */
const apart = (a: ElasticState, b: ElasticState): number =>
  Math.max(
    ...a.pose.t.map((x, i) => Math.abs(x - (b.pose.t[i] as number))),
    ...a.pose.r.map((x, i) => Math.abs(x - (b.pose.r[i] as number))),
  );

const crossed = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

describe.each(readElasticCorners())("voids in $name", ({ corner }) => {
  // The offset that carries the preload of a strut's top stays in the body where there are voids, else in the knuckle.
  const alike = corner.geometry.strut ? 1e-5 : 1e-13;

  it("are none where both rates are equal, whichever way they lie", () => {
    const plain = solved({ ...corner, hold: "contact-height" });
    for (const through of [[0.3, 0.5, 0.2] as const, [-1, 0.1, 0.4] as const]) {
      const same = withRates(corner, (rate) => ({ ...rate, voided: { rate: rate.radial, through } }));
      expect(apart(solved(same), plain)).toBeLessThan(alike);
    }
  });

  it("turned by a right angle swap the rates, and do something", () => {
    const through: Vector = [0.3, 0.5, 0.2];
    const one = withRates(corner, (rate) => ({ ...rate, voided: { rate: 0.4 * rate.radial, through } }));
    const other = withRates(corner, (rate, axis) => ({
      ...rate,
      radial: 0.4 * rate.radial,
      voided: { rate: rate.radial, through: crossed(axis, through) },
    }));
    expect(apart(solved(other), solved(one))).toBeLessThan(1e-13);
    const turned = withRates(corner, (rate, axis) => ({
      ...rate,
      voided: { rate: 0.4 * rate.radial, through: crossed(axis, through) },
    }));
    expect(apart(solved(turned), solved(one))).toBeGreaterThan(1e-6);
  });
});

describe.each(readVoidedCorners())("the rates against turning of $name", ({ corner }) => {
  const held: ElasticCorner = { ...corner, hold: "contact-height" };
  const without = withRates(corner, ({ conical: _c, torsional: _t, ...rate }) => rate as never);
  const still = (one: ElasticCorner, rise: number): number => {
    const answer = new ComplianceSolver(one).solve({ ...NO_LOAD, contactRise: rise });
    if (!("state" in answer)) throw new Error("no balance");
    return answer.state.wheelLoad;
  };

  it("make the wheel harder to lift and to lower, and carry nothing at ride height", () => {
    expect(still(held, 0)).toBeCloseTo(still(without, 0), 8);
    expect(still(held, 0.03) - still(without, 0.03)).toBeGreaterThan(1);
    expect(still(held, -0.03) - still(without, -0.03)).toBeLessThan(-1);
  });

  it("fall with the rest of a torn bush", () => {
    const [bush] = corner.elasticity.rubber.filter((r) => r.rate.conical !== undefined);
    if (!bush) throw new Error("no bush");
    const torn = { kind: "soft" as const, link: bush.link, end: bush.end, factor: 0.2 };
    expect(still({ ...held, faults: [torn] }, 0.03)).toBeLessThan(still(held, 0.03));
  });
});
