import {
  add,
  cross,
  dot,
  factorise,
  makeFactorisation,
  mirrorY,
  rotate,
  scale,
  solveFactorised,
  subtract,
  type Vector,
} from "#numeric";
import type { Metres, Newtons, NewtonsPerMetre, Radians } from "#quantity";
import { buildCornerLinkage } from "../corner-linkage.ts";
import type { CornerGeometry } from "../geometry.ts";
import { computeDesignContact } from "../wheel-figures.ts";
import { type AntiRollBar, type BodyMotion, bodyRotation, computeBar } from "./car-pose.ts";
import { interpolatedWheel, solvedWheel, type WheelOverTravel } from "./wheel-over-travel.ts";

/** What carries one axle of a car, both sides alike; the left corner with its spring. */
export interface LoadedAxle {
  readonly geometry: CornerGeometry;
  readonly springRate: NewtonsPerMetre;
  /** Standing load of one wheel, all included. */
  readonly wheelLoad: Newtons;
  /** Moves with one wheel, kg, counted at its centre; contained in the wheel load. */
  readonly unsprungMass: number;
  /** Vertical rate of one tyre; infinite: a rigid disc. */
  readonly tyreRate: NewtonsPerMetre;
  readonly bar: AntiRollBar | null;
  /** Shares of the car's braking force and of its driving force this axle gives, both sides alike; those of both axles sum to 1. */
  readonly brakeShare?: number;
  readonly driveShare?: number;
}

export interface LoadedCar {
  readonly front: LoadedAxle;
  readonly rear: LoadedAxle;
  /** Centre of mass of the whole car over the ground. */
  readonly massHeight: Metres;
  /** m/s2 */
  readonly gravity: number;
}

/** One wheel of the balanced car; forces from the ground on its own side, angles against the ground. */
export interface BalancedWheel {
  readonly load: Newtons;
  /** Toward the left. */
  readonly lateral: Newtons;
  /** Rearward at the lowest point, by the brake, wheel locked to its knuckle. */
  readonly braking: Newtons;
  /** Forward at the wheel centre, by a shaft from the body. */
  readonly drive: Newtons;
  /** Against the body, bump positive. */
  readonly travel: Metres;
  readonly spring: Newtons;
  readonly camber: Radians;
  readonly toe: Radians;
}

export const wheelPlaces = ["frontLeft", "frontRight", "rearLeft", "rearRight"] as const;
export type WheelPlace = (typeof wheelPlaces)[number];

/** A car in a steady bend, braked or driven; lengths from where it stands. */
export interface CarBalanceState extends Readonly<Record<WheelPlace, BalancedWheel>> {
  readonly heave: Metres;
  readonly roll: Radians;
  readonly pitch: Radians;
  /** Load that went from the left to the right wheel of an axle. */
  readonly moved: { readonly front: Newtons; readonly rear: Newtons };
  /** Load that went from the rear axle to the front one. */
  readonly movedForward: Newtons;
}

/** How the mass of the car is accelerated, m/s2. */
export interface CarAcceleration {
  /** Toward the left, as in a steady bend to the left. */
  readonly lateral: number;
  /** Forward; negative: the car brakes. */
  readonly forward: number;
}

/** How the search ended where there is no balance with four wheels on the ground. */
export type CarBalanceAnswer =
  | { readonly state: CarBalanceState }
  | { readonly lifts: WheelPlace }
  | { readonly unsolved: "beyond-fold" | "no-equilibrium" };

/** A wheel where it stands in a search, in axes of the ground and of its own side. */
interface WheelNow {
  readonly contact: Vector;
  readonly centre: Vector;
  /** Ways of both per travel, the wheel locked to its knuckle. */
  readonly contactBy: Vector;
  readonly centreBy: Vector;
  /** Springs and their change per travel. */
  readonly springLength: Metres;
  readonly springBy: number;
  readonly camber: Radians;
  readonly toe: Radians;
}

const LIMIT = 200;
/** Steps in metres and radians, loads by the standing one: rounding of places of some metres stays below it. */
const SETTLED = 1e-13;
/** The same where only the scatter of many cars is asked for. */
const SETTLED_FAST = 1e-8;
/** Unknowns: heave, roll, pitch, four travels, four loads. */
const SIZE = 11;
const UP: Vector = [0, 0, 1];
/** Moments are taken about level lines: what turns a car about the upright one the tyres take, and no load has a part in it. */
const LEVEL: readonly Vector[] = [
  [1, 0, 0],
  [0, 1, 0],
];

