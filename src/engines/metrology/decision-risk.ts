import { computeShares, type Estimate, type Limits } from "./normal.ts";

/** What a rule of acceptance does over many items. */
export interface DecisionRisk {
  /** Share of items that conform. */
  readonly conforming: number;
  /** Share that is accepted and does not conform (the consumer's risk). */
  readonly wronglyAccepted: number;
  /** Share that is refused and does conform (the producer's risk). */
  readonly wronglyRefused: number;
}

const POINTS = 16;

/** Nodes and weights of Gauss-Legendre quadrature on [-1, 1], by Newton on the polynomial. */
function makeQuadrature(n: number): readonly (readonly [node: number, weight: number])[] {
  return Array.from({ length: n }, (_, i) => {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let step = 0; step < 20; step++) {
      let [before, now] = [1, x];
      for (let k = 2; k <= n; k++) [before, now] = [now, ((2 * k - 1) * x * now - (k - 1) * before) / k];
      slope = (n * (x * now - before)) / (x * x - 1);
      x -= now / slope;
    }
    return [x, 2 / ((1 - x * x) * slope * slope)] as const;
  });
}

const quadrature = makeQuadrature(POINTS);

function integrate(f: (x: number) => number, breaks: readonly number[]): number {
  let total = 0;
  for (let i = 1; i < breaks.length; i++) {
    const [from, to] = [breaks[i - 1] as number, breaks[i] as number];
    const half = (to - from) / 2;
    for (const [node, weight] of quadrature) total += half * weight * f(from + half * (1 + node));
  }
  return total;
}

/** Where the integrand bends: every multiple of each spread around its centre, and the limits themselves. */
function makeBreaks(process: Estimate, u: number, tolerance: Limits, acceptance: Limits): number[] {
  const reach = Array.from({ length: 25 }, (_, i) => i - 12);
  const ends = [process.value - 12 * process.u, process.value + 12 * process.u] as const;
  const limits = [tolerance.lower, tolerance.upper, acceptance.lower, acceptance.upper].filter((x) => x !== null);
  const all = [
    ...reach.map((k) => process.value + k * process.u),
    ...limits.flatMap((x) => reach.map((k) => x + k * u)),
  ];
  return [...new Set([...all, ...limits])].filter((x) => x >= ends[0] && x <= ends[1]).sort((a, b) => a - b);
}

/**
 * Shares of items accepted and refused wrongly when a normal process (spread above nought) is measured with standard
 * uncertainty u and readings within `acceptance` are accepted; by Gauss-Legendre quadrature over the process
 * (JCGM 106 clause 9, from memory).
 */
export function computeDecisionRisk(process: Estimate, u: number, tolerance: Limits, acceptance: Limits): DecisionRisk {
  const breaks = makeBreaks(process, u, tolerance, acceptance);
  const density = (x: number): number =>
    Math.exp(-(((x - process.value) / process.u) ** 2) / 2) / (process.u * Math.sqrt(2 * Math.PI));
  const conforms = (x: number): boolean =>
    (tolerance.lower === null || x >= tolerance.lower) && (tolerance.upper === null || x <= tolerance.upper);
  const share = (counts: (x: number, accepted: number, refused: number) => number): number =>
    integrate((x) => {
      const { below, within, above } = computeShares({ value: x, u }, acceptance);
      return density(x) * counts(x, within, below + above);
    }, breaks);
  return {
    conforming: computeShares(process, tolerance).within,
    wronglyAccepted: share((x, accepted) => (conforms(x) ? 0 : accepted)),
    wronglyRefused: share((x, _accepted, refused) => (conforms(x) ? refused : 0)),
  };
}
