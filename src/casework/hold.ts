import type { PlaySeenBy, Rock } from "#engines/linkage";
import type { Metres, NewtonMetres, Newtons } from "#quantity";
import type { Corner, Rung } from "#vehicle";
import type { EffectPart, Figure, RubberFault, WheelPose } from "./fault-effect.ts";

/** How a corner is held: standing, hanging at its stop, or with a support under one of its parts. */
export type Held =
  | { readonly kind: "ride" }
  | { readonly kind: "hanging" }
  /** Name of the first link of the part, as the linkage knows it. */
  | { readonly kind: "under"; readonly part: string };

/** What opens a joint's play in a state; too close to call where the drawn corners do not agree. */
export type SeenBy = PlaySeenBy | "too-close";

/** One joint in one state. */
export interface HeldJoint {
  /** Id of the position. */
  readonly position: string;
  /** What presses the joint together, with its 95 % band. */
  readonly load: Newtons;
  readonly low: Newtons;
  readonly high: Newtons;
  /** Of an outer joint what its part does to the knuckle, of an inner one what the body does to the part; asked side. */
  readonly force: readonly [Newtons, Newtons, Newtons];
  /** What the better rock brings to the joint, and which that is. */
  readonly hand: Newtons;
  readonly rock: Rock;
  readonly by: SeenBy;
}

/** One way of holding a corner with the forces in all its joints; null forces where the corner cannot be held so. */
export interface HeldState {
  readonly key: string;
  readonly held: Held;
  /** "Standing", "Hanging", "Lower rear link supported". */
  readonly title: string;
  /** How it is done, in plain words. */
  readonly how: string;
  /** Wheel-centre travel from ride height. */
  readonly travel: Metres;
  readonly pose: WheelPose;
  readonly spring: Newtons;
  readonly stop: Newtons;
  readonly under: Newtons;
  readonly wheelLoad: Newtons;
  /** Where the support stands, on the asked side; null without one. */
  readonly supportAt: readonly [Metres, Metres, Metres] | null;
  readonly joints: readonly HeldJoint[];
}

/** In which state the play of a joint is seen best, and how. */
export interface BestWay {
  readonly position: string;
  /** Key of the state; null where its play cannot be seen in any. */
  readonly state: string | null;
  readonly by: SeenBy;
  /** What to do, in plain words. */
  readonly words: string;
}

/** Forces of one corner in every way of holding it, and where play can be seen. */
export interface Hold {
  readonly corner: Corner;
  readonly rung: Rung;
  readonly invented: boolean;
  readonly parts: readonly EffectPart[];
  readonly states: readonly HeldState[];
  /** States in which the corner could not be computed, in words. */
  readonly leftOut: readonly string[];
  readonly best: readonly BestWay[];
  /** The joint that is pressed most while the car stands, and how to see its play. */
  readonly sentence: string;
  readonly howSure: string;
  readonly computedSo: string;
  readonly cautions: readonly string[];
}

/** What a hand does to the corner: both hands on the tyre, one push at its edge, or a bar at the joint. */
export type HandWay =
  | { readonly kind: "rock"; readonly at: Rock; readonly moment: NewtonMetres }
  /** Sideways, to and fro, at the tyre's edge. */
  | { readonly kind: "push"; readonly at: "top" | "bottom" | "front" | "rear"; readonly force: Newtons }
  /** At the joint itself, to and fro across its axis. */
  | { readonly kind: "bar"; readonly force: Newtons };

/** What is asked of a hand: at which joint, in which state, as what fault, by which means. */
export interface HandQuestion {
  readonly corner: Corner;
  readonly held: Held;
  readonly position: string;
  readonly fault: Exclude<RubberFault, { kind: "firmer" }>;
  readonly way: HandWay;
}

/** Movement under a hand, sound and with the fault. */
export interface HandTest {
  readonly question: HandQuestion;
  readonly rung: Rung;
  readonly invented: boolean;
  readonly parts: readonly EffectPart[];
  /** How much further it moves with the fault. */
  readonly headline: Figure;
  readonly figures: readonly Figure[];
  /** Whether the eye of a person tells the difference. */
  readonly tells: "yes" | "no" | "too-close";
  readonly sentence: string;
  readonly howSure: string;
}
