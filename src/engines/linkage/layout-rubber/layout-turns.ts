import type { LayoutLinkage } from "../layout-linkage.ts";
import type { Direction } from "../mechanism.ts";
import type { LayoutElasticity, LayoutRubber, LayoutTerm, Softness } from "./layout-elasticity.ts";
import type { About, TurnMeasure } from "./turn-measure.ts";

/**
 * Members of every rubber that resists being turned, with nothing at design. An end of a link: the shortest turn of the link's
 * line as the body that carries the end sees it. A bush: the rotation vector of its second body as the first sees it. A slider:
 * the tilt of its line as the body of the point sees it. A ball has none.
 */
export function buildLayoutTurns(
  linkage: LayoutLinkage,
  { rubber }: LayoutElasticity,
  soft: Softness,
): readonly LayoutTerm[] {
  return rubber.flatMap((one): LayoutTerm[] =>
    measuresOf(linkage, one).map(({ measure, rate }) => ({
      part: one.part,
      measure,
      carriesPreload: false,
      healthyRate: rate,
      rate: rate * soft(one.part, one.end),
      made: { of: "rubber", rubber: one },
    })),
  );
}

interface Rated {
  readonly measure: TurnMeasure;
  /** N m per radian. */
  readonly rate: number;
}

function measuresOf({ mechanism, layout }: LayoutLinkage, { part, end, rate }: LayoutRubber): readonly Rated[] {
  const joint = layout.joints.find(({ name }) => name === part);
  // The measures of a joint have its axis, and the bodies it joins: the first carries a, the second b.
  const own = mechanism.constraints.find((m) => m.joint === part);
  if (!own) return [];
  if (own.kind === "distance") {
    const { axis } = rate;
    if (!axis) return [];
    const { a, b } = own;
    const carrier = end === "from" ? a.body : b.body;
    return aboutAxis(rate, { kind: "given", vector: axis }).map(({ about, rate: k }) => ({
      measure: { kind: "swing", line: { a, b }, carrier, about },
      rate: k,
    }));
  }
  const { a, b, direction } = own;
  if (joint?.kind === "slider" && direction.kind === "between")
    return aboutAxis({ conical: rate.conical }, direction).map(({ about, rate: k }) => ({
      measure: { kind: "swing", line: { on: a.body, along: direction }, carrier: b.body, about },
      rate: k,
    }));
  if (joint?.kind !== "bush") return [];
  return aboutAxis(rate, direction).map(({ about, rate: k }) => ({
    measure: { kind: "twist", between: [a.body, b.body], about },
    rate: k,
  }));
}

/** Directions a rubber resists turns about: its axis, and two across it. */
function aboutAxis(
  { torsional, conical }: { readonly torsional?: number | undefined; readonly conical?: number | undefined },
  direction: Direction,
): readonly { readonly about: About; readonly rate: number }[] {
  return [
    ...(torsional === undefined ? [] : [{ about: { direction, which: 2 as const }, rate: torsional }]),
    ...(conical === undefined
      ? []
      : ([0, 1] as const).map((which) => ({ about: { direction, which }, rate: conical }))),
  ];
}
