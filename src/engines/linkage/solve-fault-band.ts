import {
  addJets,
  crossVectors,
  divideJets,
  type Factorisation,
  factorise,
  type Jet,
  type JetVector,
  makeFactorisation,
  multiplyJets,
  scaleJet,
  solveFactorisedTransposed,
  sqrtJet,
  subtractJets,
  type Vector,
} from "#numeric";
import { type CornerLoad, type ElasticCorner, NO_LOAD } from "./elastic-corner.ts";
import { type ElasticTerm, makeTermState, type TermState } from "./elastic-term.ts";
import { shiftOf } from "./elastic-terms.ts";
import type { Balance } from "./equilibrium.ts";
import {
  JetCorner,
  jetAttitude,
  jetAttitudeRates,
  listParameters,
  makeJetPose,
  type PointDeviation,
} from "./jet-corner.ts";
import {
  addOwn,
  deriveOwn,
  type JetTerm,
  type JetTermState,
  makeOwnDerivatives,
  type OwnDerivatives,
  spreadJet,
} from "./jet-term.ts";
import { buildJetTerms } from "./jet-terms.ts";
import { designPose, type Pose } from "./pose.ts";
import { solveMoves } from "./solve-band.ts";
import { ComplianceSolver, type ElasticState } from "./solve-compliance.ts";
import type { PointCorrelations } from "./uncertain-numbers.ts";
import type { WheelAttitude } from "./wheel-figures.ts";
import { WheelJets } from "./wheel-jets.ts";

/** Uncertain rates: by "<link>.<end>", "strut_top" or "trailing_arm"; relative standard deviation. */
export interface RateDeviation {
  readonly name: string;
  readonly sd: number;
}

/** How a wheel stands in a balance: its angles, and the pose of the bodies, the one that carries it first. */
export interface WheelState {
  readonly attitude: WheelAttitude;
  readonly pose: Pose;
}

/** Toe, camber and place of one balance with their exact derivatives by every uncertain number; radians, metres. */
export interface StateBand extends WheelBand {
  readonly state: ElasticState;
}

/** The same of a wheel on any number of bodies. */
export interface WheelBand {
  readonly state: WheelState;
  readonly toe: Jet;
  readonly camber: Jet;
  /** How far forward the wheel centre stands, metres. */
  readonly forward: Jet;
}

/**
 * One elastic corner with derivatives: at each balance the residual is formed as jets with the pose held, and the
 * stiffness of that same balance carries it to the pose (implicit function theorem; no differences).
 */
export class FaultBand {
  readonly solver: ComplianceSolver;
  readonly jets: JetCorner;
  private readonly terms: readonly JetTerm[];
  private readonly free: readonly Jet[];
  private readonly rates: readonly (Jet | null)[];
  /** Buffers: the terms' plain states and their derivatives by their own parameters. */
  private readonly states: readonly TermState[];
  private readonly own: readonly OwnDerivatives[];
  private readonly wheel: WheelJets;
  private readonly design: readonly JetTermState[];

  constructor(
    corner: ElasticCorner,
    deviations: (pointNames: readonly string[]) => readonly PointDeviation[],
    rates: readonly RateDeviation[],
    correlations: (pointNames: readonly string[]) => PointCorrelations = () => null,
  ) {
    this.solver = new ComplianceSolver(corner);
    const { linkage } = this.solver.balance;
    const { pointNames } = linkage.mechanism;
    const parameters = listParameters(linkage, deviations(pointNames), rates);
    this.jets = new JetCorner(linkage, parameters, 0, correlations(pointNames));
    this.terms = buildJetTerms(this.jets, corner);
    const start = designPose(1);
    this.design = this.terms.map((t) => t.at(start, 0));
    const preload = this.jetPreload();
    this.free = this.terms.map((t, i) => {
      const value = this.spread(t, (this.design[i] as JetTermState).value, null);
      const healthy = t.healthyRate
        ? subtractJets(value, divideJets(preload[i] as Jet, this.spread(t, t.healthyRate, null)))
        : value;
      return t.kind === "link" ? addJets(healthy, this.jets.number(shiftOf(corner.faults, t.name))) : healthy;
    });
    this.states = this.terms.map(makeTermState);
    this.own = this.terms.map(makeOwnDerivatives);
    this.wheel = new WheelJets(linkage);
    this.rates = this.terms.map((t) => t.rate && this.spread(t, t.rate, null));
  }

