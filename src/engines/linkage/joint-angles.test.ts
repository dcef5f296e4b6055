import { describe, expect, it } from "vitest";
import { norm, rotate, unitVector, type Vector } from "#numeric";
import { readCorners } from "../../../test/fuzz/reference-corners.ts";
import { layoutOfCorner } from "../../../test/reference/layouts/layout-of-corner.ts";
import type { CornerGeometry } from "./geometry.ts";
import { computeDriveShaft, computeJointAngles } from "./joint-angles.ts";
import { LayoutSweep } from "./layout-sweep.ts";
import { TravelSweep } from "./solve-travel.ts";

const noAxis = (): Vector | null => null;

function poseAt(geometry: CornerGeometry, travel: number, rack = 0) {
  const p = new TravelSweep(geometry).solve({ travel, rack });
  if ("foldAt" in p) throw new Error("folds");
  return p;
}

describe("two level arms of one length", () => {
  const arm = 0.35;
  const pair = (name: string, z: number) =>
    [0.15, -0.15].map((x, i) => ({
      name: `${name}-${i}`,
      inner: [x, 0.4, z] as Vector,
      outer: [0, 0.4 + arm, z] as Vector,
      steered: false,
    }));
  const geometry: CornerGeometry = {
    wheel: { centre: [0, 0.78, 0.31], camber: 0, toe: 0, loadedRadius: 0.31 },
    links: [
      ...pair("upper", 0.5),
      ...pair("lower", 0.2),
      { name: "toe", inner: [-0.1, 0.4, 0.3], outer: [-0.1, 0.4 + arm, 0.3], steered: false },
    ],
  };

  it.each([-0.12, -0.05, 0, 0.03, 0.14])("turn their bushes by the angle of the arm, at %s m", (travel) => {
    const angle = Math.asin(travel / arm);
    const { pose } = poseAt(geometry, travel);
    const along = computeJointAngles(geometry, pose, 0, () => [2, 0, 0]);
    expect(along.length).toBe(10);
    for (const { twist, tilt, swing } of along) {
      // The knuckle keeps its attitude: against it the arm turns as much as against the body.
      expect(twist).toBeCloseTo(angle, 13);
      expect(tilt).toBeCloseTo(0, 13);
      expect(swing).toBeCloseTo(Math.abs(angle), 13);
    }
    for (const { twist, tilt } of computeJointAngles(geometry, pose, 0, () => [1, 1, 0])) {
      expect(twist).toBeCloseTo(angle / Math.SQRT2, 13);
      expect(tilt).toBeCloseTo(Math.abs(angle) / Math.SQRT2, 13);
    }
  });

  it.each([-0.12, 0.06])("stretch a drive shaft as a triangle does, at %s m", (travel) => {
    const p = poseAt(geometry, travel);
    const shaft = { inner: [0, 0.15, 0.33] as Vector, outer: [0, 0.7, 0.31] as Vector, innerAxis: [0, 1, 0] as Vector };
    const state = computeDriveShaft(geometry, shaft, p.pose, p.attitude.axis);
    const y = 0.7 - arm + Math.sqrt(arm * arm - travel * travel) - 0.15;
    const z = 0.31 + travel - 0.33;
    expect(state.plunge).toBeCloseTo(Math.hypot(y, z) - Math.hypot(0.55, 0.02), 13);
    expect(state.innerAngle).toBeCloseTo(Math.atan2(Math.abs(z), y), 13);
    expect(state.outerAngle).toBeCloseTo(Math.atan2(Math.abs(z), y), 13);
  });
});

describe.each(readCorners())("joints of $name", ({ geometry }) => {
  it("turn as the arms of the same linkage do where these are bodies", () => {
    const bodies = new LayoutSweep(layoutOfCorner(geometry));
    const rack = geometry.links.some((l) => l.steered) ? 0.02 : 0;
    let compared = 0;
    for (const travel of [-0.06, 0.045]) {
      const p = poseAt(geometry, travel, rack);
      const q = bodies.solve({ travel, rack });
      if ("foldAt" in q) throw new Error("folds");
      const angles = computeJointAngles(geometry, p.pose, rack, noAxis);
      bodies.linkage.bodies.forEach((body, k) => {
        if (k === 0) return;
        const [arm, knuckle] = [q.pose.r.subarray(9 * k, 9 * k + 9), q.pose.r.subarray(0, 9)];
        const trace = (m: ArrayLike<number>): number => (m[0] as number) + (m[4] as number) + (m[8] as number);
        const between = [0, 4, 8].reduce(
          (sum, d) =>
            sum +
            [0, 1, 2].reduce((s, i) => s + (arm[3 * i + d / 4] as number) * (knuckle[3 * i + d / 4] as number), 0),
          0,
        );
        const name = body.replace(/ arm$/, "");
        const of = (end: string) => angles.find((a) => a.link === name && a.end === end)?.swing ?? Number.NaN;
        expect(Math.cos(of("inner"))).toBeCloseTo((trace(arm) - 1) / 2, 12);
        expect(Math.cos(of("outer"))).toBeCloseTo((between - 1) / 2, 12);
        compared++;
      });
    }
    const arms = new Set(geometry.links.map((l) => l.outer.join())).size;
    expect(compared).toBe(2 * (geometry.links.length - arms));
  });

  it("are all at rest at design, and turn a single link by the angle between its lines", () => {
    const design = poseAt(geometry, 0);
    for (const { swing } of computeJointAngles(geometry, design.pose, 0, noAxis)) expect(swing).toBeLessThan(1e-12);
    const p = poseAt(geometry, 0.05);
    const { centre } = geometry.wheel;
    for (const link of geometry.links) {
      if (geometry.links.some((l) => l !== link && l.outer.join() === link.outer.join())) continue;
      const r = rotate(
        p.pose.r,
        [0, 1, 2].map((i) => (link.outer[i] as number) - (centre[i] as number)) as unknown as Vector,
      );
      const now = [0, 1, 2].map((i) => (p.attitude.centre[i] as number) + (r[i] as number) - (link.inner[i] as number));
      const before = [0, 1, 2].map((i) => (link.outer[i] as number) - (link.inner[i] as number));
      const [a, b] = [unitVector(now as unknown as Vector), unitVector(before as unknown as Vector)];
      const chord = norm([a[0] - b[0], a[1] - b[1], a[2] - b[2]]);
      const found = computeJointAngles(geometry, p.pose, 0, noAxis).find(
        (j) => j.link === link.name && j.end === "inner",
      );
      expect(found?.swing).toBeCloseTo(2 * Math.asin(chord / 2), 12);
    }
  });
});
