import { describe, expect, it } from "vitest";
import type { Vector } from "#numeric";
import { differentiateAll } from "../../../test/fuzz/differences.ts";
import { readCorners } from "../../../test/fuzz/reference-corners.ts";
import type { TravelPosition } from "./describe-position.ts";
import type { CornerGeometry } from "./geometry.ts";
import { TravelSweep } from "./solve-travel.ts";

const link = (name: string, inner: Vector, outer: Vector) => ({ name, inner, outer, steered: false });

function solved(geometry: CornerGeometry, travel: number, rack = 0): TravelPosition {
  const p = new TravelSweep(geometry).solve({ travel, rack });
  if ("foldAt" in p) throw new Error(`folds at ${p.foldAt}`);
  return p;
}

describe("two level arms of one length", () => {
  const arm = 0.35;
  const pair = (name: string, z: number) =>
    [0.15, -0.15].map((x, i) => link(`${name}-${i}`, [x, 0.4, z], [0, 0.4 + arm, z]));
  const geometry: CornerGeometry = {
    wheel: { centre: [0, 0.78, 0.31], camber: -0.01, toe: 0.002, loadedRadius: 0.31 },
    links: [...pair("upper", 0.5), ...pair("lower", 0.2), link("toe", [-0.1, 0.4, 0.3], [-0.1, 0.4 + arm, 0.3])],
  };

  it.each([-0.2, -0.06, 0, 0.05, 0.2])("swing the wheel on a circle and never turn it, at %s m", (travel) => {
    const p = solved(geometry, travel);
    expect(p.attitude.camber).toBeCloseTo(-0.01, 14);
    expect(p.attitude.toe).toBeCloseTo(0.002, 14);
    expect(p.attitude.spin).toBeCloseTo(0, 14);
    expect(p.attitude.centre[0]).toBeCloseTo(0, 14);
    expect(p.attitude.centre[1]).toBeCloseTo(0.78 - arm + Math.sqrt(arm * arm - travel * travel), 14);
    expect([p.camberGain, p.toeGain, p.spinGain].map(Math.abs).every((x) => x < 1e-13)).toBe(true);
    expect(p.frontViewCentre).toBeNull();
    expect(p.sideViewCentre).toBeNull();
    const slope = -travel / Math.sqrt(arm * arm - travel * travel);
    expect(p.rollCentreMigrating).toBeCloseTo(p.attitude.contact[1] * slope, 13);
    expect(p.rollCentreConstruction).toBeCloseTo(p.attitude.contact[1] * slope, 13);
  });

  it("do not bind within 200 mm", () => {
    expect(new TravelSweep(geometry).findEnds(0.2)).toEqual({ low: null, high: null });
  });
});

describe("an arm that turns about one cross axis", () => {
  const pivot: Vector = [-2.1, 0.6, 0.28];
  const centre: Vector = [-2.6, 0.76, 0.31];
  const geometry: CornerGeometry = {
    wheel: { centre, camber: 0, toe: 0, loadedRadius: 0.3 },
    trailingArm: { bush: pivot },
    links: [link("outer", [-2.1, 0.3, 0.28], [-2.55, 0.7, 0.3]), link("inner", [-2.1, 0.1, 0.28], [-2.4, 0.65, 0.25])],
  };
  const reach = Math.hypot(centre[0] - pivot[0], centre[2] - pivot[2]);
  const start = Math.atan2(centre[2] - pivot[2], pivot[0] - centre[0]);

  it.each([-0.12, -0.03, 0, 0.04, 0.15])("carries the wheel round it, at %s m", (travel) => {
    const p = solved(geometry, travel);
    const angle = Math.asin((centre[2] + travel - pivot[2]) / reach);
    expect(p.attitude.centre[0]).toBeCloseTo(pivot[0] - reach * Math.cos(angle), 13);
    expect(p.attitude.centre[1]).toBeCloseTo(centre[1], 13);
    expect([p.attitude.camber, p.attitude.toe].map(Math.abs).every((x) => x < 1e-13)).toBe(true);
    // Turning about +y by less than nothing lifts a wheel behind the pivot.
    expect(p.attitude.spin).toBeCloseTo(angle - start, 13);
    expect(p.sideViewCentre?.[0]).toBeCloseTo(pivot[0], 12);
    expect(p.sideViewCentre?.[1]).toBeCloseTo(pivot[2], 12);
    const patch = p.attitude.contact;
    expect(p.brakeSlope).toBeCloseTo((patch[2] - pivot[2]) / (pivot[0] - patch[0]), 12);
    expect(p.rollCentreMigrating).toBeCloseTo(0, 12);
  });
});

