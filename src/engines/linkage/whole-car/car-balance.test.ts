import { describe, expect, it } from "vitest";
import type { Vector } from "#numeric";
import { differentiate } from "../../../../test/fuzz/differences.ts";
import { readElasticCorners } from "../../../../test/fuzz/reference-corners.ts";
import { buildCornerLinkage } from "../corner-linkage.ts";
import type { ElasticCorner } from "../elastic-corner.ts";
import type { CornerGeometry } from "../geometry.ts";
import { computeDesignContact } from "../wheel-figures.ts";
import { CarBalance } from "./car-balance.ts";
import { type CarBalanceState, type LoadedAxle, type LoadedCar, wheelPlaces } from "./car-balance-state.ts";
import { placeCar } from "./car-pose.ts";

const GRAVITY = 9.80665;

/** Two parallel arms of one length, falling outward by `fall` over `reach`; a spring that stands upright on the knuckle. */
function parallelArms(x: number, half: number, reach: number, fall: number, springHeight: number): CornerGeometry {
  const link = (name: string, at: number, z: number, outerAt = 0) => ({
    name,
    inner: [x + at, half - reach, z] as Vector,
    outer: [x + outerAt, half, z - fall] as Vector,
    steered: false,
  });
  return {
    wheel: { centre: [x, half, 0.31], camber: 0, toe: 0, loadedRadius: 0.31 },
    links: [
      link("upper-front", 0.15, 0.5),
      link("upper-rear", -0.15, 0.5),
      link("lower-front", 0.15, 0.22),
      link("lower-rear", -0.15, 0.22),
      link("toe", -0.1, 0.31, -0.1),
    ],
    spring: { body: [x, half - 0.1, 0.31 + springHeight], seat: { on: "knuckle", moving: [x, half - 0.1, 0.31] } },
  };
}

interface Handbook {
  readonly half: number;
  readonly reach: number;
  readonly fall: number;
  readonly spring: number;
  readonly tyre: number;
  readonly unsprung: number;
  readonly load: number;
  readonly bar: { torsion: number; lever: number; ratio: number } | null;
}
const SPRING_HEIGHT = 0.4;

const axleOf = (h: Handbook, x: number): LoadedAxle => ({
  geometry: parallelArms(x, h.half, h.reach, h.fall, SPRING_HEIGHT),
  springRate: h.spring,
  wheelLoad: h.load,
  unsprungMass: h.unsprung,
  tyreRate: h.tyre,
  bar: h.bar,
});
const front: Handbook = {
  half: 0.77,
  reach: 0.35,
  fall: 0.04,
  spring: 28_000,
  tyre: Number.POSITIVE_INFINITY,
  unsprung: 0,
  load: 4200,
  bar: { torsion: 1100, lever: 0.24, ratio: 0.7 },
};
const rear: Handbook = { ...front, half: 0.75, fall: 0.07, spring: 25_000, load: 3300, bar: null };
const HEIGHT = 0.53;
const carOf = (f: Handbook, r: Handbook): LoadedCar => ({
  front: axleOf(f, 0),
  rear: axleOf(r, -2.7),
  massHeight: HEIGHT,
  gravity: GRAVITY,
});

function stateOf(balance: CarBalance, lateral: number, forward = 0): CarBalanceState {
  const answer = balance.solve({ lateral, forward });
  if (!("state" in answer)) throw new Error(JSON.stringify(answer));
  return answer.state;
}

/** What a wheel does per acceleration of a car on parallel arms, all of first order, by hand. */
interface ByHand {
  readonly h: Handbook;
  /** Sideways per rise of the wheel; the roll centre lies at `half` times this. */
  readonly across: number;
  readonly carried: number;
  /** Load moved without lean, and by lean. */
  readonly still: number;
  readonly byLean: number;
}

function wheelByHand(h: Handbook): ByHand {
  const across = h.fall / h.reach;
  const carried = h.load - h.unsprung * GRAVITY;
  const bar = h.bar ? (2 * h.bar.torsion * h.bar.ratio ** 2) / h.bar.lever ** 2 : 0;
  // The spring is pushed over as the arm swings: its force, spread over its length, gives way.
  const rate = h.spring - (carried * across ** 2) / SPRING_HEIGHT + bar;
  const inSeries = 1 + rate / h.tyre;
  return {
    h,
    across,
    carried,
    still: ((h.load / GRAVITY - h.unsprung) * across) / inSeries,
    byLean: (rate * h.half + carried * across) / inSeries,
  };
}

