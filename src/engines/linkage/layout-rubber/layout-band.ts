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

/** Derivatives of the wheel's angles at a balance by every parameter, rad per metre or per factor. */
export interface LayoutDerivatives {
  readonly parameters: readonly LayoutParameter[];
  readonly toe: Float64Array;
  readonly camber: Float64Array;
}

/** Every coordinate of every point a member uses, then every rate. */
function parametersOf({ terms, elasticity, linkage }: LayoutBalance): readonly LayoutParameter[] {
  const used = new Set(terms.flatMap(({ measure }) => pointsOfElastic(measure)));
  return [
    ...linkage.mechanism.points.flatMap((_, point) =>
      used.has(point) ? ([0, 1, 2] as const).map((axis): LayoutParameter => ({ kind: "coordinate", point, axis })) : [],
    ),
    ...elasticity.rubber.map((r): LayoutParameter => ({ kind: "rate", name: rateName(r) })),
  ];
}

/**
 * Exact derivatives of toe and camber of a balance by all its uncertain numbers, bush axes given by a direction, wheel and
 * springs' rates exact: at the pose held the residual changes by F', and one solution with the transposed stiffness for each
 * figure carries it over (implicit function theorem). Null where the stiffness is singular.
 */
export function computeLayoutDerivatives(balance: LayoutBalance, state: LayoutState): LayoutDerivatives | null {
  if (!balance.factoriseAt(state)) return null;
  const parameters = parametersOf(balance);
  const design = balance.place(designPose(balance.linkage.mechanism.origins.length), 0);
  const now = balance.place(state.pose, state.load.rack);
  const rates = balance.terms.map((term) => rateChanges(term, balance, parameters));
  const preload = preloadChanges(balance, design, parameters);
  const { loadedRadius } = balance.linkage.wheel;
  const adjoint = (figure: "toe" | "camber"): Float64Array => {
    const y = new Float64Array(balance.size);
    for (const [j, w] of (
      [
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ] as const satisfies readonly Vector[]
    ).entries())
      y[3 + j] = computeAttitudeRates(state.attitude, { v: [0, 0, 0], w }, loadedRadius)[figure];
    solveFactorisedTransposed(balance.factorisation, y);
    return y;
  };
  const [toe, camber] = [adjoint("toe"), adjoint("camber")];
  const { steps } = balance;
  const carry = (y: Float64Array): Float64Array =>
    Float64Array.from(parameters, (parameter, p) =>
      balance.terms.reduce((sum, term, i) => {
        const change = changeBy(now[i] as Placed, parameter);
        const before = changeBy(design[i] as Placed, parameter);
        const rate = rates[i]?.[p] ?? { healthy: 0, now: 0 };
        const force = state.forces[i] as number;
        const healthy = term.healthyRate;
        const free = Number.isFinite(healthy)
          ? (before?.value ?? 0) -
            (preload[p]?.[i] as number) / healthy +
            ((balance.preload[i] as number) * rate.healthy) / (healthy * healthy)
          : (before?.value ?? 0);
        const stretch = (change?.value ?? 0) - free;
        let along = 0;
        let turned = 0;
        for (let c = 0; c < steps; c++) {
          along += (y[c] as number) * ((now[i] as Placed).row[c] as number);
          turned += (y[c] as number) * (change?.row[c] ?? 0);
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
  return { parameters, toe: carry(toe), camber: carry(camber) };
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
