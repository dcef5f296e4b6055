import { askDoor } from "#contract";
import { type ComplianceSolver, type CornerLoad, carryPoint, type ElasticState } from "#engines/linkage";
import { add, cross, dot, rotate, scale, subtract, unitVector, type Vector } from "#numeric";
import { degreesFromRadians } from "#quantity";
import { computeAttitudeRates } from "../../../src/engines/linkage/wheel-figures.ts";
import { contactWithChange } from "../../../src/engines/linkage/wheel-forces.ts";
import { absolute, type Row, Score } from "../score.ts";
import { type CornerRecord, readReference } from "./corner-record.ts";
import {
  type ComplianceCase,
  type ComplianceFile,
  complianceInput,
  engineLoad,
  loadInput,
  makeSolver,
  type StateRecord,
} from "./elastic-record.ts";

const SOURCE = "linkage reference";
const angle = absolute(1e-9);
const length = absolute(1e-7);
const force = absolute(1e-5);
const tangent = absolute(1e-8);

interface DoorState {
  readonly toe_deg: number;
  readonly camber_deg: number;
  readonly spin_deg: number;
  readonly wheel_centre_change_mm: readonly number[];
  readonly contact_change_mm: readonly number[];
  readonly spring_force_n: number;
  readonly wheel_load_n: number;
  readonly link_force_n: Readonly<Record<string, number>>;
  readonly mount_force_n?: Readonly<Record<string, readonly number[]>>;
  readonly stable: boolean;
  readonly others: readonly DoorState[];
}
interface DoorRate {
  readonly toe_deg: number;
  readonly camber_deg: number;
  readonly caster_deg: number;
  readonly wheel_centre_mm: readonly number[];
  readonly contact_mm: readonly number[];
}
interface DoorOutput {
  readonly states: readonly DoorState[];
  readonly per_kn: Readonly<Record<"lateral" | "braking" | "drive" | "aligning_per_100_nm", DoorRate>>;
}

const number = (record: Readonly<Record<string, unknown>>, key: string): number => {
  const value = record[key];
  if (typeof value !== "number") throw new Error(`the reference has no ${key} here`);
  return value;
};
const vector = (record: Readonly<Record<string, unknown>>, prefix: string, suffixes = ["x", "y", "z"]): number[] =>
  suffixes.map((s) => number(record, `${prefix}${s}`));

/** One state of the door against one of the reference. */
function compareState(score: Score, got: DoorState | undefined, want: StateRecord, corner: CornerRecord): void {
  score.compare("toe_deg", got?.toe_deg, number(want, "toe"), angle);
  score.compare("camber_deg", got?.camber_deg, number(want, "camber"), angle);
  score.compare("spin_deg", got?.spin_deg, number(want, "spin"), angle);
  score.compareAll("wheel_centre_change_mm", got?.wheel_centre_change_mm, vector(want, "wc_d"), length);
  score.compareAll("contact_change_mm", got?.contact_change_mm, vector(want, "cp_d"), length);
  score.compare("spring_force_n", got?.spring_force_n, number(want, "spring_force"), force);
  score.compare("wheel_load_n", got?.wheel_load_n, number(want, "wheel_load"), force);
  for (const { name } of corner.links)
    score.compare("link_force_n", got?.link_force_n[name], number(want, `force_${name}`), force);
  for (const mount of ["strut_top", "trailing_arm"])
    if (want[`force_${mount}_x`] !== undefined)
      score.compareAll("mount_force_n", got?.mount_force_n?.[mount], vector(want, `force_${mount}_`), force);
  score.agree("stable", got?.stable === want.stable);
}

/** The states named second and later: each of the reference against the nearest of the door. */
function compareOthers(score: Score, got: DoorState | undefined, want: readonly StateRecord[], corner: CornerRecord) {
  score.agree("number of balances", (got?.others.length ?? -1) === want.length - 1);
  for (const other of want.slice(1)) {
    const off = (s: DoorState): number => Math.abs(s.toe_deg - number(other, "toe"));
    const nearest = [...(got?.others ?? [])].sort((a, b) => off(a) - off(b))[0];
    compareState(score, nearest, other, corner);
  }
}

