import type { Finding } from "#numeric";
import { entriesOf, isNumber, isObject, type Loose } from "./loose-corner.ts";
import { unitFinding as finding, shownFigure as shown } from "./unit-finding.ts";

/** A rate this many times above or below the middle of the others is no rate of the same unit (invented). */
const FAR = 200;
/** What lies this near the middle once its unit is turned was typed in that unit (invented). */
const NEAR = 10;
/** A figure in kN/mm is never more than this; a rate that is more was typed in N/mm, whatever stands beside it (invented). */
const MOST_KILONEWTONS = 60;
/** Powers of ten from here on stand for a joint without rubber that does not give (N/mm). */
const AS_GOOD_AS_RIGID = 1e6;
/** Fewer rates than this have no middle to be held against. */
const FEWEST = 3;
/** No joint of a car is softer than this; where most rates are too stiff for one, what is left of the rest by a thousandth (N/mm, invented). */
const SOFTEST_JOINT = 50;
/** A wheel load below this was typed in kilonewtons (N, invented). */
const LEAST_LOAD = 50;
/** The stiffest spring of a car in N/mm, and the softest and stiffest that a figure in N/m may mean (invented). */
const STIFFEST_SPRING = 2000;
const SPRING_PER_METRE = [3000, 1_000_000] as const;

/** The middle of a list, the lower one of two. */
const middleOf = (list: readonly number[]): number => [...list].sort((a, b) => a - b)[(list.length - 1) >> 1] as number;

/** A round figure that says a joint does not give: no rate in another unit. */
const standsForRigid = (rate: number): boolean => rate >= AS_GOOD_AS_RIGID && Number.isInteger(Math.log10(rate));

type PlacedRate = readonly [path: string, value: number];

const PER_MM = "a rate in newtons per millimetre";

const perMetre = (path: string, value: number, needed: string): Finding =>
  finding(path, shown(value), needed, `It looks like newtons per metre: in N/mm it would be ${shown(value / 1000)}.`);

const kilonewtons = (path: string, value: number, needed: string): Finding =>
  finding(
    path,
    shown(value),
    needed,
    `It looks like kilonewtons per millimetre: in N/mm it would be ${shown(value * 1000)}.`,
  );

/** Whether a rate is more than any joint or member of a car has, and no round figure for one that does not give. */
const tooStiff = ([, value]: PlacedRate): boolean => value > AS_GOOD_AS_RIGID && !standsForRigid(value);

/** Whether a rate may have been typed in N/m: neither too soft for a joint then, nor rigid in either unit. */
const mayBePerMetre = ([, value]: PlacedRate): boolean =>
  value / 1000 >= SOFTEST_JOINT && value / 1000 < AS_GOOD_AS_RIGID;

/**
 * Rates of one kind that stand in another unit than N/mm, whatever stands beside them; where most do, all may, the round
 * ones that would stand for rigid joints too.
 */
function strayRates(rates: readonly PlacedRate[], rigid: readonly PlacedRate[]): Finding[] {
  const stiff = rates.filter(tooStiff);
  if (stiff.length === 0) return ratesApart(rates);
  const strays = 2 * stiff.length >= rates.length ? [...rates, ...rigid].filter(mayBePerMetre) : stiff;
  return strays.map(([path, value]) => perMetre(path, value, `${PER_MM}; no joint of a car has a million`));
}

/** Radial rates of which not one is a joint's of a car: all round figures of a rigid one, or all as soft as figures in kN/mm. */
function allAstray(rates: readonly PlacedRate[], rigid: readonly PlacedRate[]): Finding[] {
  if (rates.length === 0)
    return rigid
      .filter(mayBePerMetre)
      .map(([path, value]) => perMetre(path, value, `${PER_MM}; a rigid joint is left out, or has 1e9`));
  const soft = ([, value]: PlacedRate): boolean => value < SOFTEST_JOINT && value * 1000 >= SOFTEST_JOINT;
  if (rates.length < FEWEST || !rates.every(soft)) return [];
  return rates.map(([path, value]) =>
    kilonewtons(path, value, `${PER_MM}; no joint of a car has less than ${SOFTEST_JOINT}`),
  );
}

/** Rates of one kind of which a few stand in another unit than the rest: which, and in which unit. */
function ratesApart(rates: readonly PlacedRate[]): Finding[] {
  if (rates.length < FEWEST) return [];
  return rates.flatMap(([path, value], own) => {
    const middle = middleOf(rates.flatMap(([, other], i) => (i === own ? [] : [other])));
    const ratio = value / middle;
    const needed = `${PER_MM}; the middle of those beside it is ${shown(middle)}`;
    if (ratio > FAR && ratio < 1000 * NEAR && ratio > 1000 / NEAR) return [perMetre(path, value, needed)];
    if (value <= MOST_KILONEWTONS && ratio < 1 / FAR && ratio > 1 / (1000 * NEAR))
      return [kilonewtons(path, value, needed)];
    return [];
  });
}

/** Rates of rubber, of members and of the spring, and the wheel load, that stand in another unit than the rest. `at` gives the path of a key. */
export function checkMixedRates(doc: Loose, at: (key: string) => string): Finding[] {
  const isRigid = (entry: Loose, value: number): boolean => entry.axis === undefined && standsForRigid(value);
  const ratesOf = (list: string, key: string, rigid: boolean): PlacedRate[] =>
    entriesOf(doc[list]).flatMap(([i, entry]) => {
      const value = entry[key];
      if (!isNumber(value) || value <= 0 || isRigid(entry, value) !== rigid) return [];
      return [[at(`${list}[${i}].${key}`), value] as const];
    });
  const strays = (list: string, key: string): Finding[] =>
    strayRates(ratesOf(list, key, false), ratesOf(list, key, true));
  const radial = allAstray(ratesOf("rubber", "radial_n_per_mm", false), ratesOf("rubber", "radial_n_per_mm", true));
  return [
    ...radial,
    ...(radial.length > 0 ? [] : strays("rubber", "radial_n_per_mm")),
    ...["axial_n_per_mm", "voided_n_per_mm"].flatMap((key) => strays("rubber", key)),
    ...strays("members", "n_per_mm"),
    ...checkSpringUnit(isObject(doc.spring) ? doc.spring.rate_n_per_mm : undefined, at("spring.rate_n_per_mm")),
    ...checkSpringUnit(doc.spring_n_per_mm, at("spring_n_per_mm")),
    ...checkLoadUnit(doc.wheel_load_n, at("wheel_load_n")),
  ];
}

function checkSpringUnit(rate: unknown, path: string): Finding[] {
  const [softest, stiffest] = SPRING_PER_METRE;
  if (!isNumber(rate) || rate <= STIFFEST_SPRING || rate < softest || rate > stiffest) return [];
  return [perMetre(path, rate, "a rate in newtons per millimetre; no spring of a car has 2000")];
}

function checkLoadUnit(load: unknown, path: string): Finding[] {
  if (!isNumber(load) || load <= 0 || load >= LEAST_LOAD) return [];
  const hint = `It looks like kilonewtons: in N it would be ${shown(load * 1000)}.`;
  return [finding(path, shown(load), "the load of a wheel in newtons", hint)];
}
