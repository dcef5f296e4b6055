import { describe, expect, it } from "vitest";
import { add, cross, dot, norm, rotate, scale, seededRandom, subtract, unitVector, type Vector } from "#numeric";
import { CAR_BODY } from "#vehicle";
import { differentiateAll } from "../../../../test/fuzz/differences.ts";
import { readVoidedCorners } from "../../../../test/fuzz/reference-corners.ts";
import { layoutOfCorner } from "../../../../test/reference/layouts/layout-of-corner.ts";
import { buildLayoutLinkage } from "../layout-linkage.ts";
import { designTriad, GROUND } from "../mechanism.ts";
import { advancePose, clonePose, designPose, type Pose } from "../pose.ts";
import type { LayoutElasticity, LayoutTerm } from "./layout-elasticity.ts";
import { buildLayoutTerms } from "./layout-terms.ts";
import { placeElastic } from "./place-elastic.ts";
import { designLineOf, pointsOfElastic } from "./turn-measure.ts";

/** A strut and its arm as two bodies, with voids in the top mount and every bush resisting turns (figures invented). */
const corner = readVoidedCorners().find(({ corner: { geometry } }) => geometry.strut)?.corner;
if (!corner) throw new Error("no strut in the reference");
const { spring, strut } = corner.geometry;
if (!spring || !strut) throw new Error("no spring or strut");
const bare = layoutOfCorner(corner.geometry, "bodies");
const layout = {
  ...bare,
  points: { ...bare.points, body: spring.body, seat: strut.axisPoint },
  spring: { from: { on: CAR_BODY, at: "body" }, to: { on: "knuckle", at: "seat" } },
};
const bush = { radial: 5e6, conical: 350, torsional: 120 };
const voided = { rate: 2e6, through: [1, 0.3, 0.2] } as const;
const elasticity: LayoutElasticity = {
  springRate: 40_000,
  wheelLoad: 4000,
  members: [],
  rubber: [
    ...layout.joints.flatMap(({ name, kind }) =>
      kind === "bush" ? [{ part: name, end: null, rate: { ...bush, voided } }] : [],
    ),
    { part: "strut", end: null, rate: { radial: 3e6, voided, conical: 200 } },
    ...layout.links.flatMap(({ name }) =>
      (["from", "to"] as const).map((end) => ({
        part: name,
        end,
        rate: { ...bush, axial: 1e6, axis: [0.9, 0.2, 0.3] as const },
      })),
    ),
  ],
};
const linkage = buildLayoutLinkage(layout);
const { mechanism } = linkage;
const terms = buildLayoutTerms(linkage, elasticity, []);
const steps = 6 * mechanism.origins.length;
const rack = 0.004;

/** Where a point of a body stands, by definition. */
function placeOf(pose: Pose, { body, point, onRack }: { body: number; point: number; onRack: boolean }): Vector {
  const p = mechanism.points[point] as Vector;
  if (body === GROUND) return onRack ? add(p, [0, rack, 0]) : p;
  const origin = mechanism.origins[body] as Vector;
  const t = [0, 1, 2].map((c) => pose.t[3 * body + c] as number) as [number, number, number];
  return add(add(origin, t), turned(pose, body, subtract(p, origin)));
}

const turned = (pose: Pose, body: number, v: Vector): Vector =>
  body === GROUND ? v : rotate(pose.r.subarray(9 * body, 9 * body + 9), v);

/** Rotation vector of the shortest turn from one unit vector to another. */
function shortestTurn(from: Vector, to: Vector): Vector {
  const axis = cross(from, to);
  const sine = norm(axis);
  return sine === 0 ? axis : scale(axis, Math.atan2(sine, dot(from, to)) / sine);
}

/** A vector turned by a rotation vector (Rodrigues). */
function turnBy(o: Vector, v: Vector): Vector {
  const angle = norm(o);
  if (angle === 0) return v;
  const axis = scale(o, 1 / angle);
  return add(
    add(scale(v, Math.cos(angle)), scale(cross(axis, v), Math.sin(angle))),
    scale(axis, dot(axis, v) * (1 - Math.cos(angle))),
  );
}

/** Rotation vector of a turn told by what it makes of the three axes: half the sum of e x e' is the axis times the sine. */
function turnOfAxes(seen: (e: Vector) => Vector): Vector {
  const axes: readonly Vector[] = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  const axis = axes.reduce<Vector>((sum, e) => add(sum, scale(cross(e, seen(e)), 0.5)), [0, 0, 0]);
  const cosine = (axes.reduce((sum, e) => sum + dot(e, seen(e)), 0) - 1) / 2;
  const sine = norm(axis);
  return scale(axis, Math.atan2(sine, cosine) / sine);
}