  /** Preload forces as jets: A f = wrench at design, so f' = -A^-1 (A' f). */
  private jetPreload(): Jet[] {
    const { jets, terms, design, solver } = this;
    const carriers = terms.flatMap((t, i) => (t.carriesPreload ? [i] : []));
    const f = makeFactorisation(6);
    const rowOf = (term: number, i: number): Jet => (design[term] as JetTermState).row[i] as Jet;
    carriers.forEach((term, j) => {
      for (let i = 0; i < 6; i++) f.lu[6 * i + j] = rowOf(term, i)[0] as number;
    });
    factorise(f);
    const value = (term: number): number => solver.balance.preload[term] as number;
    const defects = [0, 1, 2, 3, 4, 5].map((i) => {
      const sum = jets.number(0);
      for (const term of carriers) addOwn(sum, terms[term] as JetTerm, rowOf(term, i), -value(term));
      return sum;
    });
    const changes = solveMoves(f, defects, jets.n);
    return terms.map((_, term) => {
      const jet = jets.number(value(term));
      const slot = carriers.indexOf(term);
      if (slot >= 0)
        changes.forEach((c, k) => {
          jet[k + 1] = c[slot] as number;
        });
      return jet;
    });
  }

  private spread(term: JetTerm, jet: Jet, moves: readonly Float64Array[] | null): Jet {
    return spreadJet(term, jet, this.jets.n, moves);
  }

  /**
   * Force of a term at a state, the pose held or (with `moves`) following; that of a rigid member is an unknown of the
   * balance.
   */
  private force(
    i: number,
    state: JetTermState,
    balance: Balance,
    moves: readonly Float64Array[] | null,
  ): { force: Jet; rate: Jet | null } {
    const { jets } = this;
    const term = this.terms[i] as JetTerm;
    const nothing = { force: jets.number(0), rate: jets.number(0) };
    const slot = this.solver.balance.playTerms.indexOf(i);
    const side = slot < 0 ? 1 : (balance.branch[slot] as number);
    if (slot >= 0 && side === 0) return nothing;
    const rate = this.rates[i] ?? null;
    if (!rate) return { force: this.unknownJet(balance.forces[i] as number, this.rigidSlot(i), moves), rate };
    const e = subtractJets(this.spread(term, state.value, moves), this.free[i] as Jet);
    e[0] = (e[0] as number) - (side * term.play) / 2;
    return { force: multiplyJets(rate, e), rate };
  }

  /** Where the force of a rigid member stands among the unknowns of the balance. */
  private rigidSlot(i: number): number {
    return 6 + this.terms.slice(0, i).filter((t) => !t.rate).length;
  }

  /** An unknown of the balance beside the pose, with its derivatives where the moves are known. */
  private unknownJet(value: number, slot: number, moves: readonly Float64Array[] | null): Jet {
    const jet = this.jets.number(value);
    moves?.forEach((m, k) => {
      jet[k + 1] = m[slot] as number;
    });
    return jet;
  }

  private movesAt(state: ElasticState, load: CornerLoad): { f: Factorisation; moves: Float64Array[] } | null {
    const { balance } = this.solver;
    if (!balance.factoriseAt(state.balance, load)) return null;
    const right: Jet[] = Array.from({ length: balance.size }, () => this.jets.number(0));
    this.terms.forEach((term, i) => {
      const at = term.at(state.pose, load.rack);
      const { force, rate } = this.force(i, at, state.balance, null);
      for (let c = 0; c < 6; c++) {
        const to = right[c] as Jet;
        const row = at.row[c] as Jet;
        for (let k = 0; k < to.length; k++) to[k] = (to[k] as number) - (force[k] as number) * (row[0] as number);
        addOwn(to, term, row, -(force[0] as number));
      }
      if (rate === null)
        right[this.rigidSlot(i)] = subtractJets(this.free[i] as Jet, this.spread(term, at.value, null));
    });
    return { f: balance.factorisation, moves: solveMoves(balance.factorisation, right, this.jets.n) };
  }

  /** Toe and camber of a balance as jets; null where its stiffness is singular. */
  bandAt(state: ElasticState, load: CornerLoad): StateBand | null {
    if (!this.solver.balance.factoriseAt(state.balance, load)) return null;
    const { place, attitude } = this.wheel.at(state.pose, STILL);
    this.deriveAll(state.pose, load.rack);
    const [toe, camber, forward] = this.carry([attitude.toe, attitude.camber, place.centre[0]], state.balance);
    return toe && camber && forward ? { state, toe, camber, forward } : null;
  }

