import {
  addVectors,
  crossVectors,
  divideJets,
  dotVectors,
  type Jet,
  type JetVector,
  lengthOf,
  scaleJet,
  scaleVector,
  subtractVectors,
  type Vector,
} from "#numeric";
import type { TermKind, TermState } from "./elastic-term.ts";
import { carryJet, JetCorner, type JetPose, makeJetPose } from "./jet-corner.ts";
import type { Pose } from "./pose.ts";

/** A measure with derivatives by its own parameters: value, gradient row, and change of the row along a fixed step. */
export interface JetTermState {
  readonly value: Jet;
  readonly row: readonly Jet[];
  readonly along: (v: Vector, w: Vector) => readonly Jet[];
}

/**
 * The jet form of one elastic term (same order and meaning as buildElasticTerms). Its jets run over the few parameters it
 * depends on and then the six parts of a step of the pose: `own` says which of the corner's parameters the first ones are.
 */
export interface JetTerm {
  readonly kind: TermKind;
  readonly name: string;
  readonly jets: JetCorner;
  readonly own: readonly number[];
  /** Null: rigid. */
  readonly rate: Jet | null;
  readonly healthyRate: Jet | null;
  readonly carriesPreload: boolean;
  readonly play: number;
  readonly at: (pose: Pose, rack: number) => JetTermState;
  /**
   * Derivatives of value and row by its own parameters with the pose held, from the plain state there; for the terms that
   * there are many of, written out. Absent: they are read from `at`.
   */
  readonly deriveOwn?: (pose: Pose, state: TermState, into: OwnDerivatives) => void;
}

/** Derivatives of a term's value and of its row (6 a parameter) by its own parameters. */
export interface OwnDerivatives {
  readonly value: Float64Array;
  readonly row: Float64Array;
}

/** An empty buffer for the derivatives of a term. */
export const makeOwnDerivatives = ({ own }: JetTerm): OwnDerivatives => ({
  value: new Float64Array(own.length),
  row: new Float64Array(6 * own.length),
});

/** Derivatives of a term by its own parameters with the pose held, whichever way it has them. */
export function deriveOwn(term: JetTerm, pose: Pose, rack: number, state: TermState, into: OwnDerivatives): void {
  if (term.own.length === 0) return;
  if (term.deriveOwn) {
    term.deriveOwn(pose, state, into);
    return;
  }
  const { value, row } = term.at(pose, rack);
  for (let i = 0; i < term.own.length; i++) {
    into.value[i] = value[i + 1] as number;
    for (let c = 0; c < 6; c++) into.row[6 * i + c] = (row[c] as Jet)[i + 1] as number;
  }
}

/** The corner's jets over what one term depends on, steps of the pose included. */
export interface LocalJets {
  readonly jets: JetCorner;
  readonly own: readonly number[];
}

/** Jets over the coordinates of these points (those that are no points of the mechanism are exact) and these rates. */
export function localJets(all: JetCorner, points: readonly Vector[], rates: readonly string[]): LocalJets {
  const wanted = all.linkage.mechanism.points.map((p) => points.some((q) => q.every((c, i) => c === p[i])));
  const own = all.parameters.flatMap((p, i) =>
    (p.kind === "coordinate" ? wanted[p.point] : rates.includes(p.name)) ? [i] : [],
  );
  const parameters = own.flatMap((i) => all.parameters[i] ?? []);
  return { jets: new JetCorner(all.linkage, parameters, STEPS), own };
}

const STEPS = 6;

/** A pose as jets whose last six parameters are its own steps. */
export function makeStepPose(jets: JetCorner, pose: Pose): JetPose {
  const moves = Array.from({ length: jets.n }, (_, k) => {
    const move = new Float64Array(STEPS);
    const step = k - (jets.n - STEPS);
    if (step >= 0) move[step] = 1;
    return move;
  });
  return makeJetPose(jets, pose, moves);
}

/**
 * A jet of a term as one over all n parameters of the corner; with `moves`, the step of the pose by each of them, the pose
 * is no longer held.
 */
export function spreadJet(term: JetTerm, jet: Jet, n: number, moves: readonly Float64Array[] | null): Jet {
  const out = new Array<number>(n + 1).fill(0);
  out[0] = jet[0] as number;
  if (moves) {
    const first = term.own.length + 1;
    for (let k = 0; k < n; k++) {
      const move = moves[k] as Float64Array;
      let sum = 0;
      for (let c = 0; c < STEPS; c++) sum += (jet[first + c] as number) * (move[c] as number);
      out[k + 1] = sum;
    }
  }
  addOwn(out, term, jet, 1);
  return out;
}

/** Adds factor times the derivatives of a term's jet by its own parameters to a jet over all. */
export function addOwn(to: Jet, term: JetTerm, jet: Jet, factor: number): void {
  const { own } = term;
  for (let i = 0; i < own.length; i++) {
    const slot = (own[i] as number) + 1;
    to[slot] = (to[slot] as number) + factor * (jet[i + 1] as number);
  }
}

/** Value, row (g, r x g) and its change along a step for a measure of one knuckle point; `bend` gives S dx. */
export function pointState(
  jets: JetCorner,
  r: JetVector,
  value: Jet,
  g: JetVector,
  bend: (dx: JetVector) => JetVector,
): JetTermState {
  return {
    value,
    row: [...g, ...crossVectors(r, g)],
    along: (v, w) => {
      const dr = crossVectors(jets.constant(w), r);
      const dg = bend(addVectors(jets.constant(v), dr));
      return [...dg, ...addVectors(crossVectors(dr, g), crossVectors(r, dg))];
    },
  };
}

/** factor times the distance of a knuckle point from a fixed one. */
export function distanceState(
  jets: JetCorner,
  pose: JetPose,
  point: JetVector,
  fixed: JetVector,
  factor: number,
): JetTermState {
  const { x, r } = carryJet(jets, pose, point);
  const d = subtractVectors(x, fixed);
  const length = lengthOf(d);
  const u: JetVector = [divideJets(d[0], length), divideJets(d[1], length), divideJets(d[2], length)];
  return pointState(jets, r, scaleJet(length, factor), scaleVector(u, jets.number(factor)), (dx) =>
    scaleVector(subtractVectors(dx, scaleVector(u, dotVectors(u, dx))), divideJets(jets.number(factor), length)),
  );
}
