import { subtract, unitVector, type Vector } from "#numeric";
import type { Metres, Newtons, NewtonsPerMetre } from "#quantity";
import type { EndRate } from "../elastic-corner.ts";
import { computeLinkRate, scaleRate } from "../elastic-terms.ts";
import type { LayoutLinkage } from "../layout-linkage.ts";
import type { Measure } from "../mechanism.ts";

/** Rates of one end of a link, or (end null) of a joint, which gives its own axis. */
export interface LayoutRubber {
  readonly part: string;
  readonly end: "from" | "to" | null;
  readonly rate: EndRate;
}

/** What is elastic in a layout of any number of bodies; parts not listed are rigid, bodies always are. */
export interface LayoutElasticity {
  readonly springRate: NewtonsPerMetre;
  readonly rubber: readonly LayoutRubber[];
  readonly members: readonly { readonly link: string; readonly rate: NewtonsPerMetre }[];
  /** Vertical force at the contact patch at design. */
  readonly wheelLoad: Newtons;
}

/** Several faults act together; `part` is a link (with its end where rubber is meant) or a joint. */
export type LayoutFault =
  /** All rates of one end of a link, or of a joint, times a factor. */
  | { readonly kind: "soft"; readonly part: string; readonly end: "from" | "to" | null; readonly factor: number }
  /** A dead band of this total width, of a link along its line, of a joint in every direction across its axis. */
  | { readonly kind: "play"; readonly part: string; readonly total: Metres };

/** One elastic member of a layout: a measure with energy k/2 (m - free)^2; Infinity is rigid. */
export interface LayoutTerm {
  readonly part: string;
  readonly measure: Measure;
  readonly healthyRate: number;
  readonly rate: number;
  /** Takes part in carrying the wheel load at design. */
  readonly carriesPreload: boolean;
  /** What its rates are made of: the ends and member of a link in series, or the rubber of a joint; null: exact. */
  readonly made: LinkMade | JointMade | null;
}

/** A link: each end with what its faults leave of it. */
export interface LinkMade {
  readonly of: "link";
  readonly ends: readonly { readonly rubber: LayoutRubber; readonly soft: number }[];
  readonly member: number | null;
}

/** A joint: its rates go with one factor. */
export interface JointMade {
  readonly of: "joint";
  readonly rubber: LayoutRubber;
}

/** Name of a rate among the uncertain ones: "<link>.from", "<link>.to" or that of the joint. */
export const rateName = ({ part, end }: Pick<LayoutRubber, "part" | "end">): string => (end ? `${part}.${end}` : part);

/**
 * The elastic members of a layout: its links (ends and member in series), its joints (across their axis, along it), the
 * spring last. A bush that slides and has a rate along its axis resists there too, with nothing at design.
 */
export function buildLayoutTerms(
  linkage: LayoutLinkage,
  elasticity: LayoutElasticity,
  faults: readonly LayoutFault[],
): readonly LayoutTerm[] {
  const { mechanism, layout } = linkage;
  const soft = (part: string, end: LayoutRubber["end"]): number =>
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
    const held = rubber ? measuresWithVoids(measures, rubber.rate) : measures;
    const rateOf = (which: number): number => {
      if (!rubber) return Number.POSITIVE_INFINITY;
      const { radial, axial, voided } = rubber.rate;
      return which === 2 ? (axial ?? radial) : which === 0 ? (voided?.rate ?? radial) : radial;
    };
    const rated = (measure: Measure, which: number, carriesPreload: boolean): LayoutTerm => ({
      part: joint.name,
      measure,
      carriesPreload,
      healthyRate: rateOf(which),
      rate: rateOf(which) * soft(joint.name, null),
      made: rubber ? { of: "joint", rubber } : null,
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
    ...(spring ? [{ part: "spring", measure: spring, carriesPreload: true, healthyRate: rate, rate, made: null }] : []),
  ];
}

/** The measures of a bush with its cross directions turned through its voids and across both. */
function measuresWithVoids(measures: readonly Measure[], { voided }: EndRate): readonly Measure[] {
  if (!voided) return measures;
  return measures.map((m) =>
    m.kind === "offset" && m.direction.kind !== "across"
      ? { ...m, direction: { kind: "across", along: m.direction, toward: voided.through } }
      : m,
  );
}