  private deriveAll(pose: Pose, rack: number): void {
    const { terms } = this.solver.balance;
    this.terms.forEach((term, i) => {
      const state = (terms[i] as ElasticTerm).at(pose, rack, this.states[i]);
      deriveOwn(term, pose, rack, state, this.own[i] as OwnDerivatives);
    });
  }

  /**
   * From figures' derivatives by the pose to those by every uncertain number: with the residual F(pose, p) of the balance
   * K pose' = F', so one solution y of transpose(K) y = (figure by pose) gives figure' = y.F' for all of them.
   */
  private carry(figures: readonly Jet[], { forces, branch }: Balance): readonly Jet[] {
    const { balance } = this.solver;
    const { n } = this.jets;
    return figures.map((figure) => {
      const y = new Float64Array(balance.size);
      for (let c = 0; c < 6; c++) y[c] = figure[c + 1] as number;
      solveFactorisedTransposed(balance.factorisation, y);
      const out = this.jets.number(figure[0] as number);
      this.terms.forEach(({ own, rate }, i) => {
        const { row } = this.states[i] as TermState;
        const { value, row: rowBy } = this.own[i] as OwnDerivatives;
        const play = balance.playTerms.indexOf(i);
        if (play >= 0 && branch[play] === 0) return;
        const free = this.free[i] as Jet;
        // What the figure gains by a newton more in this member, and by a metre more of its measure.
        let byForce = 0;
        for (let c = 0; c < 6; c++) byForce -= (y[c] as number) * (row[c] as number);
        const k = rate ? (rate[0] as number) : 0;
        const byLength = rate ? byForce * k : -(y[this.rigidSlot(i)] as number);
        const force = forces[i] as number;
        for (let q = 1; q <= n; q++) out[q] = (out[q] as number) - byLength * (free[q] as number);
        own.forEach((parameter, p) => {
          let sum = byLength * (value[p] as number);
          if (rate) sum += byForce * (force / k) * (rate[p + 1] as number);
          for (let c = 0; c < 6; c++) sum -= (y[c] as number) * force * (rowBy[6 * p + c] as number);
          out[parameter + 1] = (out[parameter + 1] as number) + sum;
        });
      });
      return out;
    });
  }

  /**
   * How far each loose member stands from leaving its branch, positive while it holds: its force (N) where it is in
   * contact, its distance to the nearer end of the gap (m) where it is not. Empty without play or where the stiffness is
   * singular.
   */
  branchReserves(state: ElasticState, load: CornerLoad): readonly Jet[] {
    const { balance } = this.solver;
    if (balance.playTerms.length === 0) return [];
    const solved = this.movesAt(state, load);
    if (!solved) return [];
    return balance.playTerms.map((i, slot) => {
      const term = this.terms[i] as JetTerm;
      const side = state.balance.branch[slot] as number;
      const at = term.at(state.pose, load.rack);
      if (side !== 0) return scaleJet(this.force(i, at, state.balance, solved.moves).force, side);
      const e = subtractJets(this.spread(term, at.value, solved.moves), this.free[i] as Jet);
      return addJets(this.jets.number(term.play / 2), scaleJet(e, (e[0] as number) > 0 ? -1 : 1));
    });
  }

  /** Force of a link at a balance as a jet, tension positive, N; null where there is no such link or no derivative. */
  linkForce(state: ElasticState, load: CornerLoad, link: string): Jet | null {
    const i = this.terms.findIndex((term) => term.kind === "link" && term.name === link);
    const solved = i < 0 ? null : this.movesAt(state, load);
    if (!solved) return null;
    const at = (this.terms[i] as JetTerm).at(state.pose, load.rack);
    return this.force(i, at, state.balance, solved.moves).force;
  }

