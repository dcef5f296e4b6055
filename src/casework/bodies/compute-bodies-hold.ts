import {
  buildLayoutLinkage,
  chooseStates,
  type LayoutLoadState,
  type Opened,
  type PartLoad,
  type Rock,
  type Support,
} from "#engines/linkage";
import type { Finding } from "#numeric";
import { mmFromMetres } from "#quantity";
import type { BodiesFault, BodiesFile, BodiesHeld, BodiesHold, BodiesRock, HeldPart } from "../bodies.ts";
import { TOLD_FROM_MM } from "../hold/hand-words.ts";
import { type Spread, spreadOf } from "../sampling/spread.ts";
import { checkBodiesFault, spanFault } from "./bodies-fault.ts";
import { faultAt, holdLayout, keyOfWay, rockLayout, seenOf, springBody, waysOf } from "./bodies-held.ts";
import { bestWay, holdSentence, holdWords, rockSentence, wayTitle, wayWords } from "./bodies-hold-words.ts";
import { type DrawnLayout, drawLayouts } from "./draw-layouts.ts";
import { placeBodies } from "./place-bodies.ts";

/** A verdict stands where so many of the drawn layouts share it. */
const SURE = 0.975;
const ROCKS: readonly Rock[] = ["12-6", "3-9"];

/** A way of holding the layout: as the file gives it, and as each drawn one has it. */
interface Solved {
  readonly support: Support;
  readonly state: LayoutLoadState;
  readonly drawn: readonly { readonly of: DrawnLayout; readonly state: LayoutLoadState }[];
}

/**
 * Forces in every joint of a layout standing, hanging and supported under each of its arms, in which of them the play of each
 * can be seen, and what both hands move, sound and with a fault. Findings where the file does not say what moves and where it
 * stops, where the fault is none of this file, or where nothing carries the wheel standing.
 */
export function computeBodiesHold(
  file: BodiesFile,
  fault: BodiesFault | null,
): { readonly hold: BodiesHold } | { readonly findings: readonly Finding[] } {
  const { layout, elasticity, held } = file;
  const wrong = checkBodiesFault(file, fault);
  if (wrong.length > 0) return { findings: wrong };
  if (held === null || layout.damper === undefined) return { findings: [notTold(held === null)] };
  const drawn = drawLayouts(file);
  const ways = waysOf(layout);
  const solved = ways.flatMap((support): readonly Solved[] => {
    const state = holdLayout(layout, elasticity, held, support);
    const others = drawn.flatMap((of) => {
      const other = holdLayout(of.layout, of.elasticity, held, support);
      return other ? [{ of, state: other }] : [];
    });
    return state ? [{ support, state, drawn: others }] : [];
  });
  if (!solved.some(({ support }) => support.kind === "ride")) return { findings: [cannotCarry] };
  const states = solved.map((one) => describe(file, fault, one));
  const usual = springBody(layout);
  const chosen = states.filter((_, i) => {
    const support = solved[i]?.support;
    return support?.kind !== "under" || support.part === usual;
  });
  const best = chooseStates(
    chosen.map(({ key }) => {
      const state = solved.find(({ support }) => keyOfWay(support) === key)?.state;
      return state ? seenOf(state) : [];
    }),
  ).map(({ state }, i) => {
    const found = state === null ? null : (chosen[state] ?? null);
    const joint = found?.parts[i] ?? null;
    const support = solved.find((one) => keyOfWay(one.support) === found?.key)?.support ?? null;
    const first = states[0]?.parts[i];
    return {
      part: first?.part ?? "",
      end: first?.end ?? null,
      state: found?.key ?? null,
      words: bestWay(support, joint),
    };
  });
  const standing = states.filter(({ key }) => key === "ride");
  return {
    hold: {
      // Standing first, as a car comes in.
      states: [...standing, ...states.filter(({ key }) => key !== "ride")],
      leftOut: ways
        .filter((support) => !solved.some((one) => one.support === support))
        .map((support) => `${wayTitle(support)}: not computed, nothing carries the wheel so`),
      best,
      sentence: holdSentence(layout, standing[0], best),
      ...holdWords(file),
    },
  };
}

