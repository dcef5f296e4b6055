import { add, cross, dot, mirrorY, rotate, subtract, type Vector } from "#numeric";
import type { Metres, Newtons, Radians } from "#quantity";
import { type CarAcceleration, type LoadedAxle, type LoadedCar, wheelPlaces } from "./car-balance-state.ts";
import { type BodyMotion, bodyRotation, computeBar } from "./car-pose.ts";

/** A wheel where it stands in a search, in axes of the ground and of its own side. */
export interface WheelNow {
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

/** Change of what a wheel does per travel, per travel. */
export type RatioChange = Pick<WheelNow, "contactBy" | "centreBy" | "springBy">;

/** Heave, roll, pitch, four travels, four loads. */
export const UNKNOWNS = 11;
const UP: Vector = [0, 0, 1];
/** Moments are taken about level lines: what turns a car about the upright one the tyres take, and no load has a part in it. */
const LEVEL: readonly Vector[] = [
  [1, 0, 0],
  [0, 1, 0],
];

type PerAxle<T> = Readonly<Record<"front" | "rear", T>>;

/** A car and what of it hangs on how it stands. */
interface StandingCar {
  readonly car: LoadedCar;
  readonly sprung: { readonly mass: number; readonly at: Vector };
  readonly standing: PerAxle<{ readonly force: Newtons; readonly length: Metres }>;
  /** Height of the ground, metres. */
  readonly ground: PerAxle<Metres>;
}

/** What acts on one wheel, newtons. */
export interface WheelForces {
  readonly now: WheelNow;
  readonly axle: LoadedAxle;
  readonly axleKey: "front" | "rear";
  /** From the ground, across and up. */
  readonly ground: Vector;
  /** The same with brake and drive, as the car gets them at the patch. */
  readonly patch: Vector;
  /** Weight and inertia of the wheel itself. */
  readonly own: Vector;
  readonly braking: Newtons;
  readonly drive: Newtons;
  readonly spring: Newtons;
  readonly byBar: Newtons;
  /** Load of this wheel and of the other of its axle. */
  readonly load: Newtons;
  readonly otherLoad: Newtons;
  /** How far the ground lies over the lowest point, the tyre pressed together as its load asks; metres. */
  readonly open: Metres;
}

/** What acts on a car in a state of a search. */
export interface CarForces {
  readonly wheels: readonly WheelForces[];
  /** On the sprung mass, and where. */
  readonly inertia: Vector;
  readonly sprungAt: Vector;
  readonly middle: Vector;
  /** What the body turns about: a turn moves a point by turn x (point - middle). */
  readonly turns: readonly Vector[];
}

interface Standing {
  readonly wheels: readonly WheelNow[];
  readonly motion: BodyMotion;
  readonly acceleration: CarAcceleration;
}

/** All forces on body and wheels at the unknowns `x`. */
export function computeForces(
  { car, sprung, standing, ground }: StandingCar,
  x: Float64Array,
  { wheels, motion, acceleration: { lateral, forward } }: Standing,
): CarForces {
  const inertia = (mass: number): Vector => [-mass * forward, -mass * lateral, -mass * car.gravity];
  const middle = add(motion.about, [0, 0, motion.heave]);
  const alongOfWheel = ((car.front.wheelLoad + car.rear.wheelLoad) * Math.abs(forward)) / car.gravity;
  return {
    inertia: inertia(sprung.mass),
    sprungAt: add(middle, rotate(bodyRotation(motion), subtract(sprung.at, motion.about))),
    middle,
    turns: [
      [Math.cos(motion.pitch), 0, -Math.sin(motion.pitch)],
      [0, 1, 0],
    ],
    wheels: wheels.map((now, i): WheelForces => {
      const axleKey = wheelPlaces[i]?.startsWith("front") ? "front" : "rear";
      const axle = car[axleKey];
      const [load, otherLoad] = [x[7 + i] as number, x[7 + (i ^ 1)] as number];
      const across = (((2 * axle.wheelLoad) / car.gravity) * lateral * load) / (load + otherLoad);
      const braking = forward < 0 ? (axle.brakeShare ?? 0) * alongOfWheel : 0;
      const drive = forward > 0 ? (axle.driveShare ?? 0) * alongOfWheel : 0;
      const left = i & ~1;
      const bar = axle.bar && computeBar(axle.bar, x[3 + left] as number, x[4 + left] as number);
      return {
        now,
        axle,
        axleKey,
        ground: [0, across, load],
        // From the ground the car gets both at the patch; a shaft takes the turning part of a drive to the body.
        patch: [drive - braking, across, load],
        own: inertia(axle.unsprungMass),
        braking,
        drive,
        spring: standing[axleKey].force + axle.springRate * (standing[axleKey].length - now.springLength),
        byBar: bar ? (i === left ? bar.leftWheel : -bar.leftWheel) : 0,
        load,
        otherLoad,
        open: ground[axleKey] - now.contact[2] - (load - axle.wheelLoad) / axle.tyreRate,
      };
    }),
  };
}

/** What is left of each equation: forces up, moments about level lines, work of each travel, each wheel on the ground. */
export function computeResiduals({ wheels, inertia, sprungAt, middle }: CarForces): Float64Array {
  const b = new Float64Array(UNKNOWNS);
  const push = (force: Vector, at: Vector): void => {
    const arm = subtract(at, middle);
    b[0] = (b[0] as number) + force[2];
    b[1] = (b[1] as number) + arm[1] * force[2] - arm[2] * force[1];
    b[2] = (b[2] as number) + arm[2] * force[0] - arm[0] * force[2];
  };
  push(inertia, sprungAt);
  wheels.forEach(({ now, ground, patch, own, braking, drive, spring, byBar, open }, i) => {
    push(patch, now.contact);
    push(own, now.centre);
    b[3 + i] =
      dot(ground, now.contactBy) -
      braking * now.contactBy[0] +
      drive * now.centreBy[0] +
      dot(own, now.centreBy) +
      spring * now.springBy +
      byBar;
    b[7 + i] = open;
  });
  return b;
}

/** Fills `lu` with how the residuals fall with each unknown; the change of ratios is the one where the car stands. */
export function fillMatrix(
  lu: Float64Array,
  { wheels, inertia, sprungAt, middle, turns }: CarForces,
  ratios: PerAxle<RatioChange>,
): void {
  lu.fill(0);
  const set = (row: number, column: number, value: number): void => {
    const at = row * UNKNOWNS + column;
    lu[at] = (lu[at] as number) + value;
  };
  /** Moments of a force whose point goes along when the body turns. */
  const turned = (force: Vector, at: Vector): void => {
    turns.forEach((turn, j) => {
      const way = cross(turn, subtract(at, middle));
      LEVEL.forEach((axis, k) => {
        set(1 + k, 1 + j, -dot(cross(axis, way), force));
      });
    });
  };
  turned(inertia, sprungAt);
  wheels.forEach(({ now, axle, axleKey, ground, patch, own, braking, drive, spring, load, otherLoad }, i) => {
    turned(patch, now.contact);
    turned(own, now.centre);
    const arm = subtract(now.contact, middle);
    const change = ratios[axleKey];
    const sided = (v: Vector): Vector => (i % 2 === 0 ? v : mirrorY(v));
    const byRatios =
      dot(ground, sided(change.contactBy)) -
      braking * change.contactBy[0] +
      drive * change.centreBy[0] +
      dot(own, sided(change.centreBy)) +
      spring * change.springBy;
    set(3 + i, 3 + i, axle.springRate * now.springBy ** 2 - byRatios);
    if (axle.bar) {
      const rate = axle.bar.torsion * (axle.bar.ratio / axle.bar.lever) ** 2;
      set(3 + i, 3 + i, rate);
      set(3 + i, 3 + (i ^ 1), -rate);
    }
    set(3 + i, 7 + i, -now.contactBy[2]);
    turns.forEach((turn, k) => {
      const [contact, centre] = [cross(turn, now.contactBy), cross(turn, now.centreBy)];
      set(3 + i, 1 + k, braking * contact[0] - dot(ground, contact) - drive * centre[0] - dot(own, centre));
      set(7 + i, 1 + k, cross(turn, arm)[2]);
    });
    LEVEL.forEach((axis, k) => {
      set(1 + k, 3 + i, -dot(cross(axis, now.contactBy), patch) - dot(cross(axis, now.centreBy), own));
      set(1 + k, 7 + i, -dot(cross(axis, arm), UP));
    });
    // Load that comes to a wheel brings its share of the sideways force with it.
    const perLoad = ground[1] / (load + otherLoad) / load;
    for (const [j, by] of [
      [i, perLoad * otherLoad],
      [i ^ 1, -perLoad * load],
    ] as const) {
      set(3 + i, 7 + j, -by * now.contactBy[1]);
      LEVEL.forEach((axis, k) => {
        set(1 + k, 7 + j, -by * cross(axis, arm)[1]);
      });
    }
    set(7 + i, 0, 1);
    set(7 + i, 3 + i, now.contactBy[2]);
    set(7 + i, 7 + i, 1 / axle.tyreRate);
    set(0, 7 + i, -1);
  });
}