const doorLoads = [
  ["fy", "lateral", 1],
  ["brake_fx", "braking", -1],
  ["drive_fx", "drive", 1],
  ["mz", "aligning_per_100_nm", 1],
] as const;

function compareDoorTangents(score: Score, per: DoorOutput["per_kn"], want: ComplianceCase["tangent_at_static"]): void {
  for (const [load, key, sign] of doorLoads) {
    const w = want[load] ?? {};
    const got = per[key];
    const turned = (key: keyof DoorRate): unknown => [got[key]].flat().map((x) => sign * x);
    score.compareAll(
      "per_kn, angles in deg",
      ["toe_deg", "camber_deg", "caster_deg"].flatMap((k) => turned(k as keyof DoorRate)),
      [number(w, "toe"), number(w, "camber"), number(w, "caster")],
      tangent,
    );
    score.compareAll("per_kn, wheel_centre_mm", turned("wheel_centre_mm"), vector(w, "wc_d"), tangent);
    score.compareAll("per_kn, contact_mm", turned("contact_mm"), vector(w, "cp_d"), tangent);
  }
}

/** (state at +1 kN less state at -1 kN)/2, from the states of the door. */
function compareSecants(score: Score, states: ReadonlyMap<string, DoorState>, want: ComplianceCase["secant"]): void {
  const ends = {
    fy: ["fy+1000", "fy-1000"],
    brake_fx: ["brake+1000", "brake-1000"],
    drive_fx: ["drive+1000", "drive-1000"],
    mz: ["mz+100Nm", "mz-100Nm"],
  } as const;
  for (const [load, [plus, minus]] of Object.entries(ends)) {
    const w = want[load];
    const a = states.get(plus);
    const b = states.get(minus);
    if (!w || !a || !b) continue;
    const half = (of: (s: DoorState) => readonly number[]): number[] =>
      of(a).map((x, i) => (x - (of(b)[i] as number)) / 2);
    score.compareAll(
      "secant per kN, angles in deg",
      half((s) => [s.toe_deg, s.camber_deg, -s.spin_deg]),
      [number(w, "toe"), number(w, "camber"), number(w, "caster")],
      angle,
    );
    score.compareAll(
      "secant per kN, lengths in mm",
      half((s) => [...s.wheel_centre_change_mm, ...s.contact_change_mm]),
      [...vector(w, "wc_d"), ...vector(w, "cp_d")],
      length,
    );
  }
}

/** Shifts at the mounts, in the directions of the reference. */
function compareMounts(score: Score, state: ElasticState, want: StateRecord, solver: ComplianceSolver): void {
  const { geometry } = solver.corner;
  const { centre } = geometry.wheel;
  const t: Vector = [state.pose.t[0] as number, state.pose.t[1] as number, state.pose.t[2] as number];
  const carried = (p: Vector): Vector => carryPoint(centre, t, state.pose.r, p);
  if (geometry.trailingArm) {
    const shift = subtract(carried(geometry.trailingArm.bush), geometry.trailingArm.bush);
    score.compareAll("shift of the trailing-arm bush, mm", scale(shift, 1000), vector(want, "trailing_arm_d"), length);
  }
  if (geometry.strut) {
    const a = unitVector(subtract(geometry.strut.top, geometry.strut.axisPoint));
    const e1 = unitVector(cross(a, [1, 0, 0]));
    const c = subtract(geometry.strut.top, carried(geometry.strut.axisPoint));
    const got = [e1, cross(a, e1)].map((e) => 1000 * dot(rotate(state.pose.r, e), c));
    score.compareAll("shift of the strut top, mm", got, vector(want, "strut_top_d", ["1", "2"]), length);
  }
}

