import type { DirectionIn } from "#quantity";
import type { Axle, Family, HardPoint, Joint, Link } from "#vehicle";

/** An invented car for galleries and tests of drawings: double wishbone in front, five links behind. Lengths below in millimetres. */
const point = (x: number, y: number, z: number): HardPoint => ({
  at: [x / 1000, y / 1000, z / 1000],
  sd: [0.005, 0.005, 0.001],
  origin: "invented",
});

const bush = (axis: DirectionIn<"vehicle">, diameter: number, length: number, label?: string): Joint => ({
  kind: "bush",
  radial: 7e6,
  axial: 7e5,
  axis,
  rateSdShare: 0.1,
  rateOrigin: "invented",
  tornShare: { 3: { low: 0.18, high: 0.35, origin: "invented" } },
  outerDiameter: diameter / 1000,
  length: length / 1000,
  ...(label === undefined ? {} : { label }),
});

const ball: Joint = { kind: "ball-joint", radial: 4.5e7, rateSdShare: 0.1, rateOrigin: "invented" };

interface LinkDraft extends Pick<Link, "name" | "label" | "inner" | "outer" | "innerJoint" | "sheet"> {
  readonly outerJoint?: Joint;
  readonly width: number;
  readonly arm?: string;
  readonly steered?: boolean;
}

const link = ({ width, steered = false, outerJoint = ball, ...draft }: LinkDraft): Link => ({
  ...draft,
  steered,
  outerJoint,
  memberRate: 9e7,
  section: { width: width / 1000, height: 0.03 },
});

const metres = (outline: readonly (readonly [number, number])[]) =>
  outline.map(([x, y]) => [x / 1000, y / 1000] as const);
/** A closed outline from its left half, front to rear. */
const bothSides = (left: readonly (readonly [number, number])[]) =>
  metres([...left, ...left.toReversed().map(([x, y]) => [x, -y] as const)]);

const upperJoint = point(-31, 687, 538);
const lowerJoint = point(5, 738, 196);

const front: Axle = {
  name: "front",
  layout: "double-wishbone",
  rung: "measured",
  track: 1.55,
  wheel: {
    centre: [0, 0.775, 0.312],
    camber: -0.014,
    toe: 0.0017,
    loadedRadius: 0.312,
    tyreSize: "225/50 R17",
    tyreWidth: 0.225,
    freeRadius: 0.328,
    rimDiameter: 0.4318,
    rimWidth: 0.19,
    rimOffset: 0.045,
  },
  links: [
    link({
      name: "upper-arm-front",
      label: "Upper arm, front leg",
      inner: point(70, 457, 523),
      outer: upperJoint,
      innerJoint: bush([1, 0, 0], 46, 50),
      arm: "upper-arm",
      width: 26,
      sheet: "upper",
    }),
    link({
      name: "upper-arm-rear",
      label: "Upper arm, rear leg",
      inner: point(-160, 461, 514),
      outer: upperJoint,
      innerJoint: bush([1, 0, 0], 46, 50),
      arm: "upper-arm",
      width: 26,
      sheet: "upper",
    }),
    link({
      name: "lower-arm-front",
      label: "Lower arm, front leg",
      inner: point(168, 372, 199),
      outer: lowerJoint,
      innerJoint: bush([1, 0, 0], 52, 62),
      arm: "lower-arm",
      width: 38,
      sheet: "lower",
    }),
    link({
      name: "lower-arm-rear",
      label: "Lower arm, rear leg",
      inner: point(-182, 378, 216),
      outer: lowerJoint,
      innerJoint: { ...bush([1, 0.07, 0], 60, 66), kind: "hydraulic-bush" },
      arm: "lower-arm",
      width: 38,
      sheet: "lower",
    }),
    link({
      name: "tie-rod",
      label: "Tie rod",
      inner: point(112, 360, 248),
      outer: point(128, 716, 240),
      innerJoint: ball,
      width: 19,
      steered: true,
      sheet: "lower",
    }),
  ],
  spring: {
    body: point(-12, 560, 690),
    seat: { on: "arm", links: ["lower-arm-front", "lower-arm-rear"], moving: point(2, 628, 214) },
    rate: 9e4,
    coilDiameter: 0.118,
    wireDiameter: 0.013,
  },
  damper: {
    body: point(-24, 575, 706),
    seat: { on: "arm", links: ["lower-arm-front", "lower-arm-rear"], moving: point(-6, 652, 210) },
    tubeDiameter: 0.05,
    kind: "passive",
  },
  bar: {
    diameter: 0.024,
    path: [
      [0.262, 0, 0.25],
      [0.262, 0.47, 0.25],
      [0.232, 0.52, 0.26],
      [0.062, 0.604, 0.29],
    ],
    bodyBush: [0.262, 0.352, 0.25],
    linkUpper: [0.062, 0.604, 0.29],
    linkLower: [0.05, 0.62, 0.2],
  },
  brake: {
    discDiameter: 0.33,
    discThickness: 0.03,
    vented: true,
    hatDepth: 0.048,
    pistonDiameter: 0.057,
    padThickness: 0.012,
    caliperAt: "rear",
    parking: false,
  },
  subframe: [
    bothSides([
      [300, 300],
      [230, 392],
      [150, 352],
      [-120, 352],
      [-250, 452],
      [-318, 452],
      [-318, 380],
      [-262, 300],
    ]),
    bothSides([
      [196, 262],
      [130, 296],
      [-110, 296],
      [-176, 250],
    ]),
  ],
  knuckle: [],
  subframeMounts: [
    [0.262, 0.338, 0.3],
    [0.262, -0.338, 0.3],
    [-0.284, 0.416, 0.3],
    [-0.284, -0.416, 0.3],
  ],
  rackTravel: 0.075,
  driven: false,
  levelSensor: false,
  unsprungMass: 42,
  brakeShare: 0.68,
  driveShare: 0,
  bumpStop: 0.08,
  droopStop: 0.085,
};

