import type { ElasticCorner, LayoutElasticity, LayoutRubber } from "#engines/linkage";
import type { BodyLayout } from "#vehicle";
import { readElasticCorners } from "../../fuzz/reference-corners.ts";
import { layoutOfCorner } from "./layout-of-corner.ts";

interface Named {
  readonly name: string;
  readonly corner: ElasticCorner;
}

/** Every elastic corner with its spring on the knuckle: one moving body, arms as pairs of links. */
export const readKnuckleCorners = (): readonly Named[] =>
  readElasticCorners().flatMap(({ name, corner }) => {
    const { spring } = corner.geometry;
    if (!spring) return [];
    if (spring.seat.on === "knuckle") return [{ name, corner }];
    const moving = corner.geometry.links[0]?.outer ?? spring.body;
    const seat = { on: "knuckle" as const, moving: [moving[0], moving[1] - 0.05, moving[2]] as const };
    return [{ name, corner: { ...corner, geometry: { ...corner.geometry, spring: { ...spring, seat } } } }];
  });

/** Those of them where no two links share an outer point. */
export const readSingleCorners = (): readonly Named[] =>
  readKnuckleCorners().filter(({ corner: { geometry } }) => {
    const outers = new Set(geometry.links.map((l) => l.outer.join()));
    return outers.size === geometry.links.length;
  });

/** Such a corner with what is elastic in it as a layout of one body. */
export function asLayout({ geometry, elasticity }: ElasticCorner): readonly [BodyLayout, LayoutElasticity] {
  const layout = layoutOfCorner(geometry, "links");
  const { spring, strut, trailingArm } = geometry;
  const axis = elasticity.trailingArm?.axis;
  const joints = layout.joints.map((j) =>
    j.name === "trailing-arm" && j.kind === "ball" && axis
      ? { ...j, kind: "bush" as const, axis: { kind: "given" as const, vector: axis }, slides: false }
      : j,
  );
  const seat = spring?.seat.on === "knuckle" ? spring.seat.moving : undefined;
  if (!spring || !seat) throw new Error("no spring on the knuckle");
  const rubber: LayoutRubber[] = elasticity.rubber.map((r) => ({
    part: r.link,
    end: r.end === "inner" ? "from" : "to",
    rate: r.rate,
  }));
  if (strut && elasticity.strutTop) rubber.push({ part: "strut", end: null, rate: elasticity.strutTop });
  if (trailingArm && elasticity.trailingArm)
    rubber.push({ part: "trailing-arm", end: null, rate: elasticity.trailingArm });
  return [
    {
      ...layout,
      joints,
      points: { ...layout.points, seat, top_of_spring: spring.body },
      spring: { from: { on: "car-body", at: "top_of_spring" }, to: { on: "knuckle", at: "seat" } },
    },
    { ...elasticity, rubber },
  ];
}
