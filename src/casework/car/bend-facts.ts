import type { CarBalanceState, WheelPlace } from "#engines/linkage";
import type { Finding } from "#numeric";
import type { CarMotion, CarQuestion } from "../car.ts";
import type { Figure } from "../fault-effect.ts";
import type { Spread } from "../sampling/spread.ts";
import type { Give } from "./bend-give.ts";
import type { Models } from "./loaded-car.ts";

export type BendMotion = Extract<CarMotion, { kind: "bend" }>;

/** A figure of the car in a bend: of the car on file, with what the cars that may be have. */
export interface Known {
  readonly value: number;
  readonly spread: Spread;
  /** Whether 97.5 % of the cars that may be have its sign. */
  readonly sure: boolean;
}

/** What a torn, loose or firmer joint does to its own wheel under the forces of the bend: its figure, or why there is none. */
export type ChangedInBend = { readonly figure: Figure } | { readonly findings: readonly Finding[] };

/** Everything a car in a bend is told from. */
export interface BendFacts {
  readonly question: CarQuestion;
  readonly motion: BendMotion;
  readonly models: Models;
  readonly state: CarBalanceState;
  /** Where it stands still. */
  readonly standing: CarBalanceState;
  /** What the arms take of the nod, where there is one. */
  readonly antis: readonly Figure[];
  /** How many drawn cars the bands are from. */
  readonly draws: number;
  readonly known: (of: (state: CarBalanceState) => number) => Known;
  readonly gives: Readonly<Record<WheelPlace, Give | null>>;
  readonly changed: {
    readonly words: string;
    /** "torn", "loose, 1.0 mm assumed", "firmer, 55 to 65 Shore A". */
    readonly as: string;
    readonly place: WheelPlace;
    readonly told: ChangedInBend;
  } | null;
}

export const PLACE_WORDS: Readonly<Record<WheelPlace, string>> = {
  frontLeft: "front left",
  frontRight: "front right",
  rearLeft: "rear left",
  rearRight: "rear right",
};

/** Bump of both wheels of an axle together, metres: the body there goes down by it, the tyres aside. */
export const sinks = (axle: "front" | "rear", s: CarBalanceState): number =>
  axle === "front" ? (s.frontLeft.travel + s.frontRight.travel) / 2 : (s.rearLeft.travel + s.rearRight.travel) / 2;
