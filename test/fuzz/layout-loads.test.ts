import { describe, expect, it } from "vitest";
import {
  computeFreeMovement,
  computeHandMovement,
  computeLayoutFreeMovement,
  computeLayoutHandMovement,
  computeLayoutLoadState,
  computeLoadState,
  type ElasticCorner,
  type LayoutElasticity,
  type LayoutLoadState,
  type LoadState,
  type Support,
} from "#engines/linkage";
import { add, dot, norm, scale, subtract, unitVector, type Vector } from "#numeric";
import type { BodyLayout } from "#vehicle";
import { asLayout, readKnuckleCorners } from "../reference/layouts/elastic-layout.ts";
import { layoutOfCorner } from "../reference/layouts/layout-of-corner.ts";
import { readElasticCorners } from "./reference-corners.ts";

const MASS = 42;
const GRAVITY = 9.80665;

/** A damper beside the spring of a knuckle, so that both forms have one (invented). */
function withDamper(corner: ElasticCorner): ElasticCorner {
  const { spring } = corner.geometry;
  if (spring?.seat.on !== "knuckle") throw new Error("no spring on the knuckle");
  const shift = ([x, y, z]: Vector): Vector => [x + 0.04, y + 0.02, z + 0.01];
  const damper = { body: shift(spring.body), seat: { on: "knuckle" as const, moving: shift(spring.seat.moving) } };
  return { ...corner, geometry: { ...corner.geometry, damper } };
}

function layoutWithDamper(corner: ElasticCorner): readonly [BodyLayout, LayoutElasticity] {
  const [layout, elasticity] = asLayout(corner);
  const { damper } = corner.geometry;
  if (damper?.seat.on !== "knuckle") throw new Error("no damper on the knuckle");
  return [
    {
      ...layout,
      points: { ...layout.points, damper_eye: damper.seat.moving, damper_top: damper.body },
      damper: { from: { on: "car-body", at: "damper_top" }, to: { on: "knuckle", at: "damper_eye" } },
    },
    elasticity,
  ];
}

const loaded = ({ elasticity: { springRate, wheelLoad } }: Pick<ElasticCorner, "elasticity">) => ({
  springRate,
  wheelLoad,
  unsprungMass: MASS,
  droop: 0.08,
  gravity: GRAVITY,
});

function held(corner: ElasticCorner, support: Support): LoadState {
  const found = computeLoadState({ geometry: corner.geometry, ...loaded(corner) }, support);
  if (!("state" in found)) throw new Error(JSON.stringify(found));
  return found.state;
}

function heldLayout(layout: BodyLayout, corner: ElasticCorner, support: Support): LayoutLoadState {
  const found = computeLayoutLoadState({ layout, ...loaded(corner) }, support);
  if (!("state" in found)) throw new Error(JSON.stringify(found));
  return found.state;
}

describe.each(readKnuckleCorners())("forces of $name as a layout of one body", ({ corner: bare }) => {
  const corner = withDamper(bare);
  const [layout, elasticity] = layoutWithDamper(corner);
  const single = corner.geometry.links.filter(
    (link, _, all) => all.filter((other) => other.outer.join() === link.outer.join()).length === 1,
  );
  const supports: Support[] = [
    { kind: "ride" },
    { kind: "hanging" },
    ...single.map(({ name }): Support => ({ kind: "under", part: name, share: 0.8, raised: 0.02 })),
  ];

  it("are those of the corner, standing, hanging and supported", () => {
    for (const support of supports) {
      const [want, got] = [held(corner, support), heldLayout(layout, corner, support)];
      expect(got.spring).toBeCloseTo(want.spring, 6);
      expect(got.stop ?? 0).toBeCloseTo(want.stop ?? 0, 6);
      expect(got.under).toBeCloseTo(want.under, 6);
      for (const { name } of single)
        for (const [end, other] of [
          ["inner", "from"],
          ["outer", "to"],
        ] as const) {
          const a = want.joints.find((j) => j.link === name && j.end === end)?.force;
          const b = got.joints.find((j) => j.part === name && j.end === other)?.force;
          if (!a || !b) throw new Error(`no ${name}`);
          expect(norm(subtract(a, b)), `${name} ${end} ${JSON.stringify(support)}`).toBeLessThan(1e-6);
        }
    }
  });

  it("let a hand move the wheel as far, by rubber and by play", () => {
    const support: Support = { kind: "hanging" };
    const [own, as] = [held(corner, support), heldLayout(layout, corner, support)];
    const readAt = add(as.attitude.centre, [0, 0, 0.3]);
    const push = { force: [0, 0, 0] as Vector, moment: [-150, 0, 0] as Vector, readAt, readAlong: [0, 1, 0] as Vector };
    const [first] = corner.elasticity.rubber;
    if (!first) throw new Error("no rubber");
    for (const factor of [1, 0.2]) {
      const faults = [{ kind: "soft" as const, link: first.link, end: first.end, factor }];
      const soft = {
        kind: "soft" as const,
        part: first.link,
        end: first.end === "inner" ? ("from" as const) : ("to" as const),
        factor,
      };
      const want = computeHandMovement({ ...corner, faults }, own, push) ?? Number.NaN;
      const got = computeLayoutHandMovement(layout, elasticity, [soft], as, push) ?? Number.NaN;
      expect(got / want).toBeCloseTo(1, 9);
    }
    for (const { name } of single) {
      const want = computeFreeMovement(corner, own, name, 0.001, push) ?? Number.NaN;
      expect(computeLayoutFreeMovement(as, name, 0.001, push)).toBeCloseTo(want, 12);
    }
  });
});

