import {
  addJets,
  constantJet,
  constantVector,
  divideJets,
  factorise,
  type Jet,
  makeFactorisation,
  parameterJet,
  solveFactorised,
  solveFactorisedTransposed,
  subtractVectors,
  type Vector,
} from "#numeric";
import { unitJets } from "../jet-corner.ts";
import { endFlexibility } from "../jet-terms.ts";
import { designPose } from "../pose.ts";
import { computeAttitudeRates } from "../wheel-figures.ts";
import type { LayoutBalance, LayoutState } from "./layout-balance.ts";
import { type LayoutTerm, type LinkMade, rateName } from "./layout-elasticity.ts";
import type { Placed } from "./placed-measure.ts";
import type { MeasureChange } from "./posed-bodies.ts";
import { pointsOfElastic } from "./turn-measure.ts";

/** An uncertain number: a coordinate of a design point, or the common factor of the rates of one end or joint. */
export type LayoutParameter =
  | { readonly kind: "coordinate"; readonly point: number; readonly axis: 0 | 1 | 2 }
  | { readonly kind: "rate"; readonly name: string };

/** Derivatives of the wheel's angles and of its centre fore and aft at a balance by every parameter, SI. */
export interface LayoutDerivatives {
  readonly parameters: readonly LayoutParameter[];
  readonly toe: Float64Array;
  readonly camber: Float64Array;
  readonly forward: Float64Array;
}

/** Every coordinate of every point a member uses, then every rate. */
export function listLayoutParameters({ terms, elasticity, linkage }: LayoutBalance): readonly LayoutParameter[] {
  const used = new Set(terms.flatMap(({ measure }) => pointsOfElastic(measure)));
  return [
    ...linkage.mechanism.points.flatMap((_, point) =>
      used.has(point) ? ([0, 1, 2] as const).map((axis): LayoutParameter => ({ kind: "coordinate", point, axis })) : [],
    ),
    ...elasticity.rubber.map((r): LayoutParameter => ({ kind: "rate", name: rateName(r) })),
  ];
}

/** Derivatives of anything about a balance, once how it changes with each unknown is said. */
interface Deriver {
  readonly parameters: readonly LayoutParameter[];
  /** By every parameter, of a figure that changes so with the steps of all bodies and the unknown forces. */
  readonly carry: (byUnknown: Float64Array) => Float64Array;
  /** How far a member is from where it is free, changed by a parameter with the bodies held. */
  readonly stretchBy: (term: number, parameter: number) => number;
}

/**
 * Exact derivatives of a balance by all its uncertain numbers, bush axes given by a direction, wheel and
 * springs' rates exact: at the pose held the residual changes by F', and one solution with the transposed stiffness for each
 * figure carries it over (implicit function theorem). Null where the stiffness is singular.
 */
function deriverAt(balance: LayoutBalance, state: LayoutState): Deriver | null {
  if (!balance.factoriseAt(state)) return null;
  const parameters = listLayoutParameters(balance);
  const design = balance.place(designPose(balance.linkage.mechanism.origins.length), 0);
  const now = balance.place(state.pose, state.load.rack);
  const rates = balance.terms.map((term) => rateChanges(term, balance, parameters));
  const preload = preloadChanges(balance, design, parameters);
  const changes = now.map((placed) => parameters.map((parameter) => changeBy(placed, parameter)));
  const stretches = balance.terms.map((term, i) =>
    parameters.map((parameter, p) => {
      const before = changeBy(design[i] as Placed, parameter)?.value ?? 0;
      const healthy = term.healthyRate;
      const free = Number.isFinite(healthy)
        ? before -
          (preload[p]?.[i] as number) / healthy +
          ((balance.preload[i] as number) * (rates[i]?.[p]?.healthy ?? 0)) / (healthy * healthy)
        : before;
      return (changes[i]?.[p]?.value ?? 0) - free;
    }),
  );
  const stretchBy = (term: number, parameter: number): number => stretches[term]?.[parameter] as number;
  const { steps } = balance;
  const carry = (byUnknown: Float64Array): Float64Array => {
    const y = Float64Array.from(byUnknown);
    solveFactorisedTransposed(balance.factorisation, y);
    return Float64Array.from(parameters, (_, p) =>
      balance.terms.reduce((sum, term, i) => {
        const row = changes[i]?.[p]?.row;
        const rate = rates[i]?.[p] ?? { healthy: 0, now: 0 };
        const force = state.forces[i] as number;
        const stretch = stretchBy(i, p);
        let along = 0;
        let turned = 0;
        for (let c = 0; c < steps; c++) {
          along += (y[c] as number) * ((now[i] as Placed).row[c] as number);
          turned += (y[c] as number) * (row?.[c] ?? 0);
        }
        const slot = balance.unknown.indexOf(i);
        if (slot >= 0) {
          // A loose member gives by its force over its rate beside its play; one in its gap has no part (its y is nought).
          const softer = Number.isFinite(term.rate) ? (force * rate.now) / (term.rate * term.rate) : 0;
          return sum - (y[steps + slot] as number) * (stretch + softer) - force * turned;
        }
        return sum - along * (rate.now * (force / term.rate) + term.rate * stretch) - force * turned;
      }, 0),
    );
  };
  return { parameters, carry, stretchBy };
}

