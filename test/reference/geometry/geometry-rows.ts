import { askDoor } from "#contract";
import {
  computeCamberAtToe,
  computeSteeringAxisFromReadings,
  computeToeAngle,
  computeToeLength,
} from "#engines/alignment";
import {
  computeCorrectOuterAngle,
  computeTrapezoidArmAngle,
  computeTrapezoidOuterAngle,
  computeTurnAngles,
} from "#engines/linkage";
import { degreesFromRadians as deg, radiansFromDegrees as rad } from "#quantity";
import { absolute, type Row, Score } from "../score.ts";
import { couplerAngle, type FourBar, fourBarCorner, type PlanePoint, planarStrutCorner } from "./planar-corner.ts";

const SOURCE = "check-values-geometry";
const milli = absolute(1e-4);
const micro = absolute(1e-6);

type Position = Readonly<Record<string, number>> & {
  readonly front_view_centre_mm: PlanePoint;
};

/** Positions of the door at these travels, or an error that names what it refused. */
export function askPositions(corner: object, travels: readonly number[]): readonly Position[] {
  const answer = askDoor("linkage.travel", {
    ...corner,
    steps: travels.map((wheel_travel_mm) => ({ wheel_travel_mm })),
  });
  if ("findings" in answer) throw new Error(`refused: ${JSON.stringify(answer.findings)}`);
  return (answer.output as { readonly positions: readonly Position[] }).positions;
}

/** Coupler and rocker angle of a four-bar at a crank angle, all in degrees, from a corner designed at another one. */
function moveFourBar(bar: FourBar, crossed: boolean, designAt: number, askedAt: number) {
  const ground: PlanePoint = [500, 300];
  const pin = (at: number): PlanePoint => [
    ground[0] + bar.crank * Math.cos(rad(at)),
    ground[1] + bar.crank * Math.sin(rad(at)),
  ];
  const start = couplerAngle(bar, rad(designAt), crossed);
  const crank = pin(designAt);
  const rocker: PlanePoint = [crank[0] + bar.coupler * Math.cos(start), crank[1] + bar.coupler * Math.sin(start)];
  const corner = fourBarCorner(
    { inner: ground, outer: crank },
    { inner: [ground[0] + bar.ground, ground[1]], outer: rocker },
    crank,
    crank[1],
  );
  const [position] = askPositions(corner, [pin(askedAt)[1] - crank[1]]);
  const coupler = start - rad(position?.camber_deg ?? Number.NaN);
  const end: PlanePoint = [
    pin(askedAt)[0] + bar.coupler * Math.cos(coupler),
    pin(askedAt)[1] + bar.coupler * Math.sin(coupler),
  ];
  const rockerAngle = Math.atan2(end[1] - ground[1], end[0] - ground[0] - bar.ground);
  return { coupler: deg(coupler), rocker: deg(rockerAngle) };
}

function scoreFourBars(): Score {
  const score = new Score("planar four-bar by the spatial linkage (G1-G3)", SOURCE);
  const tolerance = absolute(1e-5);
  const first: FourBar = { ground: 100, crank: 40, coupler: 120, rocker: 80 };
  const second: FourBar = { ground: 120, crank: 60, coupler: 80, rocker: 80 };
  const cases = [
    [first, false, 25, 40, 57.32488, 20.29788],
    [first, true, 25, 40, -98.00496, -60.97797],
    [second, false, 60, 45, 94.87118, 27.77872],
    [second, true, 60, 45, -152.22128, -85.12882],
  ] as const;
  for (const [bar, crossed, designAt, askedAt, rocker, coupler] of cases) {
    const got = moveFourBar(bar, crossed, designAt, askedAt);
    score.compare("rocker angle, deg", got.rocker, rocker, tolerance);
    score.compare("coupler angle, deg", got.coupler, coupler, tolerance);
  }
  const { ground, crank, coupler, rocker } = first;
  const k = (ground ** 2 + crank ** 2 + rocker ** 2 - coupler ** 2) / (2 * crank * rocker);
  const a = rad(40);
  const b = rad(moveFourBar(first, false, 25, 40).rocker);
  const sum = (ground / crank) * Math.cos(b) - (ground / rocker) * Math.cos(a) + k;
  score.compare("Freudenstein relation, both angles from the ground line", sum, 0.954632, micro);
  score.compare("Freudenstein relation, closure", sum - Math.cos(a - b), 0, absolute(1e-12));
  const printed = (angle: number): number =>
    (ground / rocker) * Math.cos(a) + (ground / crank) * Math.cos(angle) - k - Math.cos(a - angle);
  score.compare(
    "Freudenstein relation as printed, output angle turned half round",
    printed(b + Math.PI),
    0,
    absolute(1e-12),
  );
  return score;
}