const rear: Axle = {
  name: "rear",
  layout: "five-link",
  rung: "measured",
  track: 1.56,
  wheel: {
    centre: [-2.76, 0.78, 0.318],
    camber: -0.021,
    toe: 0.0026,
    loadedRadius: 0.318,
    tyreSize: "225/50 R17",
    tyreWidth: 0.225,
    freeRadius: 0.328,
    rimDiameter: 0.4318,
    rimWidth: 0.19,
    rimOffset: 0.045,
  },
  links: [
    link({
      name: "upper-front-link",
      label: "Upper front link",
      inner: point(-2587, 446, 483),
      outer: point(-2722, 688, 497),
      innerJoint: bush([0.87, 0.49, 0], 42, 50),
      outerJoint: bush([0.87, 0.49, 0], 40, 44),
      width: 24,
      sheet: "upper",
    }),
    link({
      name: "upper-rear-link",
      label: "Upper rear link",
      inner: point(-2911, 372, 497),
      outer: point(-2802, 696, 517),
      innerJoint: bush([0.95, -0.32, 0], 42, 50),
      width: 24,
      sheet: "upper",
    }),
    link({
      name: "spring-link",
      label: "Spring link",
      inner: point(-2833, 268, 221),
      outer: point(-2808, 724, 204),
      innerJoint: bush([1, 0, 0], 52, 62),
      outerJoint: bush([1, 0, 0], 46, 50),
      width: 46,
      sheet: "lower",
    }),
    link({
      name: "trailing-link",
      label: "Trailing link",
      inner: point(-2292, 576, 279),
      outer: point(-2687, 706, 214),
      innerJoint: bush([0, 1, 0], 64, 60, "front bush"),
      outerJoint: bush([0, 1, 0], 48, 50, "rear bush"),
      width: 36,
      sheet: "lower",
    }),
    link({
      name: "toe-link",
      label: "Toe link",
      inner: point(-2618, 369, 274),
      outer: point(-2632, 712, 266),
      innerJoint: bush([1, 0, 0], 40, 46),
      width: 22,
      sheet: "lower",
    }),
  ],
  spring: {
    body: point(-2826, 536, 452),
    seat: { on: "link", link: "spring-link", fraction: 0.62 },
    rate: 7.2e4,
    coilDiameter: 0.112,
    wireDiameter: 0.012,
  },
  damper: {
    body: point(-2888, 612, 742),
    seat: { on: "knuckle", moving: point(-2852, 690, 248) },
    tubeDiameter: 0.05,
    kind: "passive",
  },
  bar: {
    diameter: 0.018,
    path: [
      [-3.004, 0, 0.24],
      [-3.004, 0.47, 0.24],
      [-2.98, 0.52, 0.24],
      [-2.868, 0.602, 0.24],
    ],
    bodyBush: [-3.004, 0.33, 0.24],
    linkUpper: [-2.868, 0.602, 0.26],
    linkLower: [-2.862, 0.61, 0.2],
  },
  brake: {
    discDiameter: 0.3,
    discThickness: 0.012,
    vented: false,
    hatDepth: 0.057,
    pistonDiameter: 0.042,
    padThickness: 0.011,
    caliperAt: "front",
    parking: true,
  },
  subframe: [
    bothSides([
      [-2570, 320],
      [-2520, 440],
      [-2500, 500],
      [-2548, 520],
      [-2640, 420],
      [-2880, 400],
      [-2960, 500],
      [-3012, 490],
      [-3010, 430],
      [-2950, 330],
    ]),
    bothSides([
      [-2640, 290],
      [-2880, 232],
    ]),
  ],
  knuckle: [],
  subframeMounts: [
    [-2.528, 0.484, 0.35],
    [-2.528, -0.484, 0.35],
    [-2.984, 0.462, 0.35],
    [-2.984, -0.462, 0.35],
  ],
  driven: true,
  levelSensor: true,
  unsprungMass: 40,
  brakeShare: 0.32,
  driveShare: 1,
  bumpStop: 0.085,
  droopStop: 0.09,
};

export const sampleFamily: Family = {
  id: "sample-saloon",
  name: "Sample saloon",
  fromYear: 2012,
  toYear: 2018,
  invented: true,
  wheelbase: 2.76,
  kerbMass: 1540,
  frontWeightShare: 0.5,
  cgHeight: 0.56,
  front,
  rear,
  variants: [
    {
      label: "Front brake",
      key: "calliper on the edge",
      choices: [
        { label: "25 mm", code: "B 31" },
        { label: "28 mm", code: "B 33" },
      ],
    },
  ],
  life: [
    { position: "front/lower-arm/rear-bush", lowKm: 69_000, middleKm: 104_000, highKm: 135_000, source: "invented" },
    {
      position: "rear/trailing-link/inner-bush",
      lowKm: 80_000,
      middleKm: 112_000,
      highKm: 143_000,
      source: "invented",
    },
  ],
  work: null,
};

/** The same car of which only the silhouettes, the wheelbase, the tracks and the tyre are known. */
export const layoutFamily: Family = {
  ...sampleFamily,
  id: "sample-silhouette",
  name: "Sample silhouette",
  front: { ...front, rung: "layout" },
  rear: { ...rear, rung: "layout" },
};