/**
 * Exact derivatives of toe, camber and the wheel centre's place of a balance by all its uncertain numbers; null where the
 * stiffness is singular.
 */
export function computeLayoutDerivatives(balance: LayoutBalance, state: LayoutState): LayoutDerivatives | null {
  const deriver = deriverAt(balance, state);
  if (!deriver) return null;
  const { loadedRadius } = balance.linkage.wheel;
  const angle = (figure: "toe" | "camber"): Float64Array => {
    const y = new Float64Array(balance.size);
    for (const [j, w] of AXES.entries())
      y[3 + j] = computeAttitudeRates(state.attitude, { v: [0, 0, 0], w }, loadedRadius)[figure];
    return y;
  };
  // The first body turns about the wheel centre, so its first step is that of the centre forward.
  const forward = new Float64Array(balance.size);
  forward[0] = 1;
  const { parameters, carry } = deriver;
  return { parameters, toe: carry(angle("toe")), camber: carry(angle("camber")), forward: carry(forward) };
}

const AXES: readonly Vector[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** How far a loose part is from leaving the side it stands on, with the derivatives of that by every parameter. */
export interface LayoutReserve {
  /** Its force (N) where it touches, its distance to the nearer end of its gap (m) inside it; positive while it holds. */
  readonly value: number;
  readonly by: Float64Array;
}

/** The reserve of every loose part at a balance; none without play or where the stiffness is singular. */
export function computeLayoutReserves(balance: LayoutBalance, state: LayoutState): readonly LayoutReserve[] {
  const deriver = balance.loose.length === 0 ? null : deriverAt(balance, state);
  if (!deriver) return [];
  const { parameters, carry, stretchBy } = deriver;
  const off = balance.stretches(state);
  const now = balance.place(state.pose, state.load.rack);
  return balance.loose.map(({ terms, total }, g): LayoutReserve => {
    const side = state.sides[g] as number;
    const parts = terms.map((t) => (side === 0 ? off[t] : state.forces[t]) as number);
    const [only] = parts;
    const size = Math.hypot(...parts);
    const along = parts.map((part) => (size === 0 ? 0 : part / size));
    const y = new Float64Array(balance.size);
    if (side !== 0) {
      // A link keeps the sign of its side, a joint only ever presses.
      const signs = terms.length === 1 ? [side] : along;
      terms.forEach((t, i) => {
        y[balance.steps + balance.unknown.indexOf(t)] = signs[i] as number;
      });
      return { value: terms.length === 1 ? side * (only as number) : size, by: carry(y) };
    }
    terms.forEach((t, i) => {
      const { row } = now[t] as Placed;
      for (let c = 0; c < balance.steps; c++) y[c] = (y[c] as number) + (along[i] as number) * (row[c] as number);
    });
    const moved = carry(y);
    const by = Float64Array.from(parameters, (_, p) =>
      terms.reduce((sum, t, i) => sum - (along[i] as number) * stretchBy(t, p), -(moved[p] as number)),
    );
    return { value: total / 2 - size, by };
  });
}

const changeBy = (placed: Placed, parameter: LayoutParameter): MeasureChange | null =>
  parameter.kind === "coordinate" ? placed.changeByPoint(parameter.point, parameter.axis) : null;

/** Changes of the preload forces by each parameter: A f = wheel load, so f' = -A^-1 (A' f). */
function preloadChanges(
  balance: LayoutBalance,
  design: readonly Placed[],
  parameters: readonly LayoutParameter[],
): readonly (readonly number[])[] {
  const carriers = balance.terms.flatMap((t, i) => (t.carriesPreload ? [i] : []));
  const n = carriers.length;
  const f = makeFactorisation(n);
  carriers.forEach((term, j) => {
    for (let i = 0; i < n; i++) f.lu[n * i + j] = (design[term] as Placed).row[i] as number;
  });
  factorise(f);
  return parameters.map((parameter) => {
    const b = new Float64Array(n);
    for (const term of carriers) {
      const change = changeBy(design[term] as Placed, parameter);
      if (change)
        for (let i = 0; i < n; i++)
          b[i] = (b[i] as number) - (balance.preload[term] as number) * (change.row[i] as number);
    }
    solveFactorised(f, b);
    const out = balance.terms.map(() => 0);
    carriers.forEach((term, j) => {
      out[term] = b[j] as number;
    });
    return out;
  });
}

/** Changes of a member's rate, healthy and as it is, by each parameter; none where it is rigid or exact. */
function rateChanges(
  term: LayoutTerm,
  { linkage }: LayoutBalance,
  parameters: readonly LayoutParameter[],
): readonly { readonly healthy: number; readonly now: number }[] {
  const { made, measure } = term;
  const none = { healthy: 0, now: 0 };
  if (!made || !Number.isFinite(term.rate)) return parameters.map(() => none);
  if (made.of === "rubber")
    return parameters.map((p) =>
      p.kind === "rate" && p.name === rateName(made.rubber) ? { healthy: term.healthyRate, now: term.rate } : none,
    );
  if (measure.kind !== "distance") return parameters.map(() => none);
  const { points } = linkage.mechanism;
  const ends = [measure.a.point, measure.b.point].map((i) => points[i] as Vector) as [Vector, Vector];
  const [healthy, now] = [linkRateJet(made, ends, false), linkRateJet(made, ends, true)];
  return parameters.map((p) => {
    const slots =
      p.kind === "rate"
        ? made.ends.flatMap(({ rubber }, i) => (rateName(rubber) === p.name ? [6 + i] : []))
        : [measure.a, measure.b].flatMap(({ point }, end) => (point === p.point ? [3 * end + p.axis] : []));
    const of = (jet: Jet): number => slots.reduce((sum, slot) => sum + (jet[slot + 1] as number), 0);
    return { healthy: of(healthy), now: of(now) };
  });
}

/** Rate of a link as a jet over the coordinates of both ends and the factor of each end's rates. */
function linkRateJet({ ends, member }: LinkMade, [from, to]: readonly [Vector, Vector], faulty: boolean): Jet {
  const n = 6 + ends.length;
  const jets = { number: (x: number) => constantJet(x, n), constant: (v: Vector) => constantVector(v, n) };
  const point = (p: Vector, first: number) =>
    [parameterJet(p[0], first, n), parameterJet(p[1], first + 1, n), parameterJet(p[2], first + 2, n)] as const;
  const line = unitJets(subtractVectors(point(to, 3), point(from, 0)));
  const flexibility = ends.reduce(
    (sum, { rubber, soft }, i) =>
      addJets(sum, endFlexibility(jets, line, rubber.rate, parameterJet(1, 6 + i, n), faulty ? soft : 1)),
    jets.number(member === null ? 0 : 1 / member),
  );
  return divideJets(jets.number(1), flexibility);
}
