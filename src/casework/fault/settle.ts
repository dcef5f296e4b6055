import type { JetCorner } from "#engines/linkage";
import { computeNormalProbability, type Jet } from "#numeric";
import type { CornerAssembly } from "#vehicle";

/** A sign counts as known from this chance on. */
export const SIGN_SURE = 0.975;

/** What a reading leaves as standard deviation: heights over a level plane 1 mm, by tape 5 mm, a rate on the bench 10 %. */
const READ_HEIGHT = 0.001;
const READ_TAPE = 0.005;
const READ_RATE = 0.1;
/** More readings than this are said as a whole, not one by one. */
const MOST_NAMED = 4;

/** Chance that a figure has the sign of its value. */
export function signProbability(value: number, sd: number): number {
  if (sd === 0) return value === 0 ? 0.5 : 1;
  return computeNormalProbability(Math.abs(value) / sd);
}

export const isSignSure = (value: number, sd: number): boolean => signProbability(value, sd) >= SIGN_SURE;

/**
 * The reading, or group of readings, after which the sign of a figure would be sure: the numbers with the largest
 * share of its variance, taken one after another; or what can be said where even all of them would not do. Rates named
 * in `without` cannot turn the sign and are not asked for.
 */
export function findSettlingReading(
  jets: JetCorner,
  jet: Jet,
  assembly: CornerAssembly,
  without: readonly string[] = [],
): string {
  const value = jet[0] as number;
  const shares = jets.shares(jet);
  const order = shares.map((share, i) => ({ share, i })).sort((a, b) => b.share - a.share);
  const sd = jets.parameters.map((p) => (p.kind === "rate" && without.includes(p.name) ? 0 : p.sd));
  const left = (): number =>
    Math.sqrt(jets.parameters.reduce((sum, _, i) => sum + ((jet[i + 1] as number) * (sd[i] as number)) ** 2, 0));
  const named: string[] = [];
  for (const { share, i } of order) {
    if (share <= 0 || isSignSure(value, left())) break;
    const p = jets.parameters[i];
    if (!p) break;
    const after = p.kind === "rate" ? READ_RATE : p.axis === 2 ? READ_HEIGHT : READ_TAPE;
    if (after >= (sd[i] as number)) continue;
    sd[i] = after;
    const pointName = p.kind === "coordinate" ? (jets.linkage.mechanism.pointNames[p.point] ?? "") : p.name;
    named.push(
      p.kind === "rate"
        ? `the rate of ${placeWords(assembly, pointName)}`
        : `${["place fore and aft", "place across the car", "height"][p.axis]} of ${placeWords(assembly, pointName)}`,
    );
  }
  if (!isSignSure(value, left()))
    return "Even with every joint measured its sign would stay open: the figure lies too near to nought.";
  if (named.length === 0) return "";
  if (named.length > MOST_NAMED)
    return `Measure the heights of all joints over a level plane (±2 mm) and their places by tape: ${named.length} readings, first the ${named[0]}.`;
  return `To settle it, measure: ${named.join("; ")}. Heights over a level plane, ±2 mm.`;
}

/** "toe-link.inner" as a person says it. */
function placeWords(assembly: CornerAssembly, name: string): string {
  const dot = name.lastIndexOf(".");
  const [link, end] = dot < 0 ? [name, ""] : [name.slice(0, dot), name.slice(dot + 1)];
  if (link === "strut_top" || name === "strut.top") return "the strut top";
  if (name === "strut.axis_point") return "the strut's lower line";
  if (link === "trailing_arm") return "the trailing arm's bush";
  const label = assembly.links.find((l) => l.name === link)?.label ?? link.replaceAll("-", " ");
  return `the ${label.toLowerCase()}'s ${end} joint`;
}