/** A measure by its definition, nothing shared with how it is computed. */
function defined({ measure: m }: LayoutTerm, pose: Pose): number {
  const direction = (of: Parameters<typeof designTriad>[0], which: 0 | 1 | 2) =>
    designTriad(of, mechanism.points)[which];
  switch (m.kind) {
    case "distance":
      return norm(subtract(placeOf(pose, m.b), placeOf(pose, m.a)));
    case "offset": {
      const e = turned(pose, m.carrier, direction(m.direction, m.which));
      return dot(e, subtract(placeOf(pose, m.b), placeOf(pose, m.a)));
    }
    case "seated-offset": {
      const line = direction(m.line, 2);
      const tilt = shortestTurn(turned(pose, m.b.body, line), turned(pose, m.a.body, line));
      const e = turnBy(tilt, turned(pose, m.b.body, direction(m.toward.direction, m.toward.which)));
      return dot(e, subtract(placeOf(pose, m.b), placeOf(pose, m.a)));
    }
    case "swing": {
      const line = direction(designLineOf(m), 2);
      const now =
        "on" in m.line
          ? turned(pose, m.line.on, line)
          : unitVector(subtract(placeOf(pose, m.line.b), placeOf(pose, m.line.a)));
      const about = turned(pose, m.carrier, direction(m.about.direction, m.about.which));
      return dot(about, shortestTurn(turned(pose, m.carrier, line), now));
    }
    case "twist": {
      const [first, second] = m.between;
      const axes: readonly Vector[] = [
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ];
      const seen = (e: Vector): Vector => {
        const there = turned(pose, second, e);
        return axes.map((a) => dot(turned(pose, first, a), there)) as [number, number, number];
      };
      return dot(direction(m.about.direction, m.about.which), turnOfAxes(seen));
    }
  }
}

const random = seededRandom(20261129);
const randomStep = (): Float64Array =>
  Float64Array.from({ length: steps }, (_, i) => (i % 6 < 3 ? 0.03 : 0.25) * (2 * random() - 1));
const poses = Array.from({ length: 4 }, () => {
  const pose = designPose(mechanism.origins.length);
  advancePose(pose, randomStep());
  return pose;
});
const moved = (pose: Pose, column: number, by: number): Pose => {
  const out = clonePose(pose);
  advancePose(
    out,
    Float64Array.from({ length: steps }, (_, i) => (i === column ? by : 0)),
  );
  return out;
};
const columns = Array.from({ length: steps }, (_, i) => i);
const kinds = ["distance", "offset", "seated-offset", "swing", "twist"] as const;

describe.each(kinds)("a %s between bodies", (kind) => {
  const own = terms.filter(({ measure }) => measure.kind === kind);
  const placed = (term: LayoutTerm, pose: Pose) => placeElastic(mechanism, term.measure, pose, rack);

  it("is what it is defined as, at random poses", () => {
    expect(own.length).toBeGreaterThan(0);
    for (const pose of poses)
      for (const term of own) expect(placed(term, pose).value).toBeCloseTo(defined(term, pose), 13);
  });

  it("pushes with the gradient of its energy, and changes with every step as that does", () => {
    for (const pose of poses)
      for (const term of own) {
        const at = placed(term, pose);
        for (const column of columns) {
          const [slope = Number.NaN] = differentiateAll((x) => [defined(term, moved(pose, column, x))], 0, 0.02, 5);
          expect(Math.abs(slope - (at.row[column] as number)), `${term.part} ${column}`).toBeLessThan(1e-9);
          if (!at.touches(Math.floor(column / 6))) expect(slope).toBeCloseTo(0, 9);
          const change = at.changeByStep(column);
          expect(change.value).toBeCloseTo(at.row[column] as number, 13);
          const rows = differentiateAll((x) => [...placed(term, moved(pose, column, x)).row], 0, 0.02, 5);
          rows.forEach((row, i) => {
            expect(Math.abs(row - (change.row[i] as number)), `${term.part} ${column} ${i}`).toBeLessThan(1e-8);
          });
        }
      }
  });

  it("changes with every coordinate of its points as differences do, and with no other", () => {
    const [pose] = poses;
    if (!pose) throw new Error("no pose");
    for (const term of own)
      for (const point of mechanism.points.keys())
        for (const axis of [0, 1, 2] as const) {
          const values = (x: number): readonly number[] => {
            const points = mechanism.points.map((p, i): Vector => {
              const to: [number, number, number] = [...p];
              if (i === point) to[axis] += x;
              return to;
            });
            const there = placeElastic({ ...mechanism, points }, term.measure, pose, rack);
            return [there.value, ...there.row];
          };
          // So small that the strut, which leans as far forward as inward to 1 mm, keeps its directions across.
          const [value, ...row] = differentiateAll(values, 0, 4e-4, 4);
          const change = placed(term, pose).changeByPoint(point, axis);
          if (change === null) {
            expect(pointsOfElastic(term.measure)).not.toContain(point);
            expect(value).toBe(0);
            continue;
          }
          expect(Math.abs(change.value - (value ?? Number.NaN)), `${term.part} ${point}`).toBeLessThan(1e-8);
          row.forEach((r, i) => {
            expect(Math.abs(r - (change.row[i] as number)), `${term.part} ${point} ${i}`).toBeLessThan(1e-7);
          });
        }
  });
});
