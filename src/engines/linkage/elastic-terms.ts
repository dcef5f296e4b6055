import { dot, subtract, unitVector, type Vector } from "#numeric";
import type { ElasticCorner, ElasticFault, EndRate } from "./elastic-corner.ts";
import { type ElasticTerm, makeTermState, writeDistanceTerm, writeMeasure } from "./elastic-term.ts";
import { directionAcross } from "./mechanism.ts";
import { buildStrutTopTerms, buildTrailingArmTerms } from "./mount-terms.ts";
import { computeSeatLength } from "./seat.ts";
import { buildTurnTerms, type Softness } from "./turn-terms.ts";

/**
 * Rate of a link along its line from its two ends and its member, in series at design:
 *   1/k = sum over ends [ (u.a)^2/axial + (1 - (u.a)^2)/radial ] + 1/member,
 * with voids (u.e)^2/voided taken out of the radial part, e their direction across the axis.
 * Infinity where nothing in it is elastic.
 */
export function computeLinkRate(u: Vector, ends: readonly EndRate[], member: number | null): number {
  let flexibility = member === null ? 0 : 1 / member;
  for (const end of ends) {
    if (!end.axis || end.axial === undefined) {
      flexibility += 1 / end.radial;
      continue;
    }
    const a = unitVector(end.axis);
    const c = dot(u, a) ** 2;
    if (end.voided) {
      const e = dot(u, directionAcross(a, end.voided.through)) ** 2;
      flexibility += c / end.axial + e / end.voided.rate + Math.max(0, 1 - c - e) / end.radial;
    } else flexibility += c / end.axial + (1 - c) / end.radial;
  }
  return flexibility === 0 ? Number.POSITIVE_INFINITY : 1 / flexibility;
}

/** How much longer the free length of a member is than the healthy one, metres. */
export const shiftOf = (faults: readonly ElasticFault[], name: string): number =>
  faults.reduce((sum, f) => (f.kind === "shift" && f.link === name ? sum + f.by : sum), 0);

/** What the faults leave of the rates at an end of a link, or (end null) of a mount. */
export const softnessOf =
  (faults: readonly ElasticFault[]): Softness =>
  (link, end) =>
    faults.reduce(
      (product, f) =>
        f.kind === "soft" && f.link === link && (end === null || f.end === end) ? product * f.factor : product,
      1,
    );

/** All elastic terms of a corner with its faults: links first, the spring last. The corner must have been checked. */
export function buildElasticTerms(corner: ElasticCorner): ElasticTerm[] {
  const { geometry, elasticity, faults } = corner;
  const softness = softnessOf(faults);
  const links = geometry.links.map((link): ElasticTerm => {
    const u = unitVector(subtract(link.outer, link.inner));
    const ends = elasticity.rubber.filter((r) => r.link === link.name);
    const member = elasticity.members.find((m) => m.link === link.name)?.rate ?? null;
    const rateOf = (rates: readonly EndRate[]): number => computeLinkRate(u, rates, member);
    return {
      kind: "link",
      name: link.name,
      healthyRate: rateOf(ends.map((e) => e.rate)),
      rate: rateOf(ends.map((e) => scaleRate(e.rate, softness(link.name, e.end)))),
      carriesPreload: true,
      play: faults.reduce((sum, f) => (f.kind === "play" && f.link === link.name ? sum + f.total : sum), 0),
      at: (pose, rack, into = makeTermState()) =>
        writeDistanceTerm(geometry, link.outer, link.inner, link.steered ? rack : 0, pose, into),
    };
  });
  const terms = [
    ...links,
    ...buildStrutTopTerms(corner, softness("strut_top", null)),
    ...buildTrailingArmTerms(corner, softness("trailing_arm", null)),
    ...buildTurnTerms(corner, softness),
  ];
  const spring = geometry.spring;
  if (spring)
    terms.push({
      kind: "spring",
      name: "spring",
      healthyRate: elasticity.springRate,
      rate: elasticity.springRate,
      carriesPreload: true,
      play: 0,
      at: (pose, _rack, into = makeTermState()) => {
        const seat = computeSeatLength(geometry, spring, pose);
        return writeMeasure(seat.length, seat.r, seat.gradient, seat.curvature, into);
      },
    });
  return terms;
}

/** Rates of one end all times a factor. */
export function scaleRate(rate: EndRate, factor: number): EndRate {
  if (factor === 1) return rate;
  const { radial, axial, voided, conical, torsional, ...rest } = rate;
  return {
    ...rest,
    radial: radial * factor,
    ...(axial !== undefined ? { axial: axial * factor } : {}),
    ...(voided ? { voided: { ...voided, rate: voided.rate * factor } } : {}),
    ...(conical !== undefined ? { conical: conical * factor } : {}),
    ...(torsional !== undefined ? { torsional: torsional * factor } : {}),
  };
}
