import { askDoor } from "#contract";
import { type Row, relative, relativeAboveOne, Score } from "../score.ts";
import type { Suite } from "../suites.ts";
import { type ArmAxle, type ArmCar, SPRING, solveFreeBodyCar } from "./free-body-car.ts";

const GRAVITY = 9.80665;
const front: ArmAxle = {
  x: 0,
  half: 0.78,
  arm: 0.36,
  springRate: 31_000,
  wheelLoad: 4100,
  unsprung: 38,
  tyreRate: 215_000,
  brakeShare: 0.68,
  driveShare: 0,
};
const rear: ArmAxle = {
  ...front,
  x: -2.71,
  half: 0.76,
  arm: 0.42,
  springRate: 27_000,
  wheelLoad: 3500,
  unsprung: 35,
  brakeShare: 0.32,
  driveShare: 1,
};
const car: ArmCar = { axles: [front, rear], massHeight: 0.54, radius: 0.31, gravity: GRAVITY };
const ACCELERATIONS = [
  { name: "in a bend", lateral: [1, 3, 5, -4], forward: 0 },
  { name: "braked", lateral: [0], forward: -5 },
  { name: "driven", lateral: [0], forward: 3 },
  { name: "braked in a bend", lateral: [2, 4], forward: -3 },
] as const;
const PLACES = ["front_left", "front_right", "rear_left", "rear_right"] as const;

type Wheel = Readonly<Record<"load_n" | "wheel_travel_mm", number>>;
type State = Readonly<Record<(typeof PLACES)[number], Wheel>> & {
  readonly front_moved_n: number;
  readonly rear_moved_n: number;
  readonly moved_forward_n: number;
  readonly roll_deg: number;
};

/** Level parallel arms as five links of a corner. */
function axleWire({ x, half, arm, springRate, unsprung, tyreRate, brakeShare, driveShare }: ArmAxle): object {
  const mm = (a: number, b: number, c: number) => [1000 * a, 1000 * b, 1000 * c];
  const { radius } = car;
  const link = (name: string, at: number, z: number, outerAt = 0) => ({
    name,
    inner_mm: mm(x + at, half - arm, z),
    outer_mm: mm(x + outerAt, half, z),
    steered: false,
  });
  return {
    links: [
      link("upper-front", 0.15, radius + 0.19),
      link("upper-rear", -0.15, radius + 0.19),
      link("lower-front", 0.15, radius - 0.09),
      link("lower-rear", -0.15, radius - 0.09),
      link("toe-link", -0.1, radius, -0.1),
    ],
    wheel: { centre_mm: mm(x, half, radius), camber_deg: 0, toe_deg: 0, loaded_radius_mm: 1000 * radius },
    spring: {
      body_mm: mm(x, half - SPRING.inboard, radius + SPRING.length),
      on: "knuckle",
      moving_mm: mm(x, half - SPRING.inboard, radius),
      rate_n_per_mm: springRate / 1000,
    },
    unsprung_kg: unsprung,
    tyre_n_per_mm: tyreRate / 1000,
    brake_share: brakeShare,
    drive_share: driveShare,
  };
}

function askStates(
  [ahead, behind]: readonly [ArmAxle, ArmAxle],
  lateral: readonly number[],
  forward: number,
): readonly State[] {
  const mass = (2 * (front.wheelLoad + rear.wheelLoad)) / GRAVITY;
  const answer = askDoor("linkage.car-balance", {
    front: axleWire(ahead),
    rear: axleWire(behind),
    mass_kg: mass,
    front_weight_share: front.wheelLoad / (front.wheelLoad + rear.wheelLoad),
    cg_height_mm: 1000 * car.massHeight,
    lateral_m_per_s2: lateral,
    forward_m_per_s2: forward,
  });
  if ("findings" in answer) throw new Error(`refused: ${JSON.stringify(answer.findings)}`);
  return (answer.output as { readonly states: readonly State[] }).states;
}

function scoreWholeCar(): readonly Row[] {
  const score = new Score("linkage.car-balance, free bodies", "own statics of parallel arms, test/reference/whole-car");
  for (const { name, lateral, forward } of ACCELERATIONS) {
    const states = askStates(car.axles, lateral, forward);
    lateral.forEach((by, i) => {
      const state = states[i];
      const byHand = solveFreeBodyCar(car, by, forward);
      PLACES.forEach((place, k) => {
        const want = byHand[k];
        score.compare(`load of each wheel, ${name}`, state?.[place].load_n, want?.load ?? Number.NaN, relative(1e-8));
        score.compare(
          `travel of each wheel in mm, ${name}`,
          state?.[place].wheel_travel_mm,
          1000 * (want?.travel ?? Number.NaN),
          relativeAboveOne(1e-7),
        );
      });
    });
  }
  return [...score.rows(), ...scoreHandbook()];
}

/** Gentle enough that the second order, of the lean and of what the patches move, is below what is compared. */
const GENTLE = 1e-3;

/** Distribution by roll stiffness and the load moved along the car, as a handbook has them: level arms, light wheels, rigid tyres. */
function scoreHandbook(): readonly Row[] {
  const score = new Score("linkage.car-balance, handbook", "textbook statics, from memory");
  const light = [front, rear].map((axle) => ({ ...axle, unsprung: 0, tyreRate: 1e9 })) as [ArmAxle, ArmAxle];
  const mass = (2 * (front.wheelLoad + rear.wheelLoad)) / GRAVITY;
  const tipping = mass * car.massHeight;
  const stiffness = light.map(({ half, springRate }) => 2 * half ** 2 * springRate) as [number, number];
  const lean = (GENTLE * tipping) / (stiffness[0] + stiffness[1] - tipping * GRAVITY);
  const [bend] = askStates(light, [GENTLE], 0);
  const [braked] = askStates(light, [0], -GENTLE);
  score.compare("lean by roll stiffness, rad", ((bend?.roll_deg ?? Number.NaN) * Math.PI) / 180, lean, relative(1e-3));
  for (const [key, i] of [
    ["front_moved_n", 0],
    ["rear_moved_n", 1],
  ] as const)
    score.compare(
      "load moved by roll stiffness",
      bend?.[key],
      (stiffness[i] * lean) / (2 * light[i].half),
      relative(1e-3),
    );
  score.compare(
    "load that goes forward, m a h over wheelbase",
    braked?.moved_forward_n,
    (GENTLE * tipping) / (front.x - rear.x),
    // The handbook leaves out that the mass itself goes forward as the body nods.
    relative(2e-2),
  );
  return score.rows();
}

export const wholeCarSuite: Suite = {
  title: "Whole car",
  about:
    "A car on level parallel arms with springs, tyres and unsprung masses, in a bend, braked and driven: forces and moments on each knuckle and on the whole car as free bodies, without virtual work, written for this project.",
  score: scoreWholeCar,
};