/** Lean per acceleration from the moments about the ground, weights standing on patches that have moved sideways. */
function leanByHand(axles: readonly ByHand[]): number {
  const sum = (of: (a: ByHand) => number): number => axles.reduce((all, a) => all + of(a), 0);
  const mass = sum(({ h }) => (2 * h.load) / GRAVITY);
  const tipping = mass * HEIGHT;
  const shift = (a: ByHand, per: number): number => 2 * a.carried * a.across * per;
  const held = sum((a) => 2 * a.h.half * a.byLean + shift(a, a.h.half - a.byLean / a.h.tyre)) - tipping * GRAVITY;
  return (tipping - sum((a) => 2 * a.h.half * a.still - shift(a, a.still / a.h.tyre))) / held;
}

const perAcceleration = (balance: CarBalance, of: (s: CarBalanceState) => number): number =>
  differentiate((a) => of(stateOf(balance, a)), 0, 0.4);

describe("a car on parallel arms in a steady bend", () => {
  it("leans and moves its load by the handbook where its arms lie level: distribution by roll stiffness", () => {
    const [f, r] = [front, rear].map((h) => ({ ...h, fall: 0 })) as [Handbook, Handbook];
    const balance = new CarBalance(carOf(f, r));
    const stiffness = [f, r].map(
      (h) => 2 * h.half ** 2 * (h.spring + (h.bar ? (2 * h.bar.torsion * h.bar.ratio ** 2) / h.bar.lever ** 2 : 0)),
    ) as [number, number];
    const mass = (2 * (f.load + r.load)) / GRAVITY;
    const lean = (mass * HEIGHT) / (stiffness[0] + stiffness[1] - mass * GRAVITY * HEIGHT);
    expect(perAcceleration(balance, (s) => s.roll) / lean).toBeCloseTo(1, 8);
    expect(perAcceleration(balance, (s) => s.moved.front) / ((stiffness[0] * lean) / (2 * f.half))).toBeCloseTo(1, 8);
    expect(perAcceleration(balance, (s) => s.moved.rear) / ((stiffness[1] * lean) / (2 * r.half))).toBeCloseTo(1, 8);
  });

  it.each([
    ["rigid tyres, light wheels", front, rear],
    ["tyres that give", { ...front, tyre: 220_000 }, { ...rear, tyre: 200_000 }],
    [
      "tyres that give, heavy wheels",
      { ...front, tyre: 220_000, unsprung: 38 },
      { ...rear, tyre: 200_000, unsprung: 33 },
    ],
  ])("does so with roll centres over the ground, by hand: %s", (_, f, r) => {
    const balance = new CarBalance(carOf(f, r));
    const axles = [wheelByHand(f), wheelByHand(r)];
    const lean = leanByHand(axles);
    expect(perAcceleration(balance, (s) => s.roll) / lean).toBeCloseTo(1, 8);
    for (const [i, key] of (["front", "rear"] as const).entries()) {
      const { still, byLean } = axles[i] as ByHand;
      expect(perAcceleration(balance, (s) => s.moved[key]) / (still + byLean * lean), key).toBeCloseTo(1, 8);
    }
  });

  it("cannot stand on four wheels where one would have to pull, and says which", () => {
    const [f, r] = [front, rear].map((h) => ({ ...h, spring: 200_000 })) as [Handbook, Handbook];
    expect(new CarBalance(carOf(f, r)).solve({ lateral: 15, forward: 0 })).toEqual({ lifts: "rearLeft" });
    expect(new CarBalance(carOf(f, r)).solve({ lateral: -15, forward: 0 })).toEqual({ lifts: "rearRight" });
    expect(new CarBalance(carOf(f, r)).solve({ lateral: 60, forward: 0 })).toEqual({ unsolved: "beyond-fold" });
  });
});