/** Balance of body and four wheels in a steady bend, braked or driven; made once per car. */
export class CarBalance {
  private readonly wheels: { readonly front: WheelOverTravel; readonly rear: WheelOverTravel };
  private readonly about: Vector;
  private readonly sprung: { readonly mass: number; readonly at: Vector };
  private readonly spring: Readonly<Record<"front" | "rear", { force: number; length: number }>>;
  private readonly ground: Readonly<Record<"front" | "rear", number>>;
  private readonly settled: number;

  /** `fast`: wheels by polynomials through solved postures, for many bends of many cars; else solved at every step. */
  constructor(
    readonly car: LoadedCar,
    { fast = false }: { readonly fast?: boolean } = {},
  ) {
    const wheelOf = fast ? interpolatedWheel : solvedWheel;
    this.wheels = { front: wheelOf(car.front.geometry), rear: wheelOf(car.rear.geometry) };
    this.settled = fast ? SETTLED_FAST : SETTLED;
    const contacts = {
      front: computeDesignContact(buildCornerLinkage(car.front.geometry)),
      rear: computeDesignContact(buildCornerLinkage(car.rear.geometry)),
    };
    const weight = 2 * (car.front.wheelLoad + car.rear.wheelLoad);
    const middle = (2 * (car.front.wheelLoad * contacts.front[0] + car.rear.wheelLoad * contacts.rear[0])) / weight;
    this.about = [middle, 0, 0];
    this.ground = { front: contacts.front[2], rear: contacts.rear[2] };
    const mass = weight / car.gravity;
    const unsprung = (["front", "rear"] as const).map((axle) => ({
      mass: 2 * car[axle].unsprungMass,
      at: car[axle].geometry.wheel.centre,
    }));
    const sprung = mass - unsprung.reduce((sum, u) => sum + u.mass, 0);
    const middleOf = (axis: 0 | 2, whole: number): number =>
      (mass * whole - unsprung.reduce((sum, u) => sum + u.mass * u.at[axis], 0)) / sprung;
    this.sprung = { mass: sprung, at: [middleOf(0, middle), 0, middleOf(2, car.massHeight)] };
    this.spring = { front: this.standingSpring("front"), rear: this.standingSpring("rear") };
  }

  /** False where a spring cannot carry its wheel as the car stands; nothing can be answered then. */
  get carries(): boolean {
    return [this.spring.front, this.spring.rear].every(({ force }) => Number.isFinite(force));
  }

  /** Force and length of a spring where the car stands: it carries its wheel there. */
  private standingSpring(axle: "front" | "rear"): { force: number; length: number } {
    const { wheelLoad, unsprungMass } = this.car[axle];
    const now = this.wheelAt(axle, "left", { heave: 0, roll: 0, pitch: 0, about: this.about }, 0);
    if (!now) return { force: Number.NaN, length: Number.NaN };
    const carried = wheelLoad * now.contactBy[2] - unsprungMass * this.car.gravity * now.centreBy[2];
    return { force: -carried / now.springBy, length: now.springLength };
  }

  private wheelAt(axle: "front" | "rear", side: "left" | "right", motion: BodyMotion, travel: number): WheelNow | null {
    const p = this.wheels[axle](travel);
    if (p === null) return null;
    const mine = side === "left" ? motion : { ...motion, roll: -motion.roll };
    const turned = bodyRotation(mine);
    const { centre, axis } = p;
    const up: Vector = [turned[6] as number, turned[7] as number, turned[8] as number];
    const across = subtract(up, scale(axis, dot(up, axis)));
    const radius = this.car[axle].geometry.wheel.loadedRadius;
    const lowest = subtract(centre, scale(across, radius / Math.sqrt(dot(across, across))));
    const own = (v: Vector): Vector => (side === "left" ? v : mirrorY(v));
    const place = (q: Vector): Vector =>
      own(add(add(this.about, [0, 0, motion.heave]), rotate(turned, subtract(q, this.about))));
    const n = rotate(turned, axis);
    return {
      contact: place(lowest),
      centre: place(centre),
      contactBy: own(rotate(turned, add(p.way, cross(p.turn, subtract(lowest, centre))))),
      centreBy: own(rotate(turned, p.way)),
      springLength: p.springLength,
      springBy: p.springBy,
      camber: Math.atan2(-n[2], Math.hypot(n[0], n[1])),
      toe: Math.atan2(n[0], n[1]),
    };
  }

