import { askDoor } from "#contract";
import { type Drive, type TravelPosition, TravelSweep } from "#engines/linkage";
import { degreesFromRadians } from "#quantity";
import type { SteeringAxis } from "../../../src/engines/linkage/wheel-figures.ts";
import {
  computeAttitudeRates,
  computeFrontViewCentre,
  computeSideViewCentre,
} from "../../../src/engines/linkage/wheel-figures.ts";
import { absolute, type Row, relativeAboveOne, Score, type Tolerance } from "../score.ts";
import {
  type CornerRecord,
  carInput,
  cornerGeometry,
  cornerInput,
  readReference,
  type SeatRecord,
  seatInput,
  type Triple,
} from "./corner-record.ts";

interface FoldCase {
  readonly geometry: string;
  readonly points: {
    readonly links: readonly (readonly [Triple, Triple])[];
    readonly spring: { readonly top: Triple };
    readonly damper: { readonly top: Triple; readonly point: Triple };
  };
  readonly rows: readonly (readonly (number | null)[])[];
  readonly unreachable: readonly { readonly travel: number; readonly rack: number; readonly fold_travel: number }[];
}

interface TravelFile {
  readonly columns: readonly string[];
  readonly geometries: Readonly<Record<string, CornerRecord>>;
  readonly nominal: readonly (readonly (string | number)[])[];
  readonly nominal_cp: readonly (readonly (string | number)[])[];
  readonly fold_cases?: readonly FoldCase[];
}

type Wanted = (column: string) => number;
type Answer = Readonly<Record<string, unknown>>;
interface TravelOutput {
  readonly positions: readonly Answer[];
}

const SOURCE = "linkage reference";
const exact = absolute(1e-9);
const far = relativeAboveOne(1e-9);

/** One column of the reference as the engine says it, for what the door does not say. */
interface EngineFigure {
  readonly quantity: string;
  readonly columns: readonly string[];
  readonly tolerance: Tolerance;
  readonly of: (p: TravelPosition, sweep: TravelSweep, front: boolean) => readonly number[];
}

const deg = degreesFromRadians;
const mm = (v: readonly number[]): number[] => v.map((x) => x * 1000);
const centre = (c: readonly [number, number] | null): number[] => (c === null ? [Number.NaN, Number.NaN] : mm(c));
const ratesOf = (p: TravelPosition, s: TravelSweep) =>
  computeAttitudeRates(p.attitude, p.screw, s.geometry.wheel.loadedRadius);

const engineFigures: readonly EngineFigure[] = [
  { quantity: "spin gain, deg/m", columns: ["spin_gain"], tolerance: exact, of: (p) => [deg(p.spinGain)] },
  {
    quantity: "velocity of the wheel centre per rise",
    columns: ["travel_vx", "travel_vy", "travel_vz"],
    tolerance: exact,
    of: (p) => p.screw.v,
  },
  {
    quantity: "rotation per rise, rad/mm",
    columns: ["travel_wx", "travel_wy", "travel_wz"],
    tolerance: exact,
    of: (p) => p.screw.w.map((w) => w / 1000),
  },
  {
    quantity: "rates of wheelbase, track and contact height",
    columns: ["wheelbase_rate", "track_rate", "cp_z_rate"],
    tolerance: exact,
    of: (p, s, front) => [(front ? 1 : -1) * p.screw.v[0], ...ratesOf(p, s).contact.slice(1)],
  },
  {
    quantity: "instant centres in the planes of the wheel centre, mm",
    columns: ["fvic_wc_y", "fvic_wc_z", "svic_wc_x", "svic_wc_z"],
    tolerance: far,
    of: (p) => [
      ...centre(computeFrontViewCentre(p.attitude, p.screw, p.attitude.centre)),
      ...centre(computeSideViewCentre(p.attitude, p.screw, p.attitude.centre)),
    ],
  },
  {
    quantity: "slopes under braking and drive",
    columns: ["brake_slope", "drive_slope"],
    tolerance: exact,
    of: (p) => [p.brakeSlope, p.driveSlope],
  },
  {
    quantity: "spring and damper length, mm",
    columns: ["spring_length", "damper_length"],
    tolerance: exact,
    of: (p) => mm([p.springLength ?? Number.NaN, p.damperLength ?? Number.NaN]),
  },
];