  /** Toe per newton of rearward force at the contact patch, exact tangent under the wheel load alone, as a jet. */
  tangentBand(): { state: ElasticState; toe: Jet } | null {
    const answer = this.solver.solve(NO_LOAD);
    if (!("state" in answer)) return null;
    const { state } = answer;
    const solved = this.movesAt(state, NO_LOAD);
    if (!solved) return null;
    const { jets } = this;
    const pose = makeJetPose(jets, state.pose, solved.moves);
    const attitude = jetAttitude(jets, pose);
    const offset = this.contactOffset(attitude.axis);
    const push: JetVector = jets.constant([-1, 0, 0]);
    const wrench: readonly Jet[] = [...push, ...crossVectors(offset, push)];
    const { size } = this.solver.balance;
    const s = this.solver.balance.fullResponseTo(wrench.map((w) => w[0] as number));
    const [v, w] = [[s[0], s[1], s[2]] as unknown as Vector, [s[3], s[4], s[5]] as unknown as Vector];
    // K s = f with K and f as jets: s' = K^-1 (f' - K' s).
    const right: Jet[] = Array.from({ length: size }, () => jets.number(0));
    wrench.forEach((one, c) => {
      right[c] = one;
    });
    this.terms.forEach((term, i) => {
      const at = term.at(state.pose, 0);
      const { force, rate } = this.force(i, at, state.balance, solved.moves);
      const moving = (jet: Jet): Jet => this.spread(term, jet, solved.moves);
      const stretch = moving(
        at.row.reduce((sum, g, c) => addJets(sum, scaleJet(g, s[c] as number)), term.jets.number(0)),
      );
      const turn = at.along(v, w);
      const slot = this.rigidSlot(i);
      const pull = rate ? multiplyJets(rate, stretch) : jets.number(s[slot] as number);
      for (let c = 0; c < 6; c++) {
        const part = addJets(multiplyJets(force, moving(turn[c] as Jet)), multiplyJets(pull, moving(at.row[c] as Jet)));
        right[c] = subtractJets(right[c] as Jet, part);
      }
      if (!rate) right[slot] = scaleJet(stretch, -1);
    });
    const heldHeight = this.solver.corner.hold === "contact-height";
    const wheelLoad = heldHeight
      ? this.unknownJet(state.wheelLoad, size - 1, solved.moves)
      : jets.number(state.wheelLoad);
    const wheel = this.wheelLoadTurning(attitude.axis, w, wheelLoad);
    for (let c = 0; c < 3; c++) right[c + 3] = addJets(right[c + 3] as Jet, wheel[c] as Jet);
    if (heldHeight) {
      const change = s[size - 1] as number;
      right[3] = addJets(right[3] as Jet, scaleJet(offset[1], change));
      right[4] = subtractJets(right[4] as Jet, scaleJet(offset[0], change));
      right[size - 1] = subtractJets(scaleJet(offset[0], w[1]), scaleJet(offset[1], w[0]));
    }
    const changes = solveMoves(solved.f, right, jets.n);
    const component = (c: number): Jet => {
      const jet = jets.number(s[c] as number);
      changes.forEach((m, k) => {
        jet[k + 1] = m[c] as number;
      });
      return jet;
    };
    const screw = {
      v: [component(0), component(1), component(2)] as JetVector,
      w: [component(3), component(4), component(5)] as JetVector,
    };
    return { state, toe: jetAttitudeRates(jets, attitude, screw).toe };
  }

  private contactOffset(n: JetVector): JetVector {
    const { jets } = this;
    const h2 = addJets(multiplyJets(n[0], n[0]), multiplyJets(n[1], n[1]));
    const h = sqrtJet(h2);
    const radius = jets.linkage.geometry.wheel.loadedRadius;
    const x = scaleJet(divideJets(multiplyJets(n[2], n[0]), h), radius);
    const y = scaleJet(divideJets(multiplyJets(n[2], n[1]), h), radius);
    return [x, y, scaleJet(h, -radius)];
  }

  /** Change of the moment of the wheel load along a rotation w: (dc) x (0, 0, F). */
  private wheelLoadTurning(n: JetVector, w: Vector, load: Jet): readonly Jet[] {
    const { jets } = this;
    const radius = jets.linkage.geometry.wheel.loadedRadius;
    const dn = crossVectors(jets.constant(w), n);
    const h2 = addJets(multiplyJets(n[0], n[0]), multiplyJets(n[1], n[1]));
    const h = sqrtJet(h2);
    const h3 = multiplyJets(h2, h);
    const side = (c: 0 | 1): Jet => {
      const first = divideJets(addJets(multiplyJets(dn[2], n[c]), multiplyJets(n[2], dn[c])), h);
      const second = divideJets(multiplyJets(multiplyJets(n[2], n[c]), multiplyJets(n[2], dn[2])), h3);
      return scaleJet(addJets(first, second), radius);
    };
    const dx = side(0);
    const dy = side(1);
    return [multiplyJets(dy, load), scaleJet(multiplyJets(dx, load), -1), jets.number(0)];
  }
}

const STILL = { v: [0, 0, 0], w: [0, 0, 0] } as const;

/** A difference of two jets over the same parameters: value and standard deviation (the same disturbance in both). */
export function differenceOf(jets: JetCorner, a: Jet, b: Jet): { value: number; sd: number } {
  const d = subtractJets(a, b);
  return { value: d[0] as number, sd: jets.deviation(d) };
}
