import { findDependentConstraints, type CornerGeometry } from "#engines/linkage";
import type { Finding } from "#numeric";

/** A corner whose right number of constraints still leaves a move free, because some of them hold the same thing; or null. */
export function findDependence(geometry: CornerGeometry): Finding | null {
  const group = findDependentConstraints(geometry);
  if (!group) return null;
  const order = geometry.links.map((l) => l.name);
  const last = [...group].filter((name) => order.includes(name)).sort((a, b) => order.indexOf(b) - order.indexOf(a))[0];
  return {
    code: "constraints-dependent",
    path: last === undefined ? "links" : `links[${order.indexOf(last)}]`,
    got: `${group.join(", ")}: together they hold one thing twice`,
    needed: "five constraints that each hold something of their own, so that the linkage can close",
    hint: "Two of these lines coincide, or too many meet in one point or lie in one plane: measure their points again.",
  };
}