/** Everything of a steering axis, under the prefix of the reference. */
function compareAxis(score: Score, want: Wanted, prefix: string, axis: SteeringAxis | null): void {
  const held = prefix === "steerS" ? "spring length held" : "wheel-centre height held";
  const compare = (what: string, columns: readonly string[], got: readonly number[], tolerance = exact): void => {
    columns.forEach((column, i) => {
      score.compare(`steering axis, ${held}: ${what}`, axis ? got[i] : null, want(`${prefix}_${column}`), tolerance);
    });
  };
  const a = axis;
  compare("pitch, mm/rad", ["pitch"], a ? [a.pitch * 1000] : []);
  compare("direction", ["kx", "ky", "kz"], a ? a.direction : []);
  compare("caster, inclination, deg", ["caster", "kpi"], a ? [deg(a.caster), deg(a.inclination)] : []);
  compare("point at the ground, mm", ["ground_x", "ground_y"], a ? mm(a.ground.slice(0, 2)) : []);
  compare(
    "trail, scrub, at the ground and at the wheel centre, mm",
    ["trail", "scrub", "wc_trail", "wc_offset"],
    a ? mm([a.trail, a.scrub, a.centreTrail, a.centreOffset]) : [],
  );
  compare(
    "toe and camber per rack travel, deg/mm",
    ["toe_per_rack", "camber_per_rack"],
    a ? [deg(a.toePerRack) / 1000, deg(a.camberPerRack) / 1000] : [],
  );
}

/** What the engine says of one position, against the columns no door has. */
function compareEngine(score: Score, want: Wanted, sweep: TravelSweep, corner: CornerRecord, drive: Drive): void {
  const p = sweep.solve({ travel: want("travel") / 1000, rack: want("rack") / 1000 });
  const reached = "pose" in p;
  score.agree("position is reached", reached);
  if (!reached) return;
  for (const figure of engineFigures) {
    const got = figure.of(p, sweep, corner.axle === "front");
    figure.columns.forEach((column, i) => {
      score.compare(figure.quantity, got[i], want(column), figure.tolerance);
    });
  }
  compareAxis(score, want, "steer", p.steering?.heightHeld ?? null);
  compareAxis(score, want, "steerS", p.steering?.springHeld ?? null);
  if (drive === "centre-height") return;
  const { attitude } = p;
  score.compareAll("wheel centre, mm", mm(attitude.centre), [want("wc_x"), want("wc_y"), want("wc_z")], exact);
  score.compareAll("contact patch, mm", mm(attitude.contact), [want("cp_x"), want("cp_y"), want("cp_z")], exact);
  score.compareAll(
    "camber, toe, spin, deg",
    [attitude.camber, attitude.toe, attitude.spin].map(deg),
    [want("camber"), want("toe"), want("spin")],
    exact,
  );
  score.compareAll(
    "camber and toe gain, deg/m",
    [p.camberGain, p.toeGain].map(deg),
    [want("camber_gain"), want("bump_steer")],
    exact,
  );
  score.compareAll(
    "instant centres, mm",
    [...centre(p.frontViewCentre), ...centre(p.sideViewCentre)],
    [want("fvic_y"), want("fvic_z"), want("svic_x"), want("svic_z")],
    far,
  );
  score.compareAll(
    "roll centre heights, mm",
    mm([p.rollCentreMigrating, p.rollCentreConstruction]),
    [want("rc_height_cp"), want("rc_height_fvic")],
    exact,
  );
  score.compareAll(
    "spring and damper ratio",
    [p.springRatio, p.damperRatio],
    [want("spring_ratio"), want("damper_ratio")],
    exact,
  );
}

