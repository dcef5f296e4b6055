import {
  addJets,
  addVectors,
  crossVectors,
  divideJets,
  dotVectors,
  type Factorisation,
  factorise,
  type Jet,
  type JetVector,
  lengthOf,
  makeFactorisation,
  multiplyJets,
  scaleJet,
  scaleVector,
  solveFactorised,
  subtractJets,
  subtractVectors,
} from "#numeric";
import type { CornerGeometry } from "./geometry.ts";
import {
  carryJet,
  JetCorner,
  type JetPose,
  jetAttitude,
  jetAttitudeRates,
  makeJetPose,
  type PointDeviation,
  triadJets,
  turnVector,
} from "./jet-corner.ts";
import { GROUND, type Measure } from "./mechanism.ts";
import { TravelSweep } from "./solve-travel.ts";

/** A figure with its exact derivatives by every uncertain number. */
export interface BandFigure {
  readonly jet: Jet;
  readonly value: number;
  readonly sd: number;
}

/** What the tolerances of the hard points do to the rigid linkage at one travel; SI, radians. */
export interface BandPosition {
  readonly camberChange: BandFigure;
  readonly toeChange: BandFigure;
  readonly camberGain: BandFigure;
  readonly toeGain: BandFigure;
  readonly rollCentre: BandFigure;
}

/** Bands of one corner: nominal poses by Newton, derivatives by jets through the same Jacobian. */
export class TravelBand {
  readonly jets: JetCorner;
  private readonly sweep: TravelSweep;

  /** `deviations` in metres, one per point of the mechanism, in its order. */
  constructor(
    readonly geometry: CornerGeometry,
    deviations: (pointNames: readonly string[]) => readonly PointDeviation[],
  ) {
    this.sweep = new TravelSweep(geometry);
    const { mechanism } = this.sweep.linkage;
    this.jets = new JetCorner(this.sweep.linkage, deviations(mechanism.pointNames));
  }

  /** Band at a wheel-centre travel (metres, rack at rest), or where the branch ends. */
  solve(travel: number): BandPosition | { readonly foldAt: number } {
    const position = this.sweep.solve({ travel, rack: 0 });
    if ("foldAt" in position) return { foldAt: position.foldAt };
    const { jets } = this;
    const n = this.sweep.solver.size;
    const f = makeFactorisation(n);
    f.lu.set(this.sweep.solver.jacobian(position.pose, 0));
    f.lu[n * (n - 1) + 2] = 1;
    factorise(f);
    const { constraints } = this.sweep.linkage.mechanism;
    const still = makeJetPose(jets, position.pose, null);
    const errors = constraints.map((m) =>
      subtractJets(jetMeasure(jets, m, null).value, jetMeasure(jets, m, still).value),
    );
    const moves = solveMoves(f, errors, jets.n);
    const pose = makeJetPose(jets, position.pose, moves);
    const screw = this.jetScrew(f, pose, position.screw);
    const attitude = jetAttitude(jets, pose);
    const rates = jetAttitudeRates(jets, attitude, screw);
    const rollCentre = divideJets(multiplyJets(attitude.contactY, rates.contact[0]), rates.contact[1]);
    const { wheel } = this.geometry;
    const change = (angle: Jet, design: number): BandFigure => {
      const jet = angle.slice();
      jet[0] = travel === 0 ? 0 : (angle[0] as number) - design;
      if (travel === 0) jet.fill(0);
      return this.figure(jet);
    };
    return {
      camberChange: change(attitude.camber, wheel.camber),
      toeChange: change(attitude.toe, wheel.toe),
      camberGain: this.figure(rates.camber),
      toeGain: this.figure(rates.toe),
      rollCentre: this.figure(rollCentre),
    };
  }

  /** Velocity per rise of the wheel centre: J x = e with J as jets, so x' = -J^-1 (J' x). */
  private jetScrew(
    f: Factorisation,
    pose: JetPose,
    screw: { v: readonly [number, number, number]; w: readonly [number, number, number] },
  ) {
    const { jets } = this;
    const x = [...screw.v, ...screw.w];
    const defects = this.sweep.linkage.mechanism.constraints.map((m) => {
      const row = jetMeasure(jets, m, pose).row;
      const sum = row.reduce((total, g, i) => addJets(total, scaleJet(g, x[i] as number)), jets.number(0));
      return scaleJet(sum, -1);
    });
    const changes = solveMoves(f, defects, jets.n);
    const component = (i: number): Jet => {
      const jet = jets.number(x[i] as number);
      changes.forEach((c, k) => {
        jet[k + 1] = c[i] as number;
      });
      return jet;
    };
    return {
      v: [component(0), component(1), component(2)] as JetVector,
      w: [component(3), component(4), component(5)] as JetVector,
    };
  }

  private figure(jet: Jet): BandFigure {
    return { jet, value: jet[0] as number, sd: this.jets.deviation(jet) };
  }
}

/** For each parameter the step that follows its derivative of the right-hand sides (rows beyond them are 0). */
export function solveMoves(f: Factorisation, rightSides: readonly Jet[], parameters: number): Float64Array[] {
  const moves: Float64Array[] = [];
  for (let k = 1; k <= parameters; k++) {
    const b = new Float64Array(f.n);
    rightSides.forEach((jet, i) => {
      b[i] = jet[k] as number;
    });
    solveFactorised(f, b);
    moves.push(b);
  }
  return moves;
}

/** A constraint of one knuckle as jets at a pose; pose null means design. Rack at rest. */
function jetMeasure(jets: JetCorner, measure: Measure, pose: JetPose | null): { value: Jet; row: readonly Jet[] } {
  const place = (anchor: { body: number; point: number }): { x: JetVector; r: JetVector | null } => {
    const point = jets.points[anchor.point] as JetVector;
    if (anchor.body === GROUND) return { x: point, r: null };
    if (!pose) return { x: point, r: subtractVectors(point, jets.constant(jets.linkage.geometry.wheel.centre)) };
    return carryJet(jets, pose, point);
  };
  const a = place(measure.a);
  const b = place(measure.b);
  const d = subtractVectors(b.x, a.x);
  if (measure.kind === "distance") {
    const length = lengthOf(d);
    const u: JetVector = [divideJets(d[0], length), divideJets(d[1], length), divideJets(d[2], length)];
    return { value: length, row: pointRow(jets, u, a.r, b.r) };
  }
  const { direction } = measure;
  const along =
    direction.kind === "given"
      ? jets.constant(direction.vector)
      : subtractVectors(jets.points[direction.to] as JetVector, jets.points[direction.from] as JetVector);
  const design = triadJets(jets, along)[measure.which];
  if (measure.carrier === GROUND || !pose)
    return { value: dotVectors(design, d), row: pointRow(jets, design, a.r, b.r) };
  const e = turnVector(pose, design);
  const row = pointRow(jets, e, a.r, b.r);
  const turn = crossVectors(e, d);
  return { value: dotVectors(e, d), row: row.map((g, i) => (i < 3 ? g : addJets(g, turn[i - 3] as Jet))) };
}

/** Gradient of g.(x_b - x_a) by the step of the knuckle. */
function pointRow(jets: JetCorner, g: JetVector, ra: JetVector | null, rb: JetVector | null): readonly Jet[] {
  const zero = jets.constant([0, 0, 0]);
  const minus = scaleVector(g, jets.number(-1));
  const v = addVectors(rb ? g : zero, ra ? minus : zero);
  const w = addVectors(rb ? crossVectors(rb, g) : zero, ra ? crossVectors(ra, minus) : zero);
  return [...v, ...w];
}