function scoreSteering(): Score {
  const score = new Score("steering geometry (G4-G7)", SOURCE);
  const turn = { pivots: 1.5, wheelbase: 2.7 };
  for (const [inner, outer] of [
    [10, 9.123523],
    [20, 16.843796],
    [30, 23.611973],
  ] as const)
    score.compare("correct outer angle, deg", deg(computeCorrectOuterAngle(rad(inner), turn)), outer, micro);
  const angles = computeTurnAngles(10, turn);
  score.compare("inner angle at 10 m, deg", angles && deg(angles.inner), 16.272097, micro);
  score.compare("outer angle at 10 m, deg", angles && deg(angles.outer), 14.09893, micro);
  score.compare("radius of the outer front wheel, m", angles?.outerRadius, 11.083885, micro);
  const trapezoid = { pivots: 1.25, arm: 0.15, rod: 1.2 };
  const arm = computeTrapezoidArmAngle(trapezoid);
  score.compare("arm angle of the trapezoid, deg", arm === null ? null : deg(arm), 9.594068, micro);
  const outers = [
    [10, 9.697838, 9.283458],
    [20, 18.780865, 17.385143],
    [30, 27.167219, 24.656817],
    [40, 34.681055, 31.401257],
  ] as const;
  for (const [inner, linkage, correct] of outers) {
    const outer = computeTrapezoidOuterAngle(trapezoid, rad(inner));
    score.compare("outer angle of the trapezoid, deg", outer === null ? null : deg(outer), linkage, micro);
    const wanted = computeCorrectOuterAngle(rad(inner), { pivots: 1.25, wheelbase: 2.8 });
    score.compare("correct outer angle for it, deg", deg(wanted), correct, micro);
  }
  for (let inner = 5; inner <= 60; inner++) {
    const outer = computeTrapezoidOuterAngle(trapezoid, rad(inner)) ?? Number.NaN;
    score.agree(
      "this trapezoid turns the outer wheel too far from 5 to 60 deg",
      outer > computeCorrectOuterAngle(rad(inner), { pivots: 1.25, wheelbase: 2.8 }),
    );
  }
  return score;
}

function askAlignment(id: string, input: object): Readonly<Record<string, number>> {
  const answer = askDoor(id, input);
  if ("findings" in answer) throw new Error(`refused: ${JSON.stringify(answer.findings)}`);
  return answer.output as Readonly<Record<string, number>>;
}

/** caster, inclination, camber, sweep; camber in, camber out, difference, caster by the rule, caster by 1.5 (or null). */
const sweeps = [
  [4, 8, -0.5, 20, -1.382521, 1.357492, 2.740014, 4.005632, 4.110021],
  [6, 12, -1.0, 20, -2.316595, 1.797221, 4.113816, 6.013997, 6.170725],
  [3, 0, 0, 10, -0.521407, 0.521407, 1.042813, 3.002662, null],
] as const;

