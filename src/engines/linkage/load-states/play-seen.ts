import { norm, type Vector } from "#numeric";
import type { NewtonMetres, Newtons } from "#quantity";
import type { JointLoad } from "./load-state.ts";

/** What a person brings to a joint: a rock of the wheel with both hands, and a bar set at the joint itself. */
export interface HandMeans {
  /** Moment of both hands at the tyre, one pulling and one pushing. */
  readonly rock: NewtonMetres;
  /** Force of the bar at the joint. */
  readonly bar: Newtons;
}

/** Both ways of rocking a wheel: hands above and below, and hands in front and behind. */
export type Rock = "12-6" | "3-9";

/** What opens the play of a joint in one state: the hands on the wheel, only a bar at the joint, or nothing. */
export type PlaySeenBy = "hand" | "bar" | "nothing";

/** What is told of the play of a joint in one state. */
export interface Opened {
  /** What presses the joint together. */
  readonly load: Newtons;
  /** What the better rock brings to it, and which that is. */
  readonly hand: Newtons;
  readonly rock: Rock;
  readonly by: PlaySeenBy;
}

export type PlaySeen = JointLoad & Opened;

/** Forces in joints of any kind in one state, and how they answer a hand on the wheel. */
export interface HeldForces<J extends { readonly force: Vector }> {
  readonly support: { readonly kind: string };
  readonly joints: readonly J[];
  readonly answerTo: (force: Vector, moment: Vector) => readonly J[];
}

/**
 * Whether the play of each joint can be seen in a state. A joint under load rests on one side of its play; rocking moves it
 * across only where the rock brings more than the load. A wheel on the ground cannot be rocked by hand.
 */
export function judgePlay<J extends { readonly force: Vector }>(
  state: HeldForces<J>,
  heading: Vector,
  means: HandMeans,
): readonly (J & Opened)[] {
  const { rock, bar } = means;
  const upright: Vector = [0, 0, rock];
  const fore: Vector = [rock * heading[0], rock * heading[1], rock * heading[2]];
  const answers = [
    ["12-6", state.answerTo([0, 0, 0], fore)],
    ["3-9", state.answerTo([0, 0, 0], upright)],
  ] as const;
  const rocks = state.support.kind !== "ride";
  return state.joints.map((joint, i) => {
    const load = norm(joint.force);
    const [best, other] = answers
      .map(([way, joints]) => ({ way, brings: norm(joints[i]?.force ?? [0, 0, 0]) }))
      .sort((a, b) => b.brings - a.brings) as [{ way: Rock; brings: number }, { way: Rock; brings: number }];
    const { way, brings } = best.brings >= other.brings ? best : other;
    const hand = rocks ? brings : 0;
    return { ...joint, load, hand, rock: way, by: hand > load ? "hand" : bar > load ? "bar" : "nothing" };
  });
}

/** In which of the states given a joint's play is seen best: by hand before by bar, then where the hand has most in hand. */
export interface BestState<S extends Opened> {
  /** Index of the state; null where its play cannot be seen in any. */
  readonly state: number | null;
  readonly seen: S | null;
}

export interface BestHold extends BestState<PlaySeen> {
  readonly link: string;
  readonly end: JointLoad["end"];
}

/** The best state for every joint; states earlier in the list are preferred where several are as good within a fifth. */
export function chooseStates<S extends Opened>(judged: readonly (readonly S[])[]): readonly BestState<S>[] {
  const [first] = judged;
  const rank: Readonly<Record<PlaySeenBy, number>> = { hand: 2, bar: 1, nothing: 0 };
  const clearly = 0.8;
  return (first ?? []).map((_, i) => {
    let best: { readonly state: number; readonly seen: S } | null = null;
    judged.forEach((state, s) => {
      const seen = state[i];
      if (!seen || seen.by === "nothing") return;
      const better =
        best === null ||
        rank[seen.by] > rank[best.seen.by] ||
        (seen.by === best.seen.by && seen.load < clearly * best.seen.load);
      if (better) best = { state: s, seen };
    });
    const found = best as { readonly state: number; readonly seen: S } | null;
    return { state: found?.state ?? null, seen: found?.seen ?? null };
  });
}

/** The best state for every joint of a corner. */
export const chooseHolds = (judged: readonly (readonly PlaySeen[])[]): readonly BestHold[] =>
  chooseStates(judged).map((best, i) => ({
    link: judged[0]?.[i]?.link ?? "",
    end: judged[0]?.[i]?.end ?? "outer",
    ...best,
  }));