describe("a car on the reference's corners in a steady bend", () => {
  const corners = readElasticCorners();
  const [f, r] = (["front", "rear"] as const).map((axle) => corners.find(({ name }) => name.startsWith(axle))?.corner);
  if (!f || !r) throw new Error("no corners");
  const shift = -2.7 - r.geometry.wheel.centre[0];
  const car: LoadedCar = {
    front: { ...loaded(f, 0), bar: { torsion: 1200, lever: 0.25, ratio: 0.7 } },
    rear: loaded(r, Math.abs(shift) > 1 ? shift : 0),
    massHeight: 0.55,
    gravity: GRAVITY,
  };
  const balance = new CarBalance(car);

  it("stands where the solved linkage puts it when its wheels go by polynomials", () => {
    const fast = new CarBalance(car, { fast: true });
    for (const [lateral, forward] of [
      [1, 0],
      [-4, -5],
      [7, 2],
    ] as const) {
      const [one, other] = [stateOf(balance, lateral, forward), stateOf(fast, lateral, forward)];
      expect(other.roll).toBeCloseTo(one.roll, 8);
      expect(other.pitch).toBeCloseTo(one.pitch, 8);
      for (const place of wheelPlaces) {
        expect(other[place].load / one[place].load, place).toBeCloseTo(1, 6);
        expect(other[place].travel, place).toBeCloseTo(one[place].travel, 8);
        expect(other[place].toe, place).toBeCloseTo(one[place].toe, 7);
      }
    }
  });

  it("stands where it stood without one", () => {
    const { roll, heave, frontLeft, moved } = stateOf(balance, 0);
    expect([roll, heave, frontLeft.travel].map(Math.abs).every((x) => x < 1e-12)).toBe(true);
    expect(Math.abs(moved.front)).toBeLessThan(1e-8);
    expect(frontLeft.load).toBeCloseTo(car.front.wheelLoad, 8);
  });

  it("leans the other way in the other bend, by as much", () => {
    const [left, right] = [stateOf(balance, 6), stateOf(balance, -6)];
    expect(right.roll).toBeCloseTo(-left.roll, 12);
    expect(right.heave).toBeCloseTo(left.heave, 12);
    expect(right.frontRight.load).toBeCloseTo(left.frontLeft.load, 6);
    expect(right.rearLeft.toe).toBeCloseTo(left.rearRight.toe, 12);
  });

  it("stands on the ground as placed by itself, all forces and moments of the whole car in balance", () => {
    const rigid = new CarBalance({
      ...car,
      front: { ...car.front, tyreRate: Number.POSITIVE_INFINITY },
      rear: { ...car.rear, tyreRate: Number.POSITIVE_INFINITY },
    });
    const state = stateOf(rigid, 5);
    const weight = 2 * (car.front.wheelLoad + car.rear.wheelLoad);
    const contacts = [car.front, car.rear].map(({ geometry }) => computeDesignContact(buildCornerLinkage(geometry))[0]);
    const middle = ((contacts[0] ?? 0) * car.front.wheelLoad + (contacts[1] ?? 0) * car.rear.wheelLoad) / (weight / 2);
    const motion = { heave: state.heave, roll: state.roll, pitch: state.pitch, about: [middle, 0, 0] as Vector };
    const placed = placeCar(car.front.geometry, car.rear.geometry, motion, 0);
    if (!placed) throw new Error("not placed");
    let [up, aside] = [0, 0];
    for (const place of wheelPlaces) {
      expect(placed[place].travel).toBeCloseTo(state[place].travel, 11);
      expect(placed[place].camber).toBeCloseTo(state[place].camber, 11);
      up += state[place].load;
      aside += state[place].lateral;
    }
    expect(up / weight).toBeCloseTo(1, 12);
    expect(aside / ((weight / GRAVITY) * 5)).toBeCloseTo(1, 12);
    expect(state.frontRight.load).toBeGreaterThan(state.frontLeft.load);
  });
});