  /**
   * The car with its mass so accelerated. Left and right of an axle share its lateral force by their loads, and brake or
   * drive alike (equal pressure, a differential); an axle's lateral force is its share of the mass. The iteration's matrix
   * has exact derivatives of the ground and leaves out how ratios change; the answer is that of the full equations.
   * `near`, a state of a close acceleration or of a like car, is only where it begins.
   */
  solve(acceleration: CarAcceleration, near: CarBalanceState | null = null): CarBalanceAnswer {
    const x = new Float64Array(SIZE);
    if (near) x.set([near.heave, near.roll, near.pitch]);
    wheelPlaces.forEach((place, i) => {
      x[3 + i] = near?.[place].travel ?? 0;
      x[7 + i] = near?.[place].load ?? this.axleOf(place).wheelLoad;
    });
    for (let iteration = 0; iteration < LIMIT; iteration++) {
      const step = this.step(x, acceleration);
      if (step === "beyond-fold") return { unsolved: "beyond-fold" };
      if (!step.every(Number.isFinite)) return { unsolved: "no-equilibrium" };
      let most = 0;
      for (let i = 0; i < SIZE; i++) {
        x[i] = (x[i] as number) + (step[i] as number);
        most = Math.max(most, Math.abs(step[i] as number) / (i < 7 ? 1 : this.car.front.wheelLoad));
      }
      if (most < this.settled) return this.describe(x, acceleration);
    }
    return { unsolved: "no-equilibrium" };
  }

  private axleOf(place: WheelPlace): LoadedAxle {
    return this.car[place.startsWith("front") ? "front" : "rear"];
  }

  private motionOf(x: Float64Array): BodyMotion {
    return { heave: x[0] as number, roll: x[1] as number, pitch: x[2] as number, about: this.about };
  }

  private wheelsAt(x: Float64Array): readonly WheelNow[] | null {
    const motion = this.motionOf(x);
    const wheels = wheelPlaces.map((place, i) =>
      this.wheelAt(
        place.startsWith("front") ? "front" : "rear",
        place.endsWith("Left") ? "left" : "right",
        motion,
        x[3 + i] as number,
      ),
    );
    const known = wheels.filter((w) => w !== null);
    return known.length === wheels.length ? known : null;
  }

  /** Share of the lateral force of its axle that a wheel bears. */
  private lateralOf(i: number, x: Float64Array, lateral: number): number {
    const [mine, other] = [x[7 + i] as number, x[7 + (i ^ 1)] as number];
    const { wheelLoad } = this.axleOf(wheelPlaces[i] as WheelPlace);
    return (((2 * wheelLoad) / this.car.gravity) * lateral * mine) / (mine + other);
  }

  /** Force along the car of one wheel: by its brake rearward, or by its shaft forward. */
  private alongOf(i: number, forward: number): { readonly braking: Newtons; readonly drive: Newtons } {
    const { brakeShare = 0, driveShare = 0 } = this.axleOf(wheelPlaces[i] as WheelPlace);
    const force = (2 * (this.car.front.wheelLoad + this.car.rear.wheelLoad) * Math.abs(forward)) / this.car.gravity / 2;
    return { braking: forward < 0 ? brakeShare * force : 0, drive: forward > 0 ? driveShare * force : 0 };
  }

