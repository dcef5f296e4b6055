import type { z } from "zod";
import type { CornerGeometry, SharedError } from "#engines/linkage";
import type { Vector } from "#numeric";
import type { oneBase } from "./linkage-match-schema.ts";

/** The name the mechanism gives the point a name stands for: joints in one place are one point, named after the first. */
export function pointNaming(geometry: CornerGeometry): (name: string) => string {
  const places: [string, Vector][] = geometry.links.flatMap((l): [string, Vector][] => [
    [`${l.name}.inner`, l.inner],
    [`${l.name}.outer`, l.outer],
  ]);
  if (geometry.strut) places.push(["strut.top", geometry.strut.top], ["strut.axis_point", geometry.strut.axisPoint]);
  if (geometry.trailingArm) places.push(["trailing_arm.bush", geometry.trailingArm.bush]);
  return (name) => {
    const place = places.find(([known]) => known === name)?.[1];
    return places.find(([, p]) => place !== undefined && p.every((c, i) => c === place[i]))?.[0] ?? name;
  };
}

/** Errors that points measured from one base share. */
export function sharedErrors(bases: z.output<typeof oneBase>, geometry: CornerGeometry): readonly SharedError[] {
  const naming = pointNaming(geometry);
  return bases.map(({ points, sd_mm: { x, y, z } }) => ({
    points: [...new Set(points.map(naming))],
    sd: [x / 1000, y / 1000, z / 1000],
  }));
}