describe("a strut in the plane of the axle", () => {
  const top: Vector = [0, 0.59, 0.88];
  const axisPoint: Vector = [0, 0.62, 0.62];
  const [inner, outer]: [Vector, Vector] = [
    [0, 0.36, 0.21],
    [0, 0.74, 0.18],
  ];
  const shifted = (v: Vector, x: number): Vector => [x, v[1], v[2]];
  const geometry: CornerGeometry = {
    wheel: { centre: [0, 0.76, 0.3], camber: 0, toe: 0, loadedRadius: 0.3 },
    strut: { top, axisPoint },
    links: [
      link("front", shifted(inner, 0.12), outer),
      link("rear", shifted(inner, -0.12), outer),
      link("guide", shifted(inner, 0.1), shifted(outer, 0.1)),
    ],
    spring: { body: top, seat: { on: "knuckle", moving: axisPoint } },
  };

  it.each([-0.08, -0.02, 0.03, 0.08])(
    "has its instant centre where the arm meets the line across the top, at %s m",
    (travel) => {
      const p = solved(geometry, travel);
      const turn = -p.attitude.camber;
      const carried = (v: Vector): [number, number] => {
        const [y, z] = [v[1] - 0.76, v[2] - 0.3];
        return [
          p.attitude.centre[1] + Math.cos(turn) * y - Math.sin(turn) * z,
          p.attitude.centre[2] + Math.sin(turn) * y + Math.cos(turn) * z,
        ];
      };
      const [joint, point] = [carried(outer), carried(axisPoint)];
      expect(Math.hypot(joint[0] - inner[1], joint[1] - inner[2])).toBeCloseTo(Math.hypot(0.38, 0.03), 13);
      const line = [top[1] - point[0], top[2] - point[1]] as const;
      const across = [-line[1], line[0]] as const;
      const arm = [joint[0] - inner[1], joint[1] - inner[2]] as const;
      // top + a across = inner + b arm
      const d = [inner[1] - top[1], inner[2] - top[2]] as const;
      const a = (d[0] * arm[1] - d[1] * arm[0]) / (across[0] * arm[1] - across[1] * arm[0]);
      expect(p.frontViewCentre?.[0]).toBeCloseTo(top[1] + a * across[0], 10);
      expect(p.frontViewCentre?.[1]).toBeCloseTo(top[2] + a * across[1], 10);
      expect(p.springLength).toBeCloseTo(Math.hypot(...line), 13);
    },
  );
});

