import type { MatchQuestion } from "#engines/linkage";
import { factoriseCorrelation } from "#vehicle";
import type { CornerModel } from "../fault/corner-model.ts";
import type { MatchAsked } from "../match.ts";

type Prior = Pick<MatchQuestion, "deviations" | "factor" | "shared">;
type Triple = readonly [number, number, number];

/** Joints that lie on the body or its subframe. */
const onBody = (name: string): boolean =>
  name.endsWith(".inner") || name === "strut.top" || name === "trailing_arm.bush";

/**
 * What is known of the points before the readings. An error that the points of the body share is a part of the deviations on
 * file, never more than the least of them along its axis.
 */
export function priorOf({ u: { bodyBase } }: MatchAsked, model: CornerModel): Prior {
  const factor: Prior["factor"] = (names) => {
    const correlations = model.correlations(names);
    return correlations && factoriseCorrelation(correlations);
  };
  if (bodyBase === 0) return { deviations: model.deviations, factor, shared: [] };
  const body = model.assembly.points.map(({ name }) => name.replace("trailing-arm", "trailing_arm")).filter(onBody);
  const spread = model.deviations(body);
  const common = (axis: 0 | 1 | 2): number => Math.min(bodyBase, ...spread.map((sd) => sd[axis]));
  const sd: Triple = [common(0), common(1), common(2)];
  const own = (name: string, along: Triple): Triple => {
    const rest = (axis: 0 | 1 | 2): number => Math.sqrt(along[axis] ** 2 - sd[axis] ** 2);
    return onBody(name) ? [rest(0), rest(1), rest(2)] : along;
  };
  return {
    deviations: (names) => model.deviations(names).map((along, i) => own(names[i] ?? "", along)),
    factor,
    shared: [{ points: body, sd }],
  };
}