/** Tangents at the height of the case, also of the knuckle-fixed point at the patch. */
function compareEngineTangents(score: Score, solver: ComplianceSolver, at: CornerLoad, one: ComplianceCase): void {
  const answer = solver.solve(at);
  if (!("state" in answer) || !solver.balance.factoriseAt(answer.state.balance, at)) {
    score.agree("balance found", false);
    return;
  }
  const { state } = answer;
  const { offset } = contactWithChange(solver.balance.linkage, state.pose);
  const wrenches: Readonly<Record<string, readonly number[]>> = {
    fy: [0, 1000, 0, ...cross(offset, [0, 1000, 0])],
    brake_fx: [1000, 0, 0, ...cross(offset, [1000, 0, 0])],
    drive_fx: [1000, 0, 0, 0, 0, 0],
    mz: [0, 0, 0, 0, 0, 100],
  };
  for (const [load, want] of Object.entries(one.tangent_at_static)) {
    const screw = solver.balance.responseTo(wrenches[load] ?? []);
    const rates = computeAttitudeRates(state.attitude, screw, solver.corner.geometry.wheel.loadedRadius);
    const body = scale(add(screw.v, cross(screw.w, offset)), 1000);
    score.compareAll(
      "tangent at the height of the case, angles in deg",
      [rates.toe, rates.camber, -rates.spin].map(degreesFromRadians),
      [number(want, "toe"), number(want, "camber"), number(want, "caster")],
      tangent,
    );
    score.compareAll(
      "tangent at the height of the case, lengths in mm",
      [...scale(screw.v, 1000), ...scale(rates.contact, 1000)],
      [...vector(want, "wc_d"), ...vector(want, "cp_d")],
      tangent,
    );
    score.compareAll(
      "tangent of the knuckle point at the patch, mm",
      body.slice(0, 2),
      vector(want, "cpbody_d", ["x", "y"]),
      tangent,
    );
  }
}

function compareEngine(score: Score, file: ComplianceFile, one: ComplianceCase, solver: ComplianceSolver): void {
  const rateOf = (name: string): number[] =>
    solver.balance.terms.filter((t) => t.name === name).map((t) => t.rate / 1000);
  for (const [link, want] of Object.entries(one.link_stiffness))
    score.compare("rate of a link, N/mm", rateOf(link)[0], want, absolute(1e-8));
  for (const [mount, want] of Object.entries(one.mount_stiffness ?? {})) {
    const wanted = mount === "strut_top" ? [want.radial, want.radial] : [want.radial, want.radial, want.axial ?? 0];
    score.compareAll("rate of a mount, N/mm", rateOf(mount), wanted, absolute(1e-8));
  }
  for (const [name, wanted] of Object.entries(one.states)) {
    const answer = solver.solve(engineLoad(file.loads[name] ?? {}, one.contact_rise));
    if (!("state" in answer)) {
      score.agree("balance found", false);
      continue;
    }
    score.agree("balance found", true);
    const [want] = wanted;
    if (!want) continue;
    if (want.branch !== null) score.agree("side of the play", answer.state.branch[0] === want.branch);
    compareMounts(score, answer.state, want, solver);
  }
  compareEngineTangents(score, solver, engineLoad({}, one.contact_rise), one);
}

/** All rows of the linkage with rubber. */
export function scoreCompliance(): readonly Row[] {
  const door = new Score("linkage.compliance", SOURCE);
  const engine = new Score("linkage with rubber, beyond what the door says", SOURCE);
  for (const name of ["compliance-cases.json", "compliance-more.json"]) {
    const file = readReference<ComplianceFile>(`linkage/${name}`);
    for (const one of file.cases) {
      const corner = file.geometries[one.geometry];
      const elastic = file.elastic[one.geometry];
      if (!corner || !elastic) throw new Error(`no geometry ${one.geometry}`);
      const names = Object.keys(one.states);
      const answer = askDoor("linkage.compliance", {
        ...complianceInput(corner, elastic, one),
        loads: names.map((n) => loadInput(file.loads[n] ?? {}, one.contact_rise)),
      });
      if ("findings" in answer) throw new Error(`refused: ${JSON.stringify(answer.findings)}`);
      const output = answer.output as DoorOutput;
      names.forEach((n, i) => {
        const [want] = one.states[n] ?? [];
        if (!want) return;
        compareState(door, output.states[i], want, corner);
        compareOthers(door, output.states[i], one.states[n] ?? [], corner);
      });
      if (!one.contact_rise) compareDoorTangents(door, output.per_kn, one.tangent_at_static);
      compareSecants(door, new Map(names.map((n, i) => [n, output.states[i] as DoorState])), one.secant);
      compareEngine(engine, file, one, makeSolver(corner, elastic, one));
    }
  }
  return [...door.rows(), ...engine.rows()];
}