const wishbone = readElasticCorners().find(({ name }) => name === "front_double_wishbone")?.corner;

describe("a double wishbone with its arms as bodies", () => {
  if (!wishbone) throw new Error("no double wishbone in the reference");
  const { geometry } = wishbone;
  const { spring } = geometry;
  if (spring?.seat.on !== "arm") throw new Error("its spring stands on no arm");
  const damper = {
    body: add(spring.body, [0.03, 0, 0.02]),
    seat: { ...spring.seat, moving: add(spring.seat.moving, [0.03, 0, 0]) },
  };
  const corner: ElasticCorner = { ...wishbone, geometry: { ...geometry, damper } };
  const plain = layoutOfCorner(geometry);
  const [lower, other] = spring.seat.links;
  const arm = `${lower} arm`;
  const seatOn = (at: string) => ({ on: arm, at });
  const layout: BodyLayout = {
    ...plain,
    points: {
      ...plain.points,
      seat: spring.seat.moving,
      top: spring.body,
      eye: damper.seat.moving,
      mount: damper.body,
    },
    spring: { from: { on: "car-body", at: "top" }, to: seatOn("seat") },
    damper: { from: { on: "car-body", at: "mount" }, to: seatOn("eye") },
  };

  it("is held by the same forces in its outer joints, and by the same across and together in its bushes", () => {
    const ways: readonly (readonly [Support, Support])[] = [
      [{ kind: "ride" }, { kind: "ride" }],
      [{ kind: "hanging" }, { kind: "hanging" }],
      [
        { kind: "under", part: lower, share: 0.85, raised: 0.025 },
        { kind: "under", part: arm, share: 0.85, raised: 0.025 },
      ],
    ];
    for (const [own, as] of ways) {
      const [want, got] = [held(corner, own), heldLayout(layout, corner, as)];
      expect(got.spring).toBeCloseTo(want.spring, 6);
      expect(got.under).toBeCloseTo(want.under, 6);
      const force = (list: readonly { readonly force: Vector }[], is: (one: never) => boolean): Vector =>
        list.find((one) => is(one as never))?.force ?? [Number.NaN, 0, 0];
      const outer = force(want.joints, (j: { link: string; end: string }) => j.link === lower && j.end === "outer");
      const ball = force(got.joints, (j: { part: string }) => j.part === `${arm} ball`);
      expect(norm(subtract(outer, ball))).toBeLessThan(1e-6);
      const bushes = [lower, other].map((name) => ({
        want: force(want.joints, (j: { link: string; end: string }) => j.link === name && j.end === "inner"),
        got: force(got.joints, (j: { part: string }) => j.part === name),
      })) as [{ want: Vector; got: Vector }, { want: Vector; got: Vector }];
      const inner = (name: string) => geometry.links.find((l) => l.name === name)?.inner as Vector;
      const hinge = unitVector(subtract(inner(other), inner(lower)));
      const across = (v: Vector): Vector => subtract(v, scale(hinge, dot(v, hinge)));
      for (const bush of bushes) expect(norm(subtract(across(bush.want), across(bush.got)))).toBeLessThan(1e-6);
      const sum = (key: "want" | "got") => add(bushes[0][key], bushes[1][key]);
      expect(norm(subtract(sum("want"), sum("got")))).toBeLessThan(1e-6);
    }
  });
});
