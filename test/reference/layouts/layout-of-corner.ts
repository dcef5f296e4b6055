import type { CornerGeometry, LinkGeometry } from "#engines/linkage";
import { type BodyLayout, CAR_BODY, type LayoutJoint, type LayoutLink } from "#vehicle";

/**
 * The same corner with its arms as bodies of their own: links that share an outer point become one arm on a bush that
 * holds and one that slides, with a ball outside; a strut becomes a slider, a trailing-arm bush a ball or a sliding bush.
 * Both forms are the same linkage and must give the same answers. With arms as "links" the knuckle alone moves.
 */
export function layoutOfCorner(geometry: CornerGeometry, arms: "bodies" | "links" = "bodies"): BodyLayout {
  const points: Record<string, readonly [number, number, number]> = {};
  const bodies = ["knuckle"];
  const joints: LayoutJoint[] = [];
  const links: LayoutLink[] = [];
  const point = (name: string, at: readonly [number, number, number]): string => {
    points[name] = at;
    return name;
  };
  const groups = new Map<string, LinkGeometry[]>();
  for (const link of geometry.links) {
    const key = arms === "links" ? link.name : link.outer.join();
    groups.set(key, [...(groups.get(key) ?? []), link]);
  }
  for (const [first, second] of groups.values()) {
    if (!first) continue;
    if (!second) {
      links.push({
        name: first.name,
        from: { on: CAR_BODY, at: point(`${first.name}.inner`, first.inner) },
        to: { on: "knuckle", at: point(`${first.name}.outer`, first.outer) },
        steered: first.steered,
      });
      continue;
    }
    const arm = `${first.name} arm`;
    bodies.push(arm);
    const [from, to] = [point(`${first.name}.inner`, first.inner), point(`${second.name}.inner`, second.inner)];
    const axis = { kind: "between", from, to } as const;
    joints.push(
      { kind: "bush", name: first.name, between: [CAR_BODY, arm], at: from, axis, slides: false },
      { kind: "bush", name: second.name, between: [CAR_BODY, arm], at: to, axis, slides: true },
      { kind: "ball", name: `${arm} ball`, between: [arm, "knuckle"], at: point(`${arm}.outer`, first.outer) },
    );
  }
  const { strut, trailingArm } = geometry;
  if (strut)
    joints.push({
      kind: "slider",
      name: "strut",
      line: { on: "knuckle", from: point("axis", strut.axisPoint), to: point("top", strut.top) },
      through: { on: CAR_BODY, at: "top" },
    });
  if (trailingArm) {
    const at = point("bush", trailingArm.bush);
    const between = [CAR_BODY, "knuckle"] as const;
    joints.push(
      trailingArm.freeAxis
        ? {
            kind: "bush",
            name: "trailing-arm",
            between,
            at,
            axis: { kind: "given", vector: trailingArm.freeAxis },
            slides: true,
          }
        : { kind: "ball", name: "trailing-arm", between, at },
    );
  }
  const { centre, camber, toe, loadedRadius } = geometry.wheel;
  return {
    name: "as bodies",
    points,
    bodies,
    joints,
    links,
    wheel: { on: "knuckle", centre, camber, toe, loadedRadius },
  };
}