describe.each(readCorners().filter(({ name }) => name !== "rear_five_link_weak"))("$name", ({ geometry }) => {
  const SCALE = 3.7;
  const grow = (p: Vector): Vector => [p[0] * SCALE, p[1] * SCALE, p[2] * SCALE];

  it("keeps its angles and scales its lengths when everything grows", () => {
    const { spring: _s, damper: _d, strut, trailingArm, ...rest } = geometry;
    const grown: CornerGeometry = {
      ...rest,
      wheel: { ...rest.wheel, centre: grow(rest.wheel.centre), loadedRadius: rest.wheel.loadedRadius * SCALE },
      links: rest.links.map((l) => ({ ...l, inner: grow(l.inner), outer: grow(l.outer) })),
      ...(strut ? { strut: { top: grow(strut.top), axisPoint: grow(strut.axisPoint) } } : {}),
      ...(trailingArm ? { trailingArm: { ...trailingArm, bush: grow(trailingArm.bush) } } : {}),
    };
    for (const travel of [-0.06, 0.05]) {
      const [p, q] = [
        solved({ ...rest, ...(strut ? { strut } : {}), ...(trailingArm ? { trailingArm } : {}) }, travel),
        solved(grown, travel * SCALE),
      ];
      expect(q.attitude.camber).toBeCloseTo(p.attitude.camber, 13);
      expect(q.attitude.toe).toBeCloseTo(p.attitude.toe, 13);
      expect(q.attitude.spin).toBeCloseTo(p.attitude.spin, 13);
      expect(q.toeGain * SCALE).toBeCloseTo(p.toeGain, 11);
      expect(q.rollCentreMigrating / SCALE).toBeCloseTo(p.rollCentreMigrating, 11);
      expect(q.brakeSlope).toBeCloseTo(p.brakeSlope, 12);
      expect((q.steering?.heightHeld?.trail ?? 0) / SCALE).toBeCloseTo(p.steering?.heightHeld?.trail ?? 0, 11);
    }
  });

  it("has gains and a spring ratio that agree with differences along the travel", () => {
    for (const travel of [-0.05, 0, 0.04]) {
      const p = solved(geometry, travel);
      const differences = differentiateAll(
        (x) => {
          const q = solved(geometry, x);
          return [
            q.attitude.camber,
            q.attitude.toe,
            q.attitude.spin,
            ...q.attitude.centre,
            ...q.attitude.contact,
            -(q.springLength ?? 0),
          ];
        },
        travel,
        4e-3,
      );
      const exact = [p.camberGain, p.toeGain, p.spinGain, ...p.screw.v];
      exact.forEach((e, i) => {
        expect(e).toBeCloseTo(differences[i] as number, 9);
      });
      expect(p.springRatio).toBeCloseTo(differences[9] as number, 9);
      const contact = differences.slice(6, 9) as [number, number, number];
      expect(p.rollCentreMigrating).toBeCloseTo((p.attitude.contact[1] * contact[1]) / contact[2], 8);
      expect(exact.some((e, i) => e !== differences[i])).toBe(true);
    }
  });

  it("answers the same whatever was asked before", () => {
    const sweep = new TravelSweep(geometry);
    const first = sweep.solve({ travel: 0.03, rack: 0 });
    sweep.solve({ travel: -0.07, rack: 0 });
    sweep.solve({ travel: 0.9, rack: 0 });
    expect(sweep.solve({ travel: 0.03, rack: 0 })).toEqual(first);
  });
});

describe.each(readCorners())("the ends of $name", ({ geometry }) => {
  const sweep = new TravelSweep(geometry);
  const reaches = (travel: number, rack: number): boolean => "pose" in sweep.solve({ travel, rack });

  it("lie between what is reached and what is not", () => {
    const ends = [-0.6, 0.6].flatMap((travel) => {
      const p = sweep.solve({ travel, rack: 0 });
      return "foldAt" in p ? [p.foldAt] : [];
    });
    expect(ends.length).toBe(2);
    for (const end of ends) {
      expect(reaches(end - Math.sign(end) * 1e-6, 0)).toBe(true);
      expect(reaches(end + Math.sign(end) * 1e-6, 0)).toBe(false);
    }
  });
});

const steered = readCorners().filter(({ geometry }) => geometry.links.some((l) => l.steered));

describe.each(steered)("the ends of the rack of $name", ({ geometry }) => {
  const sweep = new TravelSweep(geometry);

  it.each([-1, 1])("lie between what is reached and what is not, on side %s", (side) => {
    const p = sweep.solve({ travel: 0, rack: side });
    if (!("foldAt" in p)) throw new Error("a rack of a metre was reached");
    expect(p.on).toBe("rack");
    expect("pose" in sweep.solve({ travel: 0, rack: p.foldAt - side * 1e-7 })).toBe(true);
    expect("pose" in sweep.solve({ travel: 0, rack: p.foldAt + side * 1e-7 })).toBe(false);
  });
});
