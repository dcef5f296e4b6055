import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { differentiate } from "../../test/fuzz/differences.ts";
import {
  addJets,
  addVectors,
  atan2Jets,
  constantJet,
  crossVectors,
  divideJets,
  dotVectors,
  type Jet,
  type JetVector,
  lengthOf,
  multiplyJets,
  parameterJet,
  scaleJet,
  scaleVector,
  sqrtJet,
  subtractJets,
  subtractVectors,
} from "./jet.ts";

const runs = { seed: 5, numRuns: 200 };
const figure = fc.double({ min: 0.2, max: 3, noNaN: true });
const six = fc.tuple(figure, figure, figure, figure, figure, figure);
type Six = readonly [number, number, number, number, number, number];

/** A calculation that uses every operation, on jets; the same with no parameters gives plain values. */
function calculate(p: readonly Jet[]): Jet {
  const [a, b, c, d, e, f] = p as [Jet, Jet, Jet, Jet, Jet, Jet];
  const u: JetVector = [a, b, c];
  const v: JetVector = [d, e, multiplyJets(f, f)];
  const w = crossVectors(addVectors(u, v), scaleVector(subtractVectors(u, v), sqrtJet(b)));
  const angle = atan2Jets(subtractJets(multiplyJets(a, d), c), addJets(e, f));
  return addJets(divideJets(addJets(dotVectors(w, u), lengthOf(w)), addJets(b, f)), scaleJet(angle, 3));
}

const valueAt = (x: Six): number => calculate(x.map((v) => constantJet(v, 0)))[0] as number;

describe("jets", () => {
  it("carry derivatives that agree with differences and are not made of them", () => {
    let same = 0;
    fc.assert(
      fc.property(six, (x) => {
        const jet = calculate(x.map((v, i) => parameterJet(v, i, 6)));
        expect(jet[0]).toBe(valueAt(x));
        for (let i = 0; i < 6; i++) {
          const moved = (t: number): number => valueAt(x.map((v, j) => (i === j ? t : v)) as unknown as Six);
          const difference = differentiate(moved, x[i] as number, 0.02, 5);
          const exact = jet[i + 1] as number;
          expect(Math.abs(exact - difference)).toBeLessThan(1e-7 * Math.max(1, Math.abs(exact)));
          if (exact === difference) same++;
        }
      }),
      runs,
    );
    expect(same).toBeLessThan(60);
  });

  it("of constants have no derivatives", () => {
    expect([...constantJet(4, 3)]).toEqual([4, 0, 0, 0]);
    expect([...parameterJet(4, -1, 3)]).toEqual([4, 0, 0, 0]);
    expect([...parameterJet(4, 1, 3)]).toEqual([4, 0, 1, 0]);
  });

  it("leave what they are made of alone", () => {
    const a = parameterJet(2, 0, 2);
    multiplyJets(a, a);
    divideJets(a, a);
    expect([...a]).toEqual([2, 1, 0]);
  });

  it("obey the quotient rule: (a/b) b is a again", () => {
    fc.assert(
      fc.property(figure, figure, (x, y) => {
        const [a, b] = [parameterJet(x, 0, 2), parameterJet(y, 1, 2)];
        const back = multiplyJets(divideJets(a, b), b);
        expect(back[1]).toBeCloseTo(1, 12);
        expect(back[2]).toBeCloseTo(0, 12);
      }),
      runs,
    );
  });
});
