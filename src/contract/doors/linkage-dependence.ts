import {
  buildCornerLinkage,
  type CornerGeometry,
  findDependentConstraints,
  findTravelBlock,
  turnsAboutStrut,
} from "#engines/linkage";
import type { Finding } from "#numeric";

/**
 * What is wrong with a corner that has the right number of constraints: some of them hold the same thing, so that a move
 * stays free, or the one move they leave does not lift the wheel; null where the wheel can travel and do nothing else.
 */
export function findDependence(geometry: CornerGeometry): Finding | null {
  if (turnsAboutStrut(geometry)) return collinearStrut(geometry);
  const { mechanism } = buildCornerLinkage(geometry);
  const group = findDependentConstraints(mechanism);
  if (!group) return findBlock(geometry);
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

const collinearStrut = ({ links }: CornerGeometry): Finding => ({
  code: "constraints-dependent",
  path: "strut",
  got: `a strut line that the lines of ${links.map((l) => l.name).join(", ")} all meet`,
  needed: "one link, such as the tie rod, whose line passes the strut line at a distance",
  hint: "As it stands the knuckle turns freely about the strut line: measure the outer joints and the strut's points again.",
});

function findBlock(geometry: CornerGeometry): Finding | null {
  const group = findTravelBlock(buildCornerLinkage(geometry).mechanism);
  if (!group) return null;
  return {
    code: "constraints-dependent",
    path: "links",
    got: `${group.join(", ")}: together they keep the wheel centre from rising`,
    needed: "a wheel centre that rises when the corner moves",
    hint: "At this position the wheel can only move level: measure the points of these joints again.",
  };
}
