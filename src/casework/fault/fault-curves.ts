import type { CornerLoad, WheelState } from "#engines/linkage";
import { type Jet, subtractJets } from "#numeric";
import { degreesFromRadians } from "#quantity";
import type { Curve, CurveLine, CurveQuantity } from "../fault-effect.ts";
import { bandOf, bandOfAngles, changeOf, changesOf } from "./change-band.ts";
import { evenRises } from "./even-rises.ts";
import { type FaultStates, type PairBand, solvePair } from "./fault-pair.ts";
import { findSettlingReading, isSignSure } from "./settle.ts";

/** Curves never reach further than this from ride height, metres; they end earlier at the stops. */
const FURTHEST = 0.08;

export interface EffectCurves {
  readonly rises: number[];
  readonly curves: Curve[];
  /** The sound corner at the lowest and the highest point of the curves, for the drawing. */
  readonly ends: readonly WheelState[];
}

/**
 * Toe and camber over contact height at the asked force, sound and faulty, with bands; and the change between them.
 * A change is drawable where its figure at the asked height is sure of its sign (`settle` null), so that page and curve
 * never disagree. Ride height is always one of the points.
 */
export function computeCurves(
  states: FaultStates,
  settle: { readonly toe: string | null; readonly camber: string | null },
): EffectCurves {
  const { bumpStop, droopStop } = states.model.assembly;
  const top = Math.min(FURTHEST, bumpStop);
  const bottom = -Math.min(FURTHEST, droopStop);
  const up = walk(states, [0, ...evenRises(top)]);
  const down = walk(states, evenRises(bottom)).reverse();
  const points = [...down, ...up];
  const lowest = points[0];
  const highest = points.at(-1);
  return {
    rises: points.map((p) => p.rise),
    curves: [
      plain(states, points, "toe"),
      plain(states, points, "camber"),
      change(states, points, "toe", settle.toe),
      change(states, points, "camber", settle.camber),
    ],
    ends: [lowest, highest].flatMap((p) => (p ? [p.pair.sound.state] : [])),
  };
}

interface Point {
  readonly rise: number;
  readonly pair: PairBand;
}

/** Away from ride height, each point from the one before, until no balance is found any more. */
function walk(states: FaultStates, rises: readonly number[]): Point[] {
  for (const s of [states.sound, states.faulty, ...states.ends]) s.forget();
  const out: Point[] = [];
  for (const rise of rises) {
    const load: CornerLoad = { ...states.load, contactRise: rise };
    const pair = solvePair(states, load);
    if (!pair) break;
    out.push({ rise, pair });
  }
  return out;
}

function lineOf(state: CurveLine["state"], points: readonly { value: number; low: number; high: number }[]): CurveLine {
  return { state, values: points.map((p) => p.value), low: points.map((p) => p.low), high: points.map((p) => p.high) };
}

function plain(states: FaultStates, points: readonly Point[], key: "toe" | "camber"): Curve {
  const { jets } = states.sound.band;
  const angle = (jet: Jet) => ({
    value: degreesFromRadians(jet[0] as number),
    sd: degreesFromRadians(jets.deviation(jet)),
  });
  const banded = (own: Jet, all: readonly Jet[]) => {
    const [low, high] = bandOfAngles(all.map(angle));
    return { value: angle(own).value, low, high };
  };
  const sound = points.map(({ pair }) => banded(pair.sound[key], [pair.sound[key]]));
  const faulty = points.map(({ pair }) => {
    const others = pair.open ? pair.open.sides : [pair.faulty, ...pair.ends];
    return banded(pair.faulty[key], others.length > 0 ? others.map((state) => state[key]) : [pair.faulty[key]]);
  });
  const unsure = unsureEnd(states, points, key);
  return {
    quantity: key,
    unit: "deg",
    drawable: unsure === null,
    settle: unsure,
    lines: [lineOf("sound", sound), lineOf(states.question.fault.kind, faulty)],
  };
}

/**
 * A curve is drawn where it is sure which way it runs: the sign of its change from one end to the other, or of its
 * change from ride height to both ends (a curve that bends back). Else what would settle the change end to end.
 */
function unsureEnd(states: FaultStates, points: readonly Point[], key: "toe" | "camber"): string | null {
  const { jets } = states.sound.band;
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last || first === last) return null;
  const rest = points.reduce((best, p) => (Math.abs(p.rise) < Math.abs(best.rise) ? p : best), first);
  const changeBetween = (from: Point, to: Point): Jet => subtractJets(to.pair.sound[key], from.pair.sound[key]);
  const sure = (jet: Jet): boolean => isSignSure(jet[0] as number, jets.deviation(jet));
  const whole = changeBetween(first, last);
  if (sure(whole)) return null;
  if (rest !== first && rest !== last && sure(changeBetween(rest, first)) && sure(changeBetween(rest, last)))
    return null;
  return findSettlingReading(jets, whole, states.model.assembly);
}

function change(states: FaultStates, points: readonly Point[], key: "toe" | "camber", settle: string | null): Curve {
  const quantity: CurveQuantity = `${key}-change`;
  const changes = points.map((p) => {
    const changes = changesOf(states, p.pair, key);
    const sides = (p.pair.open?.sides ?? []).map((side) => changeOf(states, p.pair, key, side));
    const [low, high] = bandOf(sides.length > 0 ? sides : changes);
    return { value: changes[0].value, low, high };
  });
  return {
    quantity,
    unit: "deg",
    drawable: settle === null,
    settle,
    lines: [lineOf(states.question.fault.kind, changes)],
  };
}