function describe(file: BodiesFile, fault: BodiesFault | null, { support, state, drawn }: Solved): BodiesHeld {
  const seen = drawn.map((one) => seenOf(one.state));
  return {
    key: keyOfWay(support),
    title: wayTitle(support),
    how: wayWords(support),
    travel: state.travel,
    placed: placeBodies(buildLayoutLinkage(file.layout), state),
    supportAt: state.supportAt,
    spring: state.spring,
    stop: state.stop ?? 0,
    under: state.under,
    wheelLoad: state.wheelLoad,
    parts: seenOf(state).map((joint, i) =>
      judge(
        joint,
        seen.flatMap((list) => list[i] ?? []),
      ),
    ),
    rocks:
      support.kind === "ride"
        ? []
        : ROCKS.flatMap((rock) => rockOnce(file, fault, { support, state, drawn }, rock) ?? []),
  };
}

/** One joint as the file has it, with what the drawn layouts say of it. */
function judge({ part, end, load, rock, by }: PartLoad & Opened, all: readonly Opened[]): HeldPart {
  const same = all.filter((one) => one.by === by).length;
  const band = all.length > 1 ? spreadOf(all.map((one) => one.load)) : { low: load, high: load };
  return {
    part,
    end,
    load,
    low: Math.min(band.low, load),
    high: Math.max(band.high, load),
    rock,
    by: all.length > 1 && same < SURE * all.length ? "too-close" : by,
  };
}

/** What one rock moves; null where the joints leave a move free. */
function rockOnce(
  file: BodiesFile,
  fault: BodiesFault | null,
  { state, drawn }: Solved,
  rock: Rock,
): BodiesRock | null {
  const { layout, elasticity } = file;
  const moved = rockLayout(layout, elasticity, spanFault(file, fault).middle, state, rock);
  if (moved === null) return null;
  if (fault === null) {
    const only = { sound: moved.sound, faulty: null, shut: false };
    return {
      rock,
      sound: moved.sound,
      faulty: null,
      low: 0,
      high: 0,
      tells: null,
      words: rockSentence(rock, only, null),
    };
  }
  const added = drawn.flatMap(({ of, state: other }) => {
    const one = rockLayout(of.layout, of.elasticity, faultAt(file, fault, of.share), other, rock);
    return one === null ? [] : [one.faulty - one.sound];
  });
  const here = moved.faulty - moved.sound;
  const band: Pick<Spread, "low" | "high"> = added.length > 1 ? spreadOf(added) : { low: here, high: here };
  const [low, high] = [Math.min(band.low, here), Math.max(band.high, here)];
  const tells = tellsOf(low, high);
  return { rock, sound: moved.sound, faulty: moved.faulty, low, high, tells, words: rockSentence(rock, moved, tells) };
}

/** Whether an eye tells a change that lies between two bounds. */
function tellsOf(low: number, high: number): "yes" | "no" | "too-close" {
  const sizes = [low, high].map((x) => mmFromMetres(Math.abs(x)));
  if (low * high > 0 && Math.min(...sizes) >= TOLD_FROM_MM) return "yes";
  return Math.max(...sizes) < TOLD_FROM_MM ? "no" : "too-close";
}

const notTold = (isMass: boolean): Finding => ({
  code: "missing-key",
  path: isMass ? "unsprung_kg" : "layout.damper",
  got: "nothing",
  needed: isMass
    ? "unsprung_kg and droop_stop_mm in the file"
    : "the damper: the stop that holds the hanging wheel is in it",
  hint: isMass
    ? "What moves with the wheel, and how far it falls to its stop: without both nobody knows what presses a joint."
    : "Give the two ends of the damper, or of the strap that stops the droop.",
});

const cannotCarry: Finding = {
  code: "cannot-carry",
  path: "layout.spring",
  got: "a layout that finds no balance on its spring",
  needed: "a spring that carries the wheel load",
  hint: "Look at the spring's points.",
};
