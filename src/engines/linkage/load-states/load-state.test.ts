import { describe, expect, it } from "vitest";
import { add, cross, norm, scale, subtract, unitVector, type Vector } from "#numeric";
import { readElasticCorners } from "../../../../test/fuzz/reference-corners.ts";
import type { ElasticCorner } from "../elastic-corner.ts";
import { computeSeatLength } from "../seat.ts";
import { computeFreeMovement, computeHandMovement } from "./hand-movement.ts";
import { computeLoadState, type LoadedCorner, type LoadState, type Support } from "./load-state.ts";
import { movingParts, placeOf, pointOnPart } from "./moving-part.ts";

const MASS = 42;
const GRAVITY = 9.80665;

function loaded({ geometry, elasticity }: ElasticCorner): LoadedCorner {
  return {
    geometry,
    springRate: elasticity.springRate,
    wheelLoad: elasticity.wheelLoad,
    unsprungMass: MASS,
    droop: 0.08,
    gravity: GRAVITY,
  };
}

function held(corner: ElasticCorner, support: Support): LoadState {
  const found = computeLoadState(loaded(corner), support);
  if (!("state" in found)) throw new Error(JSON.stringify(found));
  return found.state;
}

const corners = readElasticCorners();

describe.each(corners)("forces of $name", ({ corner }) => {
  const { geometry } = corner;
  const parts = movingParts(geometry);
  const supports: Support[] = [
    { kind: "ride" },
    { kind: "hanging" },
    ...parts.map(({ name }): Support => ({ kind: "under", part: name, share: 0.8, raised: 0.02 })),
  ];

  it("of everything that moves add up to nothing, and turn nothing, however it is held", () => {
    for (const support of supports) {
      const state = held(corner, support);
      const { pose } = state;
      const acts: { at: Vector; force: Vector }[] = [];
      for (const joint of state.joints) {
        if (joint.link === "strut_top" && geometry.strut) acts.push({ at: geometry.strut.top, force: joint.force });
        else if (joint.link === "trailing_arm" && geometry.trailingArm)
          acts.push({ at: placeOf(geometry, pose, geometry.trailingArm.bush), force: joint.force });
        else if (joint.end === "inner")
          acts.push({ at: geometry.links.find((l) => l.name === joint.link)?.inner as Vector, force: joint.force });
      }
      for (const [strut, push] of [
        [geometry.spring, state.spring],
        [geometry.damper, -(state.stop ?? 0)],
      ] as const) {
        if (!strut || push === 0) continue;
        const { seat } = computeSeatLength(geometry, strut, pose);
        acts.push({ at: seat, force: scale(unitVector(subtract(seat, strut.body)), push) });
      }
      if (support.kind === "under") {
        const part = parts.find(({ name }) => name === support.part);
        if (part) acts.push({ at: pointOnPart(geometry, part, pose, support.share), force: [0, 0, state.under] });
      }
      const centre = placeOf(geometry, pose, geometry.wheel.centre);
      acts.push({ at: centre, force: [0, 0, -MASS * GRAVITY] });
      if (support.kind === "ride") {
        const { camber, toe, loadedRadius } = geometry.wheel;
        const n: Vector = [Math.sin(toe) * Math.cos(camber), Math.cos(toe) * Math.cos(camber), -Math.sin(camber)];
        const h = Math.hypot(n[0], n[1]);
        const below: Vector = [n[0] * n[2], n[1] * n[2], -h * h];
        acts.push({ at: add(centre, scale(below, loadedRadius / h)), force: [0, 0, state.wheelLoad] });
      }
      const force = acts.reduce<Vector>((sum, a) => add(sum, a.force), [0, 0, 0]);
      const moment = acts.reduce<Vector>((sum, a) => add(sum, cross(subtract(a.at, centre), a.force)), [0, 0, 0]);
      expect(norm(force), JSON.stringify(support)).toBeLessThan(1e-8);
      expect(norm(moment), JSON.stringify(support)).toBeLessThan(1e-8);
    }
  });

  it("at ride height leave the spring what the ground brings less the weight that moves with the wheel", () => {
    const state = held(corner, { kind: "ride" });
    const heavier = computeLoadState({ ...loaded(corner), unsprungMass: 0 }, { kind: "ride" });
    if (!("state" in heavier)) throw new Error("no state");
    // Without unsprung weight all of the load stands on the spring.
    expect(heavier.state.spring).toBeGreaterThan(state.spring);
    const share = (MASS * GRAVITY) / corner.elasticity.wheelLoad;
    expect((heavier.state.spring - state.spring) / heavier.state.spring).toBeGreaterThan(share / 2);
  });
});

describe.each(corners)("a hand on the wheel of $name", ({ corner }) => {
  const { geometry } = corner;
  const readAt: Vector = add(geometry.wheel.centre, [0, 0, 0.3]);
  const readAlong: Vector = [0, 1, 0];
  const links = geometry.links.map((l) => l.name);
  const only = (link: string, rate: number): ElasticCorner => ({
    ...corner,
    // A spring that resists nothing beside the link.
    elasticity: { ...corner.elasticity, springRate: 1e-6, rubber: [], members: [{ link, rate }] },
  });

  it("moves one soft link by what it pulls in it, squared, over its rate", () => {
    const state = held(corner, { kind: "hanging" });
    const centre = placeOf(geometry, state.pose, geometry.wheel.centre);
    const force = scale(readAlong, 200);
    const moment = cross(subtract(readAt, centre), force);
    for (const link of links) {
      const bare = { ...only(link, 3e6) };
      const { strutTop: _s, trailingArm: _t, ...rest } = bare.elasticity;
      const moved = computeHandMovement({ ...bare, elasticity: rest }, state, { force, moment, readAt, readAlong });
      const pull = state.pullIn(link, force, moment) ?? Number.NaN;
      expect(moved).toBeCloseTo((pull * pull) / 3e6 / 200, 10);
      // Play in the same link: the same lever.
      const free = computeFreeMovement(corner, state, link, 0.001, { readAt, readAlong });
      expect(free).toBeCloseTo(Math.abs(pull / 200) * 0.001, 12);
    }
  });

  it("moves more where rubber is torn, and twice as far for twice the push", () => {
    const state = held(corner, { kind: "hanging" });
    const push = { force: [0, 0, 0] as Vector, moment: [-150, 0, 0] as Vector, readAt, readAlong };
    const sound = computeHandMovement(corner, state, push) ?? Number.NaN;
    const double = computeHandMovement(corner, state, { ...push, moment: [-300, 0, 0] }) ?? Number.NaN;
    expect(double).toBeCloseTo(2 * sound, 12);
    const along: Vector = [0, 150, 0];
    const own = {
      force: along,
      moment: cross([0, 0, 0.3], along),
      readAt: add(placeOf(geometry, state.pose, geometry.wheel.centre), [0, 0, 0.3]),
      readAlong,
    };
    const whole = computeHandMovement(corner, state, own) ?? Number.NaN;
    for (const { link, end } of corner.elasticity.rubber) {
      const torn = computeHandMovement({ ...corner, faults: [{ kind: "soft", link, end, factor: 0.2 }] }, state, own);
      expect(torn ?? 0).toBeGreaterThanOrEqual(whole);
    }
  });
});
