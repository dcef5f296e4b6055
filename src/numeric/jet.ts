/**
 * Forward derivatives: a jet is a list whose entry 0 is a value and whose further entries are its exact first
 * derivatives by the N parameters of the calculation. All jets of one calculation have the same length.
 * (Standard forward-mode automatic differentiation; derivatives are exact to rounding, no differences are formed.)
 * Plain arrays, not typed ones: a fresh one per operation costs a fifth (docs/timing.md).
 */
export type Jet = number[];
/** Three jets: a point or a direction. */
export type JetVector = readonly [Jet, Jet, Jet];

const at = (a: Jet, i: number): number => a[i] as number;

/** A jet that does not depend on any of the n parameters. */
export function constantJet(value: number, n: number): Jet {
  const out = new Array<number>(n + 1).fill(0);
  out[0] = value;
  return out;
}

/** The parameter with number `index` (0-based) itself; index -1 makes a constant. */
export function parameterJet(value: number, index: number, n: number): Jet {
  const out = constantJet(value, n);
  if (index >= 0) out[index + 1] = 1;
  return out;
}

export function addJets(a: Jet, b: Jet): Jet {
  const out = new Array<number>(a.length);
  for (let i = 0; i < a.length; i++) out[i] = at(a, i) + at(b, i);
  return out;
}

export function subtractJets(a: Jet, b: Jet): Jet {
  const out = new Array<number>(a.length);
  for (let i = 0; i < a.length; i++) out[i] = at(a, i) - at(b, i);
  return out;
}

export function scaleJet(a: Jet, factor: number): Jet {
  const out = new Array<number>(a.length);
  for (let i = 0; i < a.length; i++) out[i] = at(a, i) * factor;
  return out;
}

export function multiplyJets(a: Jet, b: Jet): Jet {
  const out = new Array<number>(a.length);
  const a0 = at(a, 0);
  const b0 = at(b, 0);
  out[0] = a0 * b0;
  for (let i = 1; i < a.length; i++) out[i] = at(a, i) * b0 + a0 * at(b, i);
  return out;
}

export function divideJets(a: Jet, b: Jet): Jet {
  const out = new Array<number>(a.length);
  const b0 = at(b, 0);
  const q = at(a, 0) / b0;
  out[0] = q;
  for (let i = 1; i < a.length; i++) out[i] = (at(a, i) - q * at(b, i)) / b0;
  return out;
}

/** f(a) for a function with value `value` and slope `slope` at a's value. */
export function composeJet(a: Jet, value: number, slope: number): Jet {
  const out = new Array<number>(a.length);
  out[0] = value;
  for (let i = 1; i < a.length; i++) out[i] = slope * at(a, i);
  return out;
}

export function sqrtJet(a: Jet): Jet {
  const r = Math.sqrt(at(a, 0));
  return composeJet(a, r, 0.5 / r);
}

/** Four-quadrant arc tangent of y over x, radians. */
export function atan2Jets(y: Jet, x: Jet): Jet {
  const y0 = at(y, 0);
  const x0 = at(x, 0);
  const r2 = x0 * x0 + y0 * y0;
  const out = new Array<number>(y.length);
  out[0] = Math.atan2(y0, x0);
  for (let i = 1; i < y.length; i++) out[i] = (x0 * at(y, i) - y0 * at(x, i)) / r2;
  return out;
}

export const addVectors = (a: JetVector, b: JetVector): JetVector => [
  addJets(a[0], b[0]),
  addJets(a[1], b[1]),
  addJets(a[2], b[2]),
];
export const subtractVectors = (a: JetVector, b: JetVector): JetVector => [
  subtractJets(a[0], b[0]),
  subtractJets(a[1], b[1]),
  subtractJets(a[2], b[2]),
];
export const scaleVector = (a: JetVector, s: Jet): JetVector => [
  multiplyJets(a[0], s),
  multiplyJets(a[1], s),
  multiplyJets(a[2], s),
];

export function dotVectors(a: JetVector, b: JetVector): Jet {
  const [ax, ay, az] = a;
  const [bx, by, bz] = b;
  const n = ax.length;
  const out = new Array<number>(n);
  const [a0, a1, a2] = [at(ax, 0), at(ay, 0), at(az, 0)];
  const [b0, b1, b2] = [at(bx, 0), at(by, 0), at(bz, 0)];
  out[0] = a0 * b0 + a1 * b1 + a2 * b2;
  for (let i = 1; i < n; i++)
    out[i] = at(ax, i) * b0 + a0 * at(bx, i) + at(ay, i) * b1 + a1 * at(by, i) + at(az, i) * b2 + a2 * at(bz, i);
  return out;
}

export function crossVectors(a: JetVector, b: JetVector): JetVector {
  const minor = (i: 0 | 1 | 2, j: 0 | 1 | 2): Jet => {
    const n = a[0].length;
    const out = new Array<number>(n);
    const ai = a[i];
    const aj = a[j];
    const bi = b[i];
    const bj = b[j];
    const ai0 = at(ai, 0);
    const aj0 = at(aj, 0);
    const bi0 = at(bi, 0);
    const bj0 = at(bj, 0);
    out[0] = ai0 * bj0 - aj0 * bi0;
    for (let k = 1; k < n; k++) out[k] = at(ai, k) * bj0 + ai0 * at(bj, k) - at(aj, k) * bi0 - aj0 * at(bi, k);
    return out;
  };
  return [minor(1, 2), minor(2, 0), minor(0, 1)];
}

/** Length of a vector of jets. */
export const lengthOf = (a: JetVector): Jet => sqrtJet(dotVectors(a, a));

/** A constant vector with no dependence on the n parameters. */
export const constantVector = (a: readonly [number, number, number], n: number): JetVector => [
  constantJet(a[0], n),
  constantJet(a[1], n),
  constantJet(a[2], n),
];
