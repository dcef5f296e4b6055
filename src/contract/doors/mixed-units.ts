import type { Finding } from "#numeric";
import { entriesOf, isNumber, isObject, type Loose, pointOf } from "./loose-corner.ts";

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
/** A joint nearer to the origin than this in every direction was typed in metres, where the wheel stands farther (mm). */
const NEAREST_JOINT = 5;

const finding = (path: string, got: string, needed: string, hint: string): Finding => ({
  code: "unit-mixed",
  path,
  got,
  needed,
  hint,
});

/** Six figures are enough to recognise what was typed. */
const shown = (x: number): string => String(Number(x.toPrecision(6)));

/** The middle of a list, the lower one of two. */
const middleOf = (list: readonly number[]): number => [...list].sort((a, b) => a - b)[(list.length - 1) >> 1] as number;

/** A round figure that says a joint does not give: no rate in another unit. */
const standsForRigid = (rate: number): boolean => rate >= AS_GOOD_AS_RIGID && Number.isInteger(Math.log10(rate));

type PlacedRate = readonly [path: string, value: number];

const perMetre = (path: string, value: number, needed: string): Finding =>
  finding(path, shown(value), needed, `It looks like newtons per metre: in N/mm it would be ${shown(value / 1000)}.`);

/** Whether a rate is more than any joint or member of a car has, and no round figure for one that does not give. */
const tooStiff = ([, value]: PlacedRate): boolean => value > AS_GOOD_AS_RIGID && !standsForRigid(value);

/** Rates of one kind that stand in another unit than N/mm, whatever stands beside them; where most do, all may. */
function strayRates(rates: readonly PlacedRate[]): Finding[] {
  const stiff = rates.filter(tooStiff);
  if (stiff.length === 0) return ratesApart(rates);
  const most = 2 * stiff.length >= rates.length;
  const strays = most ? rates.filter(([, value]) => value / 1000 >= SOFTEST_JOINT && !standsForRigid(value)) : stiff;
  const needed = "a rate in newtons per millimetre; no joint of a car has a million";
  return strays.map(([path, value]) => perMetre(path, value, needed));
}

/** Rates of one kind of which a few stand in another unit than the rest: which, and in which unit. */
function ratesApart(rates: readonly PlacedRate[]): Finding[] {
  if (rates.length < FEWEST) return [];
  return rates.flatMap(([path, value], own) => {
    const middle = middleOf(rates.flatMap(([, other], i) => (i === own ? [] : [other])));
    const ratio = value / middle;
    const needed = `a rate in newtons per millimetre; the middle of those beside it is ${shown(middle)}`;
    if (ratio > FAR && ratio < 1000 * NEAR && ratio > 1000 / NEAR) return [perMetre(path, value, needed)];
    if (value <= MOST_KILONEWTONS && ratio < 1 / FAR && ratio > 1 / (1000 * NEAR))
      return [
        finding(
          path,
          shown(value),
          needed,
          `It looks like kilonewtons per millimetre: in N/mm it would be ${shown(value * 1000)}.`,
        ),
      ];
    return [];
  });
}

/** Rates of rubber, of members and of the spring, and the wheel load, that stand in another unit than the rest. `at` gives the path of a key. */
export function checkMixedRates(doc: Loose, at: (key: string) => string): Finding[] {
  const ratesOf = (list: string, key: string): PlacedRate[] =>
    entriesOf(doc[list]).flatMap(([i, entry]) => {
      const value = entry[key];
      if (isNumber(value) && entry.axis === undefined && standsForRigid(value)) return [];
      return isNumber(value) && value > 0 ? [[at(`${list}[${i}].${key}`), value] as const] : [];
    });
  return [
    ...["radial_n_per_mm", "axial_n_per_mm", "voided_n_per_mm"].flatMap((key) => strayRates(ratesOf("rubber", key))),
    ...strayRates(ratesOf("members", "n_per_mm")),
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

type Place = readonly [number, number, number];

/** A place all of whose figures are so small that they can only be metres; null where it is none. */
const inMetres = (value: unknown): Place | null => {
  const p = pointOf(value);
  return !p || p.every((c) => c === 0) || p.some((c) => Math.abs(c) >= NEAREST_JOINT) ? null : p;
};

const metresFound = (path: string, p: Place, needed: string): Finding =>
  finding(
    path,
    `[${p.join(", ")}]`,
    `[x, y, z] in millimetres${needed}`,
    `It looks like metres: in millimetres it would be [${p.map((c) => shown(c * 1000)).join(", ")}].`,
  );

/** Joints typed in metres beside a wheel in millimetres, a wheel so beside joints in millimetres, or all of them so. */
export function checkMixedLengths(doc: Loose): Finding[] {
  const wheel = isObject(doc.wheel) ? doc.wheel : {};
  const centre = pointOf(wheel.centre_mm);
  const [strut, arm] = [doc.strut, doc.trailing_arm].map((part) => (isObject(part) ? part : {}));
  const joints: readonly (readonly [string, unknown])[] = [
    ...entriesOf(doc.links).flatMap(([i, link]) =>
      ["inner_mm", "outer_mm"].map((key) => [`links[${i}].${key}`, link[key]] as const),
    ),
    ["strut.top_mm", strut?.top_mm],
    ["strut.axis_point_mm", strut?.axis_point_mm],
    ["trailing_arm.bush_mm", arm?.bush_mm],
  ];
  const wheelInMetres = inMetres(wheel.centre_mm);
  const radius = wheel.loaded_radius_mm;
  const small =
    isNumber(radius) && radius > 0 && radius < NEAREST_JOINT
      ? [
          finding(
            "wheel.loaded_radius_mm",
            shown(radius),
            "the loaded radius of a wheel in millimetres",
            `It looks like metres: in millimetres it would be ${shown(radius * 1000)}.`,
          ),
        ]
      : [];
  if (wheelInMetres) return [metresFound("wheel.centre_mm", wheelInMetres, ", as all lengths here are"), ...small];
  if (!centre || Math.abs(centre[1]) < 10 * NEAREST_JOINT) return small;
  const strays = joints.flatMap(([path, value]) => {
    const p = inMetres(value);
    return p ? [metresFound(path, p, ", as the wheel centre is")] : [];
  });
  return [...strays, ...small];
}
