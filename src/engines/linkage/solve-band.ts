import {
  divideJets,
  type Factorisation,
  factorise,
  type Jet,
  type JetVector,
  makeFactorisation,
  multiplyJets,
  solveFactorised,
} from "#numeric";
import type { CornerGeometry } from "./geometry.ts";
import {
  JetCorner,
  jetAttitude,
  jetAttitudeRates,
  listParameters,
  makeJetPose,
  type PointDeviation,
} from "./jet-corner.ts";
import { addOwn, type JetTerm, type JetTermState, spreadJet } from "./jet-term.ts";
import { buildJetTerms } from "./jet-terms.ts";
import { designPose } from "./pose.ts";
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
  /** What the joints keep, in the order of the mechanism, and its value at design. */
  private readonly kept: readonly JetTerm[];
  private readonly design: readonly Jet[];

  /** `deviations` in metres, one per point of the mechanism, in its order. */
  constructor(
    readonly geometry: CornerGeometry,
    deviations: (pointNames: readonly string[]) => readonly PointDeviation[],
  ) {
    this.sweep = new TravelSweep(geometry);
    const { mechanism } = this.sweep.linkage;
    const { linkage } = this.sweep;
    this.jets = new JetCorner(linkage, listParameters(linkage, deviations(mechanism.pointNames)));
    this.kept = buildJetTerms(this.jets, {
      geometry,
      elasticity: { springRate: 0, rubber: [], members: [], wheelLoad: 0 },
      hold: "wheel-load",
      faults: [],
    }).filter(({ kind }) => kind !== "spring");
    const start = designPose(1);
    this.design = this.kept.map((term) => term.at(start, 0).value);
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
    const states = this.kept.map((term) => term.at(position.pose, 0));
    const errors = this.kept.map((term, i) => {
      const error = jets.number(0);
      addOwn(error, term, this.design[i] as Jet, 1);
      addOwn(error, term, (states[i] as JetTermState).value, -1);
      return error;
    });
    const moves = solveMoves(f, errors, jets.n);
    const pose = makeJetPose(jets, position.pose, moves);
    const screw = this.jetScrew(f, states, moves, position.screw);
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
    states: readonly JetTermState[],
    moves: readonly Float64Array[],
    screw: { v: readonly [number, number, number]; w: readonly [number, number, number] },
  ) {
    const { jets } = this;
    const x = [...screw.v, ...screw.w];
    const defects = this.kept.map((term, i) => {
      const sum = term.jets.number(0);
      (states[i] as JetTermState).row.forEach((g, c) => {
        for (let k = 0; k < sum.length; k++) sum[k] = (sum[k] as number) - (g[k] as number) * (x[c] as number);
      });
      return spreadJet(term, sum, jets.n, moves);
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