  /** One step of the iteration from a state of all unknowns. */
  private step(x: Float64Array, { lateral, forward }: CarAcceleration): Float64Array | "beyond-fold" {
    const wheels = this.wheelsAt(x);
    if (!wheels) return "beyond-fold";
    const { gravity } = this.car;
    const motion = this.motionOf(x);
    const f = makeFactorisation(SIZE);
    const b = new Float64Array(SIZE);
    const set = (row: number, column: number, value: number): void => {
      f.lu[row * SIZE + column] = (f.lu[row * SIZE + column] as number) + value;
    };
    // A turn of the body moves a point by turn x (point - about).
    const rolling: Vector = [Math.cos(motion.pitch), 0, -Math.sin(motion.pitch)];
    const turns: readonly Vector[] = [rolling, [0, 1, 0]];
    const middle = add(this.about, [0, 0, motion.heave]);
    const push = (force: Vector, at: Vector): void => {
      b[0] = (b[0] as number) + force[2];
      LEVEL.forEach((axis, k) => {
        b[1 + k] = (b[1 + k] as number) + dot(cross(axis, subtract(at, middle)), force);
      });
    };
    const inertia = (mass: number): Vector => [-mass * forward, -mass * lateral, -mass * gravity];
    const sprungAt = add(middle, rotate(bodyRotation(motion), subtract(this.sprung.at, this.about)));
    push(inertia(this.sprung.mass), sprungAt);
    // What leans under its own weight; what else the body's equations change by is left to the iteration.
    set(1, 1, -this.sprung.mass * gravity * (sprungAt[2] - middle[2]));
    wheels.forEach((w, i) => {
      const place = wheelPlaces[i] as WheelPlace;
      const axle = this.axleOf(place);
      const standing = this.spring[place.startsWith("front") ? "front" : "rear"];
      const ground: Vector = [0, this.lateralOf(i, x, lateral), x[7 + i] as number];
      const own = inertia(axle.unsprungMass);
      const { braking, drive } = this.alongOf(i, forward);
      // From the ground the car gets both at the patch; a shaft takes the turning part of a drive to the body.
      push(add(ground, [drive - braking, 0, 0]), w.contact);
      push(own, w.centre);
      const spring = standing.force + axle.springRate * (standing.length - w.springLength);
      const [left, right] = i % 2 === 0 ? [i, i + 1] : [i - 1, i];
      const bar = axle.bar && computeBar(axle.bar, x[3 + left] as number, x[3 + right] as number);
      const byBar = bar ? (i === left ? bar.leftWheel : -bar.leftWheel) : 0;
      b[3 + i] =
        dot(ground, w.contactBy) -
        braking * w.contactBy[0] +
        drive * w.centreBy[0] +
        dot(own, w.centreBy) +
        spring * w.springBy +
        byBar;
      set(3 + i, 3 + i, axle.springRate * w.springBy ** 2);
      if (axle.bar) {
        const rate = axle.bar.torsion * (axle.bar.ratio / axle.bar.lever) ** 2;
        set(3 + i, 3 + i, rate);
        set(3 + i, 3 + (i ^ 1), -rate);
      }
      set(3 + i, 7 + i, -w.contactBy[2]);
      // Load that comes to a wheel brings its share of the sideways force with it.
      const [mine, other] = [x[7 + i] as number, x[7 + (i ^ 1)] as number];
      const perLoad = this.lateralOf(i, x, lateral) / (mine + other) / mine;
      for (const [j, by] of [
        [i, perLoad * other],
        [i ^ 1, -perLoad * mine],
      ] as const) {
        set(3 + i, 7 + j, -by * w.contactBy[1]);
        LEVEL.forEach((axis, k) => {
          set(1 + k, 7 + j, -by * cross(axis, subtract(w.contact, middle))[1]);
        });
      }
      const height = this.ground[place.startsWith("front") ? "front" : "rear"];
      b[7 + i] = height - w.contact[2] - ((x[7 + i] as number) - axle.wheelLoad) / axle.tyreRate;
      set(7 + i, 0, 1);
      turns.forEach((axis, k) => {
        set(7 + i, 1 + k, cross(axis, subtract(w.contact, middle))[2]);
      });
      LEVEL.forEach((axis, k) => {
        set(1 + k, 7 + i, -dot(cross(axis, subtract(w.contact, middle)), UP));
      });
      set(7 + i, 3 + i, w.contactBy[2]);
      set(7 + i, 7 + i, 1 / axle.tyreRate);
      set(0, 7 + i, -1);
    });
    if (factorise(f)) solveFactorised(f, b);
    else b.fill(Number.NaN);
    return b;
  }

  private describe(x: Float64Array, { lateral, forward }: CarAcceleration): CarBalanceAnswer {
    const wheels = this.wheelsAt(x);
    if (!wheels) return { unsolved: "beyond-fold" };
    const lifted = wheelPlaces.find((_, i) => !((x[7 + i] as number) > 0));
    if (lifted !== undefined) return { lifts: lifted };
    const wheelOf = (i: number): BalancedWheel => {
      const w = wheels[i] as WheelNow;
      const place = wheelPlaces[i] as WheelPlace;
      const standing = this.spring[place.startsWith("front") ? "front" : "rear"];
      return {
        load: x[7 + i] as number,
        lateral: this.lateralOf(i, x, lateral),
        ...this.alongOf(i, forward),
        travel: x[3 + i] as number,
        spring: standing.force + this.axleOf(place).springRate * (standing.length - w.springLength),
        camber: w.camber,
        toe: w.toe,
      };
    };
    const { heave, roll, pitch } = this.motionOf(x);
    return {
      state: {
        heave,
        roll,
        pitch,
        frontLeft: wheelOf(0),
        frontRight: wheelOf(1),
        rearLeft: wheelOf(2),
        rearRight: wheelOf(3),
        moved: {
          front: ((x[8] as number) - (x[7] as number)) / 2,
          rear: ((x[10] as number) - (x[9] as number)) / 2,
        },
        movedForward: (x[7] as number) + (x[8] as number) - 2 * this.car.front.wheelLoad,
      },
    };
  }
}
