import type { WheelBand } from "#engines/linkage";
import { computeScaledNormalQuantile, type Jet, subtractJets } from "#numeric";
import { degreesFromRadians, mmFromMetres } from "#quantity";
import { rateNamesAt } from "./corner-model.ts";
import type { FaultStates, PairBand } from "./fault-pair.ts";
import { isSignSure } from "./settle.ts";

/** What a fault changes, in degrees or millimetres: its value and how it is spread. */
export interface Change {
  readonly value: number;
  /** Standard uncertainty, everything uncertain in it. */
  readonly sd: number;
  readonly jet: Jet;
  /** Standard deviation of the logarithm of the factor that the joint's own rate is. */
  readonly logSd: number;
  /** Standard uncertainty without that factor. */
  readonly restSd: number;
}

/**
 * A change goes with the joint's own softness x as x / (1 + d x), seen from one scalar rate: its derivative by the
 * logarithm of the rate is then never larger than the change itself, and no rate turns its sign. Beyond this share
 * (a little more than 1, for what is not linear) the rate is treated as anything else that is uncertain.
 */
const MOST_SCALING = 1.2;

/** Quantities of a balance that carry derivatives, in the unit they are shown in. */
export type BandQuantity = "toe" | "camber" | "forward";
const shownIn: Readonly<Record<BandQuantity, (si: number) => number>> = {
  toe: degreesFromRadians,
  camber: degreesFromRadians,
  forward: mmFromMetres,
};

/** Standard deviations of everything uncertain, in the order of the parameters of the states' jets. */
export const deviationsOf = (states: FaultStates): readonly number[] => states.sound.band.jets.deviations;

/**
 * A quantity of the faulty state less that of the sound one; `deviations` in place of those on file, as they would be
 * after a reading.
 */
export function changeOf(
  states: FaultStates,
  pair: PairBand,
  key: BandQuantity,
  faulty: WheelBand = pair.faulty,
  deviations: readonly number[] = deviationsOf(states),
): Change {
  const { jets } = states.sound.band;
  const jet = subtractJets(faulty[key], pair.sound[key]);
  const own = states.question.fault.kind === "loose" ? [] : rateNamesAt(states.model.assembly, states.position);
  const size = Math.abs(jet[0] as number);
  const isOwn = jets.parameters.map((p) => p.kind === "rate" && own.includes(p.name));
  const shares = deviations.flatMap((sd, i) =>
    isOwn[i] ? [{ slope: Math.abs(jet[i + 1] as number) / size, sd }] : [],
  );
  const scales = shares.every(({ slope }) => slope <= MOST_SCALING);
  const shown = shownIn[key];
  return {
    value: shown(jet[0] as number),
    sd: shown(jets.spread(jet, deviations)),
    jet,
    logSd: scales ? Math.hypot(...shares.map(({ slope, sd }) => slope * sd)) : 0,
    restSd: shown(jets.spread(jet, deviations, (i) => !(scales && isOwn[i]))),
  };
}

/** A change in its middle and at the ends of the torn range. */
export const changesOf = (
  states: FaultStates,
  pair: PairBand,
  key: BandQuantity,
  deviations: readonly number[] = deviationsOf(states),
): readonly [Change, ...Change[]] => [
  changeOf(states, pair, key, pair.faulty, deviations),
  ...pair.ends.map((end) => changeOf(states, pair, key, end, deviations)),
];

/** Whether a change has its sign at 97.5 % in every one of the given states, and the same one in all. */
export const isChangeSure = (changes: readonly Change[]): boolean =>
  changes.every((c) => isSignSure(c.value, c.restSd) && Math.sign(c.value) === Math.sign(changes[0]?.value ?? 0));

const TAIL = 0.025;

/**
 * Where a change lies with 95 %, in its unit: the lowest lower and the highest upper bound of the given states. Its lower
 * bound is beyond nought exactly where isChangeSure says so.
 */
export function bandOf(changes: readonly Change[]): readonly [low: number, high: number] {
  const bound = (p: number) =>
    changes.map(({ value, restSd, logSd }) => computeScaledNormalQuantile({ mean: value, sd: restSd, logSd }, p));
  return [Math.min(...bound(TAIL)), Math.max(...bound(1 - TAIL))];
}

/** The same bounds of an angle as it is, degrees: middle and ends, each with its standard deviation. */
export function bandOfAngles(
  angles: readonly { readonly value: number; readonly sd: number }[],
): readonly [low: number, high: number] {
  return bandOf(angles.map(({ value, sd }) => ({ value, sd, restSd: sd, logSd: 0, jet: [] })));
}
