import { describe, expect, it } from "vitest";
import { assembleCorner } from "./assemble-corner.ts";
import type { CornerAssembly } from "./corner.ts";
import type { Family, LayoutName } from "./family.ts";
import { familyFromSilhouette } from "./silhouette.ts";

function familyOf(frontLayout: LayoutName, rearLayout: LayoutName): Family {
  const made = familyFromSilhouette({ frontLayout, rearLayout, kerbMass: 1500, frontWeightShare: 0.55 });
  if ("findings" in made) throw new Error(JSON.stringify(made.findings));
  return made.family;
}

const pairs = [
  ["five-link", "five-link"],
  ["double-wishbone", "trailing-arm"],
  ["strut", "five-link"],
] as const;

/** Every triple of numbers in a value with its y turned round. */
function mirrored(value: unknown): unknown {
  if (Array.isArray(value) && value.length === 3 && value.every((figure) => typeof figure === "number")) {
    return [value[0], -(value[1] as number), value[2]];
  }
  if (Array.isArray(value)) return value.map(mirrored);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, key === "sd" ? inner : mirrored(inner)]));
}

describe("assembleCorner", () => {
  it.each(pairs)(
    "gives the right of %s and %s as the mirror image of the left: points and axes, nothing else",
    (front, rear) => {
      const family = familyOf(front, rear);
      for (const axle of ["front", "rear"] as const) {
        const left = assembleCorner(family, `${axle}-left`);
        const right = assembleCorner(family, `${axle}-right`);
        const named = { ...left, corner: right.corner, side: "right" } as CornerAssembly;
        expect(right).toEqual(mirrored(named));
        expect(right.wheel.toe).toBe(left.wheel.toe);
      }
    },
  );

  it("gives the left as it was entered, and freezes what it gives, not the family", () => {
    const family = familyOf("double-wishbone", "five-link");
    const corner = assembleCorner(family, "front-left");
    expect(corner.links[2]?.inner.at).toEqual(family.front.links[2]?.inner.at);
    expect(Object.isFrozen(corner.links[2]?.inner.at)).toBe(true);
    expect(Object.isFrozen(corner.points)).toBe(true);
    expect(Object.isFrozen(family.front.links[2]?.inner.at)).toBe(false);
  });

  it("makes points with equal coordinates one point, named after the first end, with the larger deviation", () => {
    const family = familyOf("double-wishbone", "five-link");
    const [first, second, ...others] = family.front.links;
    if (!first || !second) throw new Error("a double wishbone without an upper arm");
    const surer = { ...second, outer: { ...second.outer, sd: [0.001, 0.03, 0.001] as const } };
    const corner = assembleCorner(
      { ...family, front: { ...family.front, links: [first, surer, ...others] } },
      "front-left",
    );
    expect(corner.points.map(({ name }) => name)).toEqual([
      "upper-arm-front.inner",
      "upper-arm-front.outer",
      "upper-arm-rear.inner",
      "lower-arm-front.inner",
      "lower-arm-front.outer",
      "lower-arm-rear.inner",
      "tie-rod.inner",
      "tie-rod.outer",
    ]);
    expect(corner.links[1]?.outer.point).toBe(corner.links[0]?.outer.point);
    expect(corner.points[1]?.sd).toEqual([0.02, 0.03, 0.012]);
  });

  it("has the load at the contact patch: half the axle's share of the kerb mass times g", () => {
    const family = familyOf("strut", "five-link");
    expect(assembleCorner(family, "front-left").wheelLoad).toBeCloseTo((1500 * 0.55 * 9.80665) / 2, 9);
    expect(assembleCorner(family, "rear-right").wheelLoad).toBeCloseTo((1500 * 0.45 * 9.80665) / 2, 9);
  });

  it("gives bush axes as unit vectors and the spin axis outboard: toe in points it forward, negative camber up", () => {
    const family = familyOf("five-link", "trailing-arm");
    const corner = assembleCorner(family, "rear-right");
    for (const { innerJoint } of corner.links) expect(Math.hypot(...(innerJoint.axis ?? []))).toBeCloseTo(1, 12);
    expect(Math.hypot(...(corner.trailingArm?.freeAxis ?? []))).toBeCloseTo(1, 12);
    const [x, y, z] = corner.wheel.spinAxis;
    expect(x).toBeCloseTo(Math.sin(corner.wheel.toe) * Math.cos(corner.wheel.camber), 15);
    expect(y).toBeLessThan(-0.99);
    expect(z).toBeCloseTo(-Math.sin(corner.wheel.camber), 15);
    expect(x).toBeGreaterThan(0);
    expect(z).toBeGreaterThan(0);
  });

  it("says where the moving end of a spring on a link lies at ride height", () => {
    const family = familyOf("five-link", "five-link");
    const corner = assembleCorner(family, "rear-left");
    const { seat, seatAt } = corner.spring;
    if (seat.on !== "link") throw new Error("the spring does not sit on a link");
    const link = corner.links[seat.link];
    expect(link?.name).toBe("spring-link");
    expect(seatAt[1]).toBeCloseTo(
      (link?.inner.at[1] ?? 0) * (1 - seat.fraction) + (link?.outer.at[1] ?? 0) * seat.fraction,
      12,
    );
  });
});
