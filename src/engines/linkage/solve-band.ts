import {
  divideJets,
  type Factorisation,
  factorise,
  type Jet,
  makeFactorisation,
  multiplyJets,
  solveFactorised,
  solveFactorisedTransposed,
} from "#numeric";
import type { TravelPosition } from "./describe-position.ts";
import type { ElasticCorner } from "./elastic-corner.ts";
import { type ElasticTerm, makeTermState, type TermState } from "./elastic-term.ts";
import { buildElasticTerms } from "./elastic-terms.ts";
import type { CornerGeometry } from "./geometry.ts";
import { JetCorner, jetAttitudeRates, listParameters, type PointDeviation } from "./jet-corner.ts";
import { deriveOwn, type JetTerm, makeOwnDerivatives, type OwnDerivatives } from "./jet-term.ts";
import { buildJetTerms } from "./jet-terms.ts";
import { designPose, type Pose } from "./pose.ts";
import { TravelSweep } from "./solve-travel.ts";
import type { PointCorrelations } from "./uncertain-numbers.ts";
import { WheelJets } from "./wheel-jets.ts";

/** A figure with its exact derivatives by every uncertain number. */
export interface BandFigure {
  readonly jet: Jet;
  readonly value: number;
  readonly sd: number;
}

/** What the tolerances of the hard points do to the rigid linkage at one travel; SI, radians. */
export interface BandPosition {
  /** The nominal position itself, with all its figures. */
  readonly position: TravelPosition;
  readonly camberChange: BandFigure;
  readonly toeChange: BandFigure;
  readonly camberGain: BandFigure;
  readonly toeGain: BandFigure;
  readonly rollCentre: BandFigure;
}

/**
 * Bands of one corner: nominal poses by Newton, derivatives by the adjoint of the same Jacobian. A figure hangs on the pose
 * and on the velocity screw x; with e the errors of the joints at the pose held,
 *
 *   pose' = J^-1 e',   x' = -J^-1 (J' x),   J' by the points with the pose held, and by the pose
 *
 * so that one solution with the transposed J for each of the two gives the figure's derivatives by every coordinate.
 */
export class TravelBand {
  readonly jets: JetCorner;
  private readonly sweep: TravelSweep;
  /** What the joints keep, in the order of the mechanism: plain, as jets, and by its own points at design. */
  private readonly plain: readonly ElasticTerm[];
  private readonly kept: readonly JetTerm[];
  private readonly design: readonly OwnDerivatives[];
  private readonly states: readonly TermState[];
  private readonly own: readonly OwnDerivatives[];
  private readonly wheel: WheelJets;
  private readonly jacobian: Factorisation;

  /** `deviations` in metres, one per point of the mechanism, in its order; their correlations in the same order. */
  constructor(
    readonly geometry: CornerGeometry,
    deviations: (pointNames: readonly string[]) => readonly PointDeviation[],
    correlations: (pointNames: readonly string[]) => PointCorrelations = () => null,
  ) {
    this.sweep = new TravelSweep(geometry);
    const { linkage } = this.sweep;
    const { pointNames } = linkage.mechanism;
    this.jets = new JetCorner(linkage, listParameters(linkage, deviations(pointNames)), 0, correlations(pointNames));
    const rigid: ElasticCorner = {
      geometry,
      elasticity: { springRate: 0, rubber: [], members: [], wheelLoad: 0 },
      hold: "wheel-load",
      faults: [],
    };
    this.plain = buildElasticTerms(rigid).filter(({ kind }) => kind !== "spring");
    this.kept = buildJetTerms(this.jets, rigid).filter(({ kind }) => kind !== "spring");
    this.states = this.plain.map(makeTermState);
    this.own = this.kept.map(makeOwnDerivatives);
    this.design = this.kept.map(makeOwnDerivatives);
    this.deriveAll(designPose(1), this.design);
    this.wheel = new WheelJets(linkage);
    this.jacobian = makeFactorisation(6);
  }

  /** Band at a wheel-centre travel (metres, rack at rest), or where the branch ends. */
  solve(travel: number): BandPosition | { readonly foldAt: number } {
    const position = this.sweep.solve({ travel, rack: 0 });
    if ("foldAt" in position) return { foldAt: position.foldAt };
    this.deriveAll(position.pose, this.own);
    const f = this.jacobian;
    this.states.forEach(({ row }, i) => {
      f.lu.set(row, 6 * i);
    });
    f.lu.set(RISE, 30);
    factorise(f);
    const { attitude, screw } = this.wheel.at(position.pose, position.screw);
    const rates = jetAttitudeRates(this.wheel.jets, attitude, screw);
    const rollCentre = divideJets(multiplyJets(attitude.contactY, rates.contact[0]), rates.contact[1]);
    const x = [...position.screw.v, ...position.screw.w];
    const { wheel } = this.geometry;
    const change = (angle: Jet, design: number): BandFigure => {
      const jet = travel === 0 ? this.jets.number(0) : this.carry(angle, x);
      if (travel !== 0) jet[0] = (angle[0] as number) - design;
      return this.figure(jet);
    };
    return {
      position,
      camberChange: change(attitude.camber, wheel.camber),
      toeChange: change(attitude.toe, wheel.toe),
      camberGain: this.figure(this.carry(rates.camber, x)),
      toeGain: this.figure(this.carry(rates.toe, x)),
      rollCentre: this.figure(this.carry(rollCentre, x)),
    };
  }

  private deriveAll(pose: Pose, into: readonly OwnDerivatives[]): void {
    this.kept.forEach((term, i) => {
      const state = (this.plain[i] as ElasticTerm).at(pose, 0, this.states[i]);
      deriveOwn(term, pose, 0, state, into[i] as OwnDerivatives);
    });
  }

  /** From a figure's derivatives by pose and screw to those by every coordinate. */
  private carry(figure: Jet, x: readonly number[]): Jet {
    const byPose = Float64Array.from(figure.slice(1, 7));
    const byScrew = Float64Array.from(figure.slice(7, 13));
    solveFactorisedTransposed(this.jacobian, byScrew);
    // The screw follows the pose too: (J' x) by a step s is (D'x).s for each measure, D its change with a step.
    this.states.forEach(({ turning }, i) => {
      const weight = byScrew[i] as number;
      for (let c = 0; c < 6; c++) {
        let sum = 0;
        for (let k = 0; k < 6; k++) sum += (turning[6 * k + c] as number) * (x[k] as number);
        byPose[c] = (byPose[c] as number) - weight * sum;
      }
    });
    solveFactorisedTransposed(this.jacobian, byPose);
    const out = this.jets.number(figure[0] as number);
    this.kept.forEach(({ own }, i) => {
      const now = this.own[i] as OwnDerivatives;
      const before = this.design[i] as OwnDerivatives;
      own.forEach((parameter, p) => {
        let along = 0;
        for (let k = 0; k < 6; k++) along += (now.row[6 * p + k] as number) * (x[k] as number);
        const error = (before.value[p] as number) - (now.value[p] as number);
        out[parameter + 1] =
          (out[parameter + 1] as number) + (byPose[i] as number) * error - (byScrew[i] as number) * along;
      });
    });
    return out;
  }

  private figure(jet: Jet): BandFigure {
    return { jet, value: jet[0] as number, sd: this.jets.deviation(jet) };
  }
}

const RISE = [0, 0, 1, 0, 0, 0];

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