/** What the door says of one position, against every column it has. */
function compareDoor(score: Score, want: Wanted, design: Wanted, got: Answer, corner: CornerRecord): void {
  const at = (key: string): unknown => got[key];
  const triple = (key: string): readonly number[] => (Array.isArray(got[key]) ? (got[key] as number[]) : []);
  score.compareAll("wheel_centre_mm", at("wheel_centre_mm"), [want("wc_x"), want("wc_y"), want("wc_z")], exact);
  score.compareAll("contact_mm", at("contact_mm"), [want("cp_x"), want("cp_y"), want("cp_z")], exact);
  const [x, y] = triple("wheel_centre_mm");
  const moved = [
    (triple("contact_mm")[1] ?? Number.NaN) - design("cp_y"),
    (y ?? Number.NaN) - design("wc_y"),
    (corner.axle === "front" ? 1 : -1) * ((x ?? Number.NaN) - design("wc_x")),
  ];
  const movedWant = [want("half_track_change"), want("wc_lateral_change"), want("wheelbase_change")];
  score.compareAll("half track, lateral and wheelbase change, mm", moved, movedWant, exact);
  const single: readonly (readonly [string, string])[] = [
    ["camber_deg", "camber"],
    ["toe_deg", "toe"],
    ["spin_deg", "spin"],
    ["camber_gain_deg_per_m", "camber_gain"],
    ["toe_gain_deg_per_m", "bump_steer"],
    ["roll_centre_height_mm", "rc_height_cp"],
    ["roll_centre_height_construction_mm", "rc_height_fvic"],
    ["anti_dive_percent", "anti_brake_pct"],
    ["anti_squat_percent", "anti_drive_pct"],
    ["spring_ratio", "spring_ratio"],
    ["damper_ratio", "damper_ratio"],
  ];
  for (const [key, column] of single) score.compare(key, at(key), want(column), exact);
  score.compareAll("front_view_centre_mm", at("front_view_centre_mm"), [want("fvic_y"), want("fvic_z")], far);
  score.compareAll("side_view_centre_mm", at("side_view_centre_mm"), [want("svic_x"), want("svic_z")], far);
  score.compare("closure_mm", at("closure_mm"), 0, exact);
}

/** Steering figures of the door: with a spring it is held, without one the wheel-centre height is. */
function compareSteering(score: Score, want: Wanted, got: Answer, prefix: "steer" | "steerS"): void {
  const held = prefix === "steerS" ? "spring_length" : "wheel_centre_height";
  score.agree("steering_axis_held", got.steering_axis_held === held);
  const keys = [
    ["caster_deg", "caster"],
    ["inclination_deg", "kpi"],
    ["trail_mm", "trail"],
    ["scrub_mm", "scrub"],
  ] as const;
  for (const [key, column] of keys) score.compare(`${key}, ${held}`, got[key], want(`${prefix}_${column}`), exact);
}

const wantedOf =
  (columns: readonly string[], row: readonly (string | number | null)[]): Wanted =>
  (column) => {
    const value = row[columns.indexOf(column)];
    if (typeof value !== "number") throw new Error(`the reference has no ${column} here`);
    return value;
  };

function ask(corner: CornerRecord, rows: readonly Wanted[], seats: { spring?: object; damper?: object }): TravelOutput {
  const answer = askDoor("linkage.travel", {
    ...cornerInput(corner),
    ...seats,
    car: carInput(corner),
    steps: rows.map((want) => ({ wheel_travel_mm: want("travel"), rack_mm: want("rack") })),
  });
  if ("findings" in answer) throw new Error(`refused: ${JSON.stringify(answer.findings)}`);
  return answer.output as TravelOutput;
}

const seats = (corner: { spring: SeatRecord; damper: SeatRecord }) => ({
  spring: seatInput(corner.spring),
  damper: seatInput(corner.damper),
});