describe("a car that brakes or drives", () => {
  const LENGTH = 2.7;
  const RADIUS = 0.31;
  const share = { brakeShare: 0.7, driveShare: 0.4 };
  const level = { ...front, fall: 0 };
  const shared = (car: LoadedCar): LoadedCar => ({
    ...car,
    front: { ...car.front, ...share },
    rear: { ...car.rear, brakeShare: 0.3, driveShare: 0.6 },
  });

  it("moves load from axle to axle as the mass's height over the wheelbase has it", () => {
    for (const forward of [-6, -2, 3]) {
      const car = shared(carOf(front, rear));
      const state = stateOf(new CarBalance(car), 0, forward);
      const mass = (2 * (front.load + rear.load)) / GRAVITY;
      // The patches stay put along the car on arms that turn about its length; the mass leans with the nod.
      const height = HEIGHT + state.heave;
      expect(state.movedForward / ((-mass * forward * height) / LENGTH)).toBeCloseTo(1, 1);
      expect(state.frontLeft.load).toBeCloseTo(state.frontRight.load, 6);
      expect(state.frontLeft.braking).toBeCloseTo(forward < 0 ? (0.7 * mass * -forward) / 2 : 0, 8);
      expect(state.rearLeft.drive).toBeCloseTo(forward > 0 ? (0.6 * mass * forward) / 2 : 0, 8);
    }
  });

  it("nods by its springs alone where its arms turn about its length: first order by hand", () => {
    const car = shared(carOf(level, { ...rear, fall: 0 }));
    const balance = new CarBalance(car);
    const [wf, wr] = [2 * front.load, 2 * rear.load];
    const mass = (wf + wr) / GRAVITY;
    const [a, b] = [(wr / (wf + wr)) * LENGTH, (wf / (wf + wr)) * LENGTH];
    // Wheels rise and fall upright: two springs at a and b of the mass, less what its own weight tips, as far as the
    // patches do not go with it under their centres.
    const [kf, kr] = [2 * front.spring, 2 * rear.spring];
    // Not by differences across rest: a brake acts at the patch and a shaft at the centre, so the second order differs.
    const gentle = -1e-4;
    const slope = stateOf(balance, 0, gentle).pitch / gentle;
    const coupled = kr * b - kf * a;
    const nod = kf * a * a + kr * b * b - mass * GRAVITY * (HEIGHT - RADIUS) - (coupled * coupled) / (kf + kr);
    expect(slope / ((-mass * HEIGHT) / nod)).toBeCloseTo(1, 5);
  });

  it("is turned by what the arms brace: a swing about a line across the car, by hand", () => {
    // Parallel arms along the car that rise toward the wheel: it goes rearward or forward as it rises, upright.
    const slope = 0.12;
    const braced = (geometry: CornerGeometry, toward: 1 | -1): CornerGeometry => ({
      ...geometry,
      links: geometry.links.map((link) => {
        const [x, y, z] = link.outer;
        const aside = link.name.endsWith("rear") ? 0.15 : -0.15;
        const inner: Vector = link.name === "toe" ? [x, y - 0.3, z] : [x + 0.4 * toward, y + aside, z - 0.4 * slope];
        return { ...link, inner };
      }),
    });
    const base = carOf(level, { ...rear, fall: 0 });
    const car = shared({
      ...base,
      front: { ...base.front, geometry: braced(base.front.geometry, -1) },
      rear: { ...base.rear, geometry: braced(base.rear.geometry, 1) },
    });
    const state = stateOf(new CarBalance(car), 0, -1e-4);
    for (const [place, axle, sign] of [
      ["frontLeft", front, 1],
      ["rearLeft", rear, -1],
    ] as const) {
      // Along per rise; the brake works on it, the standing load as the body nods, and the spring as it is pushed over.
      const along = -sign * slope;
      const felt = (sign * state.movedForward) / 2 - state[place].braking * along - axle.load * along * state.pitch;
      const rate = axle.spring - (axle.load * along ** 2) / SPRING_HEIGHT;
      expect((state[place].travel * rate) / felt, place).toBeCloseTo(1, 3);
    }
  });

  it("brakes in a bend with the sums of all forces and of moments about the ground in balance", () => {
    const car = shared(carOf(front, rear));
    const state = stateOf(new CarBalance(car), 5, -3);
    const mass = (2 * (front.load + rear.load)) / GRAVITY;
    const sum = (of: (w: CarBalanceState["frontLeft"]) => number): number =>
      wheelPlaces.reduce((all, place) => all + of(state[place]), 0);
    expect(sum((w) => w.load) / (mass * GRAVITY)).toBeCloseTo(1, 12);
    expect(sum((w) => w.lateral) / (mass * 5)).toBeCloseTo(1, 12);
    expect(sum((w) => w.braking) / (mass * 3)).toBeCloseTo(1, 12);
    expect(state.frontRight.load).toBeGreaterThan(state.frontLeft.load);
  });

  it("begun at a state nearby ends where it ends from rest", () => {
    const balance = new CarBalance(shared(carOf(front, rear)));
    const far = stateOf(balance, 5, -3);
    const near = balance.solve({ lateral: 5, forward: -3 }, stateOf(balance, 4, -2));
    expect("state" in near && Math.abs(near.state.roll - far.roll)).toBeLessThan(1e-12);
  });
});

function loaded({ geometry, elasticity }: ElasticCorner, along: number): LoadedAxle {
  const moved = ([x, y, z]: Vector): Vector => [x + along, y, z];
  const { wheel, links, strut, trailingArm, spring } = geometry;
  if (!spring) throw new Error("no spring");
  const { seat } = spring;
  return {
    geometry: {
      ...geometry,
      wheel: { ...wheel, centre: moved(wheel.centre) },
      links: links.map((l) => ({ ...l, inner: moved(l.inner), outer: moved(l.outer) })),
      ...(strut && { strut: { top: moved(strut.top), axisPoint: moved(strut.axisPoint) } }),
      ...(trailingArm && { trailingArm: { ...trailingArm, bush: moved(trailingArm.bush) } }),
      spring: {
        body: moved(spring.body),
        seat: "moving" in seat ? { ...seat, moving: moved(seat.moving) } : seat,
      },
    },
    springRate: elasticity.springRate,
    wheelLoad: elasticity.wheelLoad,
    unsprungMass: 36,
    tyreRate: 210_000,
    bar: null,
  };
}
