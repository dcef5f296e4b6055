import { describe, expect, it } from "vitest";
import { checkMixedRates } from "./mixed-units.ts";

const rubber = (...rates: number[]) => ({ rubber: rates.map((radial_n_per_mm) => ({ radial_n_per_mm })) });
const at = (key: string): string => key;

describe("rates of different units", () => {
  it("are told apart, with which one and in which unit", () => {
    const [only, ...others] = checkMixedRates(rubber(9000, 7_000_000, 680, 52_000), at);
    expect(others).toEqual([]);
    expect(only).toMatchObject({ code: "unit-mixed", path: "rubber[1].radial_n_per_mm", got: "7000000" });
    expect(only?.hint).toBe("It looks like newtons per metre: in N/mm it would be 7000.");
    const [soft] = checkMixedRates(rubber(9000, 7, 6800, 12_000), at);
    expect(soft?.hint).toBe("It looks like kilonewtons per millimetre: in N/mm it would be 7000.");
    const [spring] = checkMixedRates({ ...rubber(9000), spring: { rate_n_per_mm: 28_000 } }, at);
    expect(spring).toMatchObject({ path: "spring.rate_n_per_mm" });
    expect(spring?.hint).toMatch(/28\.$/);
  });

  it("are seen where there is nothing to hold them against, and where all are in the wrong one", () => {
    expect(checkMixedRates(rubber(9000, 7_000_000), at).map(({ path }) => path)).toEqual(["rubber[1].radial_n_per_mm"]);
    const all = checkMixedRates(rubber(9_200_000, 680_000, 14_000_000), at);
    expect(all.map(({ hint }) => /([\d.]+)\.$/.exec(hint)?.[1])).toEqual(["9200", "680", "14000"]);
    const [layout] = checkMixedRates({ ...rubber(9000), spring_n_per_mm: 70_000 }, at);
    expect(layout).toMatchObject({ code: "unit-mixed", path: "spring_n_per_mm" });
    const [load, ...others] = checkMixedRates({ ...rubber(9000), wheel_load_n: 4.2 }, at);
    expect(others).toEqual([]);
    expect(load).toMatchObject({ path: "wheel_load_n", hint: "It looks like kilonewtons: in N it would be 4200." });
  });

  it("are seen where round figures stand among them that mean a rigid joint elsewhere", () => {
    const paths = (...rates: number[]) => checkMixedRates(rubber(...rates), at).map(({ path }) => path);
    const all = checkMixedRates(rubber(9_200_000, 1_000_000, 14_000_000), at);
    expect(all.map(({ hint }) => /([\d.]+)\.$/.exec(hint)?.[1]).sort()).toEqual(["1000", "14000", "9200"]);
    expect(paths(1e6)).toEqual(["rubber[0].radial_n_per_mm"]);
    expect(paths(1e7, 1e6)).toHaveLength(2);
    // Rigid in either unit.
    expect(paths(1e9)).toEqual([]);
    expect(paths(9_200_000, 1e9, 14_000_000)).toHaveLength(2);
  });

  it("are seen where all are in kilonewtons", () => {
    const all = checkMixedRates(rubber(6, 4.5, 11), at);
    expect(all.map(({ hint }) => /([\d.]+)\.$/.exec(hint)?.[1])).toEqual(["6000", "4500", "11000"]);
    // Nearly gone, all of them: nothing of a thousand times as much would be a joint either.
    expect(checkMixedRates(rubber(1e-3, 1e-3, 1e-3), at)).toEqual([]);
  });

  it("are not seen in what a car has, nor in a joint made nearly rigid or nearly gone", () => {
    for (const rates of [
      [680, 13_800, 52_000, 6900],
      [9000, 9000, 1e9],
      [9000, 9000, 1e-3],
      // Balls that stand for rigid beside bushes, and a bush that is far softer than the rest.
      [2900, 1e6, 1e6, 1e6, 1e6],
      [8800, 1e7, 9000, 1e7, 6900],
      [86, 23_650, 24_000, 41_000],
    ])
      expect(checkMixedRates({ ...rubber(...rates), spring: { rate_n_per_mm: 60 } }, at)).toEqual([]);
  });
});