interface Scores {
  readonly door: Score;
  readonly engine: Score;
  readonly byContact: Score;
  readonly fold: Score;
}

/** The door and the engine against every row of one file. */
function scoreFile(file: string, { door, engine, byContact, fold }: Scores): void {
  const data = readReference<TravelFile>(`linkage/${file}`);
  for (const corner of Object.values(data.geometries)) {
    const rowsOf = (rows: TravelFile["nominal"]): Wanted[] =>
      rows.filter((row) => row[0] === corner.name).map((row) => wantedOf(data.columns, row));
    const nominal = rowsOf(data.nominal);
    const [design] = nominal.filter((want) => want("travel") === 0 && want("rack") === 0);
    if (!design) continue;
    const answer = ask(corner, nominal, seats(corner));
    const steered = corner.links.some((l) => l.rack);
    const bare = steered ? ask(corner, nominal, {}) : null;
    const thought = steered ? null : corner.steer_link;
    const sweep = new TravelSweep(cornerGeometry(corner), "centre-height", thought);
    nominal.forEach((want, i) => {
      compareDoor(door, want, design, answer.positions[i] ?? {}, corner);
      if (steered) compareSteering(door, want, answer.positions[i] ?? {}, "steerS");
      if (bare) compareSteering(door, want, bare.positions[i] ?? {}, "steer");
      compareEngine(engine, want, sweep, corner, "centre-height");
    });
    const held = new TravelSweep(cornerGeometry(corner), "contact-height", thought);
    for (const want of rowsOf(data.nominal_cp)) compareEngine(byContact, want, held, corner, "contact-height");
  }
  for (const one of data.fold_cases ?? []) scoreFold(data, one, fold);
}

/** A variant whose branch ends: positions this side of the fold, and where it folds. */
function scoreFold(data: TravelFile, fold: FoldCase, score: Score): void {
  const base = data.geometries[fold.geometry];
  if (!base) throw new Error(`no geometry ${fold.geometry}`);
  const corner: CornerRecord = {
    ...base,
    links: base.links.map((link, i) => {
      const [inner, outer] = fold.points.links[i] ?? [link.inner, link.outer];
      return { ...link, inner, outer };
    }),
    spring: { ...base.spring, ...fold.points.spring },
    damper: { ...base.damper, ...fold.points.damper } as SeatRecord,
  };
  const rows = fold.rows.map((row) => wantedOf(data.columns.slice(1), row));
  const answer = ask(corner, rows, seats(corner));
  rows.forEach((want, i) => {
    compareDoor(score, want, rows[0] as Wanted, answer.positions[i] ?? {}, corner);
  });
  const beyond = askDoor("linkage.travel", {
    ...cornerInput(corner),
    steps: fold.unreachable.map((u) => ({ wheel_travel_mm: u.travel, rack_mm: u.rack })),
  });
  const output = ("output" in beyond ? beyond.output : { positions: [] }) as TravelOutput & {
    readonly report?: { readonly binds_at_mm: readonly (number | null)[] };
  };
  fold.unreachable.forEach((u, i) => {
    const refused = (output.positions[i]?.refused ?? {}) as Answer;
    score.agree("beyond the fold is refused", refused.code === "beyond-fold");
    score.compare("fold_travel_mm", refused.fold_travel_mm, u.fold_travel, absolute(1e-4));
    score.compare("binds_at_mm, low", output.report?.binds_at_mm[0], u.fold_travel, absolute(1e-4));
  });
}

/** All rows of the rigid linkage. */
export function scoreTravel(): readonly Row[] {
  const scores: Scores = {
    door: new Score("linkage.travel", SOURCE),
    engine: new Score("rigid linkage, beyond what the door says", SOURCE),
    byContact: new Score("rigid linkage, by contact height", SOURCE),
    fold: new Score("linkage.travel, a branch that ends", SOURCE),
  };
  for (const file of ["cases.json", "cases-more.json"]) scoreFile(file, scores);
  return Object.values(scores).flatMap((score) => score.rows());
}
