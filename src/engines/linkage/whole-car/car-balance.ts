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
import { buildCornerLinkage } from "../corner-linkage.ts";
import { computeDesignContact } from "../wheel-figures.ts";
import {
  type BalancedWheel,
  type CarAcceleration,
  type CarBalanceAnswer,
  type CarBalanceStart,
  type LoadedAxle,
  type LoadedCar,
  type WheelPlace,
  wheelPlaces,
} from "./car-balance-state.ts";
import {
  type CarForces,
  computeForces,
  computeResiduals,
  fillMatrix,
  type RatioChange,
  UNKNOWNS,
  type WheelForces,
  type WheelNow,
} from "./car-equations.ts";
import { type BodyMotion, bodyRotation } from "./car-pose.ts";
import { interpolatedWheel, solvedWheel, type WheelOverTravel } from "./wheel-over-travel.ts";

/** Travel each way over which the change of ratios is taken, metres. */
const REACH = 0.01;
const LIMIT = 200;
/** Steps in metres and radians, loads by the standing one: rounding of places of some metres stays below it. */
const SETTLED = 1e-13;
/** The same where only the scatter of many cars is asked for: the next step would be a thirtieth of this or less. */
const SETTLED_FAST = 1e-7;
/** Balance of body and four wheels in a steady bend, braked or driven; made once per car. */
export class CarBalance {
  private readonly wheels: { readonly front: WheelOverTravel; readonly rear: WheelOverTravel };
  private readonly about: Vector;
  private readonly sprung: { readonly mass: number; readonly at: Vector };
  private readonly spring: Readonly<Record<"front" | "rear", { force: number; length: number }>>;
  private readonly ground: Readonly<Record<"front" | "rear", number>>;
  private readonly ratios: Readonly<Record<"front" | "rear", RatioChange>>;
  private readonly settled: number;
  /** Steps that go by one matrix: what ratios do beyond it slows a search more than how far the car moves. */
  private readonly matrixEvery: number;
  private readonly factorisation = makeFactorisation(UNKNOWNS);
  private solvable = false;

  /** `fast`: wheels by polynomials through solved postures, for many bends of many cars; else solved at every step. */
  constructor(
    readonly car: LoadedCar,
    { fast = false }: { readonly fast?: boolean } = {},
  ) {
    const wheelOf = fast ? interpolatedWheel : solvedWheel;
    this.wheels = { front: wheelOf(car.front.geometry), rear: wheelOf(car.rear.geometry) };
    this.settled = fast ? SETTLED_FAST : SETTLED;
    this.matrixEvery = fast ? 4 : 1;
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
    this.ratios = { front: this.ratioChange("front"), rear: this.ratioChange("rear") };
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

  /** How the ratios of a left wheel change about where it stands: of the iteration's matrix only, no answer has it in it. */
  private ratioChange(axle: "front" | "rear"): RatioChange {
    const still = { heave: 0, roll: 0, pitch: 0, about: this.about };
    const [low, high] = [this.wheelAt(axle, "left", still, -REACH), this.wheelAt(axle, "left", still, REACH)];
    if (!low || !high) return { contactBy: [0, 0, 0], centreBy: [0, 0, 0], springBy: 0 };
    return {
      contactBy: scale(subtract(high.contactBy, low.contactBy), 0.5 / REACH),
      centreBy: scale(subtract(high.centreBy, low.centreBy), 0.5 / REACH),
      springBy: ((high.springBy - low.springBy) * 0.5) / REACH,
    };
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
   * has exact derivatives of ground and moments and takes the change of ratios from where the car stands; the answer is that of the full equations.
   * `near`, a state of a close acceleration or of a like car, is only where it begins.
   */
  solve(acceleration: CarAcceleration, near: CarBalanceStart | null = null): CarBalanceAnswer {
    const x = new Float64Array(UNKNOWNS);
    if (near) x.set([near.heave, near.roll, near.pitch]);
    wheelPlaces.forEach((place, i) => {
      x[3 + i] = near?.[place].travel ?? 0;
      x[7 + i] = near?.[place].load ?? this.axleOf(place).wheelLoad;
    });
    for (let iteration = 0; iteration < LIMIT; iteration++) {
      const step = this.step(x, acceleration, iteration % this.matrixEvery === 0);
      if (step === "beyond-fold") return { unsolved: "beyond-fold" };
      if (!step.every(Number.isFinite)) return { unsolved: "no-equilibrium" };
      let most = 0;
      for (let i = 0; i < UNKNOWNS; i++) {
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

  private forcesAt(x: Float64Array, wheels: readonly WheelNow[], acceleration: CarAcceleration): CarForces {
    const { car, sprung, spring: standing, ground } = this;
    return computeForces({ car, sprung, standing, ground }, x, { wheels, motion: this.motionOf(x), acceleration });
  }

  /** One step of the iteration from a state of all unknowns, by a matrix made there or by the one made last. */
  private step(x: Float64Array, acceleration: CarAcceleration, anew: boolean): Float64Array | "beyond-fold" {
    const wheels = this.wheelsAt(x);
    if (!wheels) return "beyond-fold";
    const forces = this.forcesAt(x, wheels, acceleration);
    const b = computeResiduals(forces);
    if (anew) {
      fillMatrix(this.factorisation.lu, forces, this.ratios);
      this.solvable = factorise(this.factorisation);
    }
    if (this.solvable) solveFactorised(this.factorisation, b);
    else b.fill(Number.NaN);
    return b;
  }

  private describe(x: Float64Array, acceleration: CarAcceleration): CarBalanceAnswer {
    const wheels = this.wheelsAt(x);
    if (!wheels) return { unsolved: "beyond-fold" };
    const lifted = wheelPlaces.find((_, i) => !((x[7 + i] as number) > 0));
    if (lifted !== undefined) return { lifts: lifted };
    const forces = this.forcesAt(x, wheels, acceleration).wheels;
    const wheelOf = (i: number): BalancedWheel => {
      const { now, ground, braking, drive, spring } = forces[i] as WheelForces;
      return {
        load: x[7 + i] as number,
        lateral: ground[1],
        braking,
        drive,
        travel: x[3 + i] as number,
        spring,
        camber: now.camber,
        toe: now.toe,
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
