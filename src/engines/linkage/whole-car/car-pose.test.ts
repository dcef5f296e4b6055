import { describe, expect, it } from "vitest";
import type { Vector } from "#numeric";
import { differentiate } from "../../../../test/fuzz/differences.ts";
import { readCorners } from "../../../../test/fuzz/reference-corners.ts";
import type { CornerGeometry } from "../geometry.ts";
import { TravelSweep } from "../solve-travel.ts";
import { type BodyMotion, computeBar, placeCar, placeWheel } from "./car-pose.ts";

const still: BodyMotion = { heave: 0, roll: 0, pitch: 0, about: [-1.3, 0, 0.3] };
const arm = 0.35;
const pair = (name: string, z: number) =>
  [0.15, -0.15].map((x, i) => ({
    name: `${name}-${i}`,
    inner: [x, 0.4, z] as Vector,
    outer: [0, 0.4 + arm, z] as Vector,
    steered: false,
  }));
/** Two level arms of one length: the wheel never turns against the body. */
const level: CornerGeometry = {
  wheel: { centre: [0, 0.78, 0.31], camber: -0.01, toe: 0.002, loadedRadius: 0.31 },
  links: [
    ...pair("upper", 0.5),
    ...pair("lower", 0.2),
    { name: "toe", inner: [-0.1, 0.4, 0.3], outer: [-0.1, 0.4 + arm, 0.3], steered: false },
  ],
};

describe("a car on level arms of one length", () => {
  it.each([-0.06, -0.01, 0.03, 0.05])("leans its wheels as far as the body rolls, %s rad", (roll) => {
    const left = placeWheel(level, "left", { ...still, roll }, 0);
    const right = placeWheel(level, "right", { ...still, roll }, 0);
    // Spin axis (sin toe cos camber, cos toe cos camber, -sin camber) turned about x.
    const upright = (sign: number): number =>
      Math.asin(Math.sin(-0.01) * Math.cos(roll) - sign * Math.cos(0.002) * Math.cos(-0.01) * Math.sin(roll));
    expect(left?.camber).toBeCloseTo(upright(1), 13);
    expect(right?.camber).toBeCloseTo(upright(-1), 13);
    expect(left?.gap).toBeCloseTo(0, 12);
    expect(Math.sign((left?.travel ?? 0) - (right?.travel ?? 0))).toBe(-Math.sign(roll));
  });

  it.each([-0.05, 0.04])("takes the whole heave as travel, %s m", (heave) => {
    const wheel = placeWheel(level, "left", { ...still, heave }, 0);
    expect(wheel?.travel).toBeCloseTo(-heave, 13);
    expect(wheel?.toe).toBeCloseTo(0.002, 13);
  });
});

describe.each(readCorners())("a car on $name", ({ geometry }) => {
  it("stands at design where the body does", () => {
    const wheel = placeWheel(geometry, "right", still, 0);
    expect(wheel?.travel).toBeCloseTo(0, 13);
    expect(wheel?.camber).toBeCloseTo(geometry.wheel.camber, 13);
    expect(wheel?.toe).toBeCloseTo(geometry.wheel.toe, 13);
    expect(wheel?.contact[1]).toBeLessThan(0);
  });

  it("in heave alone is the corner at a held contact height", () => {
    for (const heave of [-0.04, 0.03]) {
      const wheel = placeWheel(geometry, "left", { ...still, heave }, 0);
      const corner = new TravelSweep(geometry, "contact-height").solve({ travel: -heave, rack: 0 });
      if ("foldAt" in corner) throw new Error("folds");
      expect(wheel?.camber).toBeCloseTo(corner.attitude.camber, 12);
      expect(wheel?.toe).toBeCloseTo(corner.attitude.toe, 12);
      expect(wheel?.travel).toBeCloseTo(corner.attitude.centre[2] - geometry.wheel.centre[2], 12);
    }
  });

  it("rolled one way is the mirror image of rolled the other", () => {
    const motion = { ...still, heave: 0.01, pitch: 0.012, roll: 0.03 };
    const [one, other] = [
      placeWheel(geometry, "left", motion, 0.004),
      placeWheel(geometry, "right", { ...motion, roll: -0.03 }, -0.004),
    ];
    expect(other?.camber).toBe(one?.camber);
    expect(other?.toe).toBe(one?.toe);
    expect(other?.contact[1]).toBe(-(one?.contact[1] ?? 0));
    expect(Math.abs(one?.gap ?? 1)).toBeLessThan(1e-12);
  });

  it("changes its camber in roll by the roll itself and by the gain of its travel", () => {
    const at = (roll: number): number => placeWheel(geometry, "left", { ...still, roll }, 0)?.camber ?? Number.NaN;
    const slope = differentiate(at, 0, 4e-3);
    const corner = new TravelSweep(geometry, "contact-height").solve({ travel: 0, rack: 0 });
    if ("foldAt" in corner) throw new Error("folds");
    const { attitude, screw } = corner;
    // Per radian of roll the patch at y would rise by y: the wheel follows it down by as much.
    const travelPerContact =
      1 /
      (screw.v[2] +
        screw.w[0] * (attitude.contact[1] - attitude.centre[1]) -
        screw.w[1] * (attitude.contact[0] - attitude.centre[0]));
    const expected =
      -attitude.contact[1] * travelPerContact * corner.camberGain -
      attitude.axis[1] / Math.hypot(attitude.axis[0], attitude.axis[1]);
    expect(slope).toBeCloseTo(expected, 8);
  });
});

describe("four wheels and a bar", () => {
  const [corner] = readCorners();
  if (!corner) throw new Error("no corner");

  it("stand on the ground in heave, pitch, roll and steer together", () => {
    const motion = { heave: -0.012, pitch: 0.01, roll: 0.02, about: [-1.3, 0, 0.3] as Vector };
    const car = placeCar(corner.geometry, level, motion, 0.01);
    if (!car) throw new Error("a wheel does not follow");
    for (const wheel of Object.values(car)) expect(Math.abs(wheel.gap)).toBeLessThan(1e-12);
    expect(car.frontLeft.toe).not.toBeCloseTo(car.frontRight.toe, 3);
    expect(placeCar(corner.geometry, level, { ...motion, heave: 3 }, 0)).toBeNull();
  });

  it("twist a bar by the difference of the wheels, and it does no work in heave", () => {
    const bar = { torsion: 900, lever: 0.2, ratio: 0.6 };
    expect(computeBar(bar, 0.03, 0.03).leftWheel).toBeCloseTo(0, 12);
    const state = computeBar(bar, 0.03, -0.01);
    expect(state.twist).toBeCloseTo((0.6 * 0.04) / 0.2, 12);
    // Energy: half torsion times twist squared; its change by the left wheel is the force against it.
    const energy = (left: number): number => 450 * computeBar(bar, left, -0.01).twist ** 2;
    expect(-differentiate(energy, 0.03, 1e-3)).toBeCloseTo(state.leftWheel, 8);
  });
});
