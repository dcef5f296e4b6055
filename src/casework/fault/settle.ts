import type { UncertainNumbers } from "#engines/linkage";
import { computeNormalProbability, type Jet } from "#numeric";
import type { CornerAssembly } from "#vehicle";
import { partOrPointWords } from "../bodies/bodies-words.ts";

/** A sign counts as known from this chance on. */
export const SIGN_SURE = 0.975;

/** What a reading leaves as standard deviation: heights over a level plane 1 mm, by tape 5 mm, a rate on the bench 10 %. */
const READ_HEIGHT = 0.001;
const READ_TAPE = 0.005;
const READ_RATE = 0.1;

/** Ways a reading is taken, in the order they are said. */
const WAYS = [
  { axis: 2, words: "heights over a level plane (±2 mm)" },
  { axis: 0, words: "places fore and aft by tape (±10 mm)" },
  { axis: 1, words: "places across the car by tape (±10 mm)" },
  { axis: null, words: "rates on the bench (±20 %)" },
] as const;

/** Said where no reading would do. */
export const NEVER_SETTLED =
  "Even with every joint measured its sign would stay open: the figure lies too near to nought.";

/** Chance that a figure has the sign of its value. */
export function signProbability(value: number, sd: number): number {
  if (sd === 0) return value === 0 ? 0.5 : 1;
  return computeNormalProbability(Math.abs(value) / sd);
}

export const isSignSure = (value: number, sd: number): boolean => signProbability(value, sd) >= SIGN_SURE;

/** One reading that would narrow a figure: which way it is taken, of which place. */
export interface Reading {
  readonly axis: 0 | 1 | 2 | null;
  readonly place: string;
}

/**
 * The readings after which the sign of a figure would be sure: the numbers with the largest share of its variance, taken
 * one after another, every one of them said; or what can be said where even all would not do. Rates named in `without`
 * cannot turn the sign and are not asked for.
 */
export function findSettlingReading(
  jets: UncertainNumbers,
  jet: Jet,
  assembly: CornerAssembly,
  without: readonly string[] = [],
): string {
  return settleSign(jet[0] as number, [{ jets, jet, assembly, of: "" }], without);
}

/** What one car adds to the doubt about a value: its part of it with the derivatives, and how its places are told apart. */
export interface DoubtOfCar {
  readonly jets: UncertainNumbers;
  readonly jet: Jet;
  readonly assembly: CornerAssembly;
  /** Said behind a place: " of the Ouzel saloon"; "" where there is one car only. */
  readonly of: string;
}

/** The same of a value that several cars make together, their uncertain numbers taken as independent of each other's. */
export function settleSign(value: number, cars: readonly DoubtOfCar[], without: readonly string[] = []): string {
  const left = cars.map(({ jets }) =>
    jets.parameters.map((p) => (p.kind === "rate" && without.includes(p.name) ? 0 : p.sd)),
  );
  const spread = (): number => Math.hypot(...cars.map(({ jets, jet }, car) => jets.spread(jet, left[car] ?? [])));
  const order = cars
    .flatMap(({ jets, jet }, car) => {
      const variance = jets.deviation(jet) ** 2;
      return jets.shares(jet).map((share, i) => ({ car, i, weight: share * variance }));
    })
    .sort((a, b) => b.weight - a.weight);
  const readings: Reading[] = [];
  for (const { car, i, weight } of order) {
    if (weight <= 0 || isSignSure(value, spread())) break;
    const [doubt, sd] = [cars[car], left[car]];
    if (!doubt || !sd) break;
    const { after, reading } = readingOf(doubt.jets, i, doubt.assembly);
    if (after >= (sd[i] as number)) continue;
    sd[i] = after;
    readings.push({ ...reading, place: `${reading.place}${doubt.of}` });
  }
  if (!isSignSure(value, spread())) return NEVER_SETTLED;
  return readings.length === 0 ? "" : sayReadings(readings);
}

/** The reading that would find one uncertain number anew, and the standard deviation it would leave, SI or a share. */
export function readingOf(
  jets: UncertainNumbers,
  parameter: number,
  assembly: CornerAssembly,
): { readonly after: number; readonly reading: Reading } {
  const p = jets.parameters[parameter];
  if (p === undefined) throw new RangeError(`no uncertain number ${parameter}`);
  const axis = p.kind === "rate" ? null : p.axis;
  const after = axis === null ? READ_RATE : axis === 2 ? READ_HEIGHT : READ_TAPE;
  const name = p.kind === "coordinate" ? (jets.pointNames[p.point] ?? "") : p.name;
  return { after, reading: { axis, place: placeWords(assembly, name) } };
}

/** "To settle it takes 3 readings: heights over a level plane (±2 mm): the toe link's inner joint, …; rates …". */
function sayReadings(readings: readonly Reading[]): string {
  return `To settle it takes ${countReadings(readings)}. ${readingWays(readings)}`;
}

/** "one reading", "3 readings" */
export const countReadings = ({ length }: readonly Reading[]): string =>
  length === 1 ? "one reading" : `${length} readings`;

/** "Heights over a level plane (±2 mm): the toe link's inner joint, …. Rates …." */
export function readingWays(readings: readonly Reading[]): string {
  const ways = WAYS.flatMap(({ axis, words }) => {
    const places = readings.filter((r) => r.axis === axis).map(({ place }) => place);
    return places.length === 0 ? [] : [`${words}: ${joinPlaces(places)}`];
  });
  return ways.map((way) => `${way.charAt(0).toUpperCase()}${way.slice(1)}.`).join(" ");
}

/** Places of one kind in one breath: both ends of a link are said together. */
function joinPlaces(places: readonly string[]): string {
  const ends = new Map<string, string[]>();
  for (const place of places) {
    const of = /^(the .+?'s) (inner|outer) joint(.*)$/.exec(place);
    const key = of ? `${of[1]}|${of[3]}` : place;
    ends.set(key, [...(ends.get(key) ?? []), ...(of?.[2] ? [of[2]] : [])]);
  }
  return [...ends]
    .map(([key, which]) => {
      const [link = key, car = ""] = key.split("|");
      return which.length === 0 ? key : `${link} ${which.join(" and ")} joint${which.length > 1 ? "s" : ""}${car}`;
    })
    .join(", ");
}

/** "toe-link.inner" as a person says it. */
function placeWords(assembly: CornerAssembly, name: string): string {
  const { bodies } = assembly;
  if (bodies) return `the ${partOrPointWords(bodies.layout, name)}`;
  const dot = name.lastIndexOf(".");
  const [link, end] = dot < 0 ? [name, ""] : [name.slice(0, dot), name.slice(dot + 1)];
  if (link === "strut_top" || name === "strut.top") return "the strut top";
  if (name === "strut.axis_point") return "the strut's lower line";
  if (link === "trailing_arm") return "the trailing arm's bush";
  const label = assembly.links.find((l) => l.name === link)?.label ?? link.replaceAll("-", " ");
  return `the ${label.toLowerCase()}'s ${end} joint`;
}