function scoreSweeps(): Score {
  const score = new Score("caster from a camber sweep (G8-G11)", SOURCE);
  const factorAt = (sweep: number): unknown =>
    askAlignment("alignment.caster-from-sweep", { camber_in_deg: -1, camber_out_deg: 1, sweep_deg: sweep }).factor;
  score.compare("factor", factorAt(20), 1.461902, micro);
  score.compare("factor", factorAt(10), 2.879385, micro);
  for (const [caster, inclination, camber, sweep, inward, outward, difference, byRule, byShop] of sweeps) {
    const axis = { caster: rad(caster), inclination: rad(inclination) };
    const wheel = { camber: rad(camber), toe: 0 };
    const camberIn = computeCamberAtToe(axis, wheel, rad(sweep)) ?? Number.NaN;
    const camberOut = computeCamberAtToe(axis, wheel, rad(-sweep)) ?? Number.NaN;
    score.compare("camber turned in, deg", deg(camberIn), inward, micro);
    score.compare("camber turned out, deg", deg(camberOut), outward, micro);
    score.compare("camber difference, deg", deg(camberOut - camberIn), difference, micro);
    const got = askAlignment("alignment.caster-from-sweep", {
      camber_in_deg: deg(camberIn),
      camber_out_deg: deg(camberOut),
      sweep_deg: sweep,
    });
    score.compare("caster_deg", got.caster_deg, byRule, micro);
    if (byShop !== null) score.compare("caster by 1.5, deg", 1.5 * deg(camberOut - camberIn), byShop, micro);
    const exact = computeSteeringAxisFromReadings([
      wheel,
      { camber: camberIn, toe: rad(sweep) },
      { camber: camberOut, toe: rad(-sweep) },
    ]);
    score.compare("caster from three readings, deg", exact && deg(exact.caster), caster, absolute(1e-9));
    score.compare("inclination from three readings, deg", exact && deg(exact.inclination), inclination, absolute(1e-9));
  }
  return score;
}

function scoreToe(): Score {
  const score = new Score("toe as a length (G12, G13)", SOURCE);
  score.compare("toe length, mm", computeToeLength(rad(0.1), 406.4), 0.709301, micro);
  score.compare("toe length, mm", computeToeLength(rad(10 / 60), 406.4), 1.182168, micro);
  const half = computeToeAngle(1, 431.8);
  score.compare("angle per wheel, deg", half === null ? null : deg(half), 0.132691, micro);
  const axle = askAlignment("alignment.axle", {
    left_toe_deg: 0.132691,
    right_toe_deg: 0.132691,
    rim_diameter_mm: 431.8,
  });
  score.compare("total_toe_mm", axle.total_toe_mm, 2, absolute(1e-5));
  score.compare("total_toe_deg", axle.total_toe_deg, 0.265382, micro);
  score.compare("thrust_angle_deg", axle.thrust_angle_deg, 0, micro);
  return score;
}

function scorePlanarCorners(): Score {
  const score = new Score("instant centre and roll centre of planar corners (G14, G15)", SOURCE);
  const lower = { inner: [350, 200], outer: [740, 180] } as const;
  const upper = { inner: [430, 500], outer: [690, 540] } as const;
  const [wishbones] = askPositions(fourBarCorner(lower, upper, [760, 300], 300), [0]);
  score.compareAll("front_view_centre_mm", wishbones?.front_view_centre_mm, [-1052.5, 271.923], milli);
  score.compare("swing arm, mm", 760 - (wishbones?.front_view_centre_mm[0] ?? Number.NaN), 1812.5, milli);
  score.compare("roll_centre_height_construction_mm", wishbones?.roll_centre_height_construction_mm, 114.0202, milli);
  const [strut] = askPositions(
    planarStrutCorner(
      { top: [590, 880], axisPoint: [620, 620] },
      { inner: [360, 210], outer: [740, 180] },
      [760, 300],
      300,
    ),
    [0],
  );
  score.compareAll("front_view_centre_mm", strut?.front_view_centre_mm, [-2951.1458, 471.4063], milli);
  score.compare("roll_centre_height_construction_mm", strut?.roll_centre_height_construction_mm, 96.5386, milli);
  return score;
}

/** All rows of the planar and steering checks. */
export function scoreGeometry(): readonly Row[] {
  return [scoreFourBars(), scoreSteering(), scoreSweeps(), scoreToe(), scorePlanarCorners()].flatMap((s) => s.rows());
}
