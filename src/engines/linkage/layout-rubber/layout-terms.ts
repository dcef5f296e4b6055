import { subtract, unitVector, type Vector } from "#numeric";
import type { EndRate } from "../elastic-corner.ts";
import { computeLinkRate, scaleRate } from "../elastic-terms.ts";
import type { LayoutLinkage } from "../layout-linkage.ts";
import type { Measure } from "../mechanism.ts";
import type { LayoutElasticity, LayoutFault, LayoutTerm, Softness } from "./layout-elasticity.ts";
import { buildLayoutTurns } from "./layout-turns.ts";
import type { ElasticMeasure } from "./turn-measure.ts";

/**
 * The elastic members of a layout: its links (ends and member in series), its joints (across their axis, along it), what
 * resists being turned, the spring last. A bush that slides and has a rate along its axis resists there too, with nothing at
 * design.
 */
export function buildLayoutTerms(
  linkage: LayoutLinkage,
  elasticity: LayoutElasticity,
  faults: readonly LayoutFault[],
): readonly LayoutTerm[] {
  const { mechanism, layout } = linkage;
  const soft: Softness = (part, end) =>
    faults.reduce(
      (product, f) => (f.kind === "soft" && f.part === part && f.end === end ? product * f.factor : product),
      1,
    );
  const links = mechanism.constraints.flatMap((measure): LayoutTerm[] => {
    if (measure.kind !== "distance") return [];
    const part = measure.joint;
    const ends = elasticity.rubber.filter((r) => r.part === part);
    const member = elasticity.members.find((m) => m.link === part)?.rate ?? null;
    const line = unitVector(
      subtract(mechanism.points[measure.b.point] as Vector, mechanism.points[measure.a.point] as Vector),
    );
    const withSoft = ends.map((rubber) => ({ rubber, soft: soft(part, rubber.end) }));
    return [
      {
        part,
        measure,
        carriesPreload: true,
        healthyRate: computeLinkRate(
          line,
          ends.map((r) => r.rate),
          member,
        ),
        rate: computeLinkRate(
          line,
          withSoft.map((r) => scaleRate(r.rubber.rate, r.soft)),
          member,
        ),
        made: { of: "link", ends: withSoft, member },
      },
    ];
  });
  const joints = layout.joints.flatMap((joint): LayoutTerm[] => {
    const measures = mechanism.constraints.filter((m) => m.kind === "offset" && m.joint === joint.name);
    const rubber = elasticity.rubber.find((r) => r.part === joint.name);
    const held = rubber ? measuresWithVoids(measures, joint.kind === "slider", rubber.rate) : measures;
    const rateOf = (which: number): number => {
      if (!rubber) return Number.POSITIVE_INFINITY;
      const { radial, axial, voided } = rubber.rate;
      return which === 2 ? (axial ?? radial) : which === 0 ? (voided?.rate ?? radial) : radial;
    };
    const rated = (measure: ElasticMeasure, which: number, carriesPreload: boolean): LayoutTerm => ({
      part: joint.name,
      measure,
      carriesPreload,
      healthyRate: rateOf(which),
      rate: rateOf(which) * soft(joint.name, null),
      made: rubber ? { of: "rubber", rubber } : null,
    });
    const [first] = measures;
    const along = joint.kind === "bush" && joint.slides && rubber?.rate.axial !== undefined;
    return [
      ...held.map((measure, which) => rated(measure, which, true)),
      ...(along && first?.kind === "offset" ? [rated({ ...first, which: 2 }, 2, false)] : []),
    ];
  });
  const { spring } = linkage;
  const rate = elasticity.springRate;
  return [
    ...links,
    ...joints,
    ...buildLayoutTurns(linkage, elasticity, soft),
    ...(spring ? [{ part: "spring", measure: spring, carriesPreload: true, healthyRate: rate, rate, made: null }] : []),
  ];
}

/**
 * The measures of a joint with its cross directions turned through its voids and across both. Of a slider the voids stay in the
 * body of the point, and tilt with the line.
 */
function measuresWithVoids(
  measures: readonly Measure[],
  isSlider: boolean,
  { voided }: EndRate,
): readonly ElasticMeasure[] {
  if (!voided) return measures;
  return measures.map((m): ElasticMeasure => {
    if (m.kind !== "offset" || m.direction.kind === "across") return m;
    const across = { kind: "across", along: m.direction, toward: voided.through } as const;
    return isSlider
      ? { kind: "seated-offset", a: m.a, b: m.b, line: m.direction, toward: { direction: across, which: m.which } }
      : { ...m, direction: across };
  });
}
