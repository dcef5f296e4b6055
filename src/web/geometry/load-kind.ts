import type { Condition } from "#casework";

/** Which force the load slider sets; the others rest. */
export type LoadKind = "braking" | "lateral" | "drive";

interface LoadScale {
  readonly kind: LoadKind;
  readonly name: string;
  /** Newtons. */
  readonly low: number;
  readonly high: number;
  readonly lowSaid: string;
  readonly highSaid: string;
}

/** Ranges about as large as the load a wheel carries; common practice, no source. */
export const LOAD_SCALES: readonly LoadScale[] = [
  { kind: "braking", name: "Braking", low: 0, high: 4000, lowSaid: "0", highSaid: "4 kN rearward" },
  {
    kind: "lateral",
    name: "Side force",
    low: -4000,
    high: 4000,
    lowSaid: "4 kN to the right",
    highSaid: "4 kN to the left",
  },
  { kind: "drive", name: "Drive", low: 0, high: 4000, lowSaid: "0", highSaid: "4 kN forward" },
];
export const LOAD_STEP = 100;

/** The load a condition is mostly about: the first that is not zero, braking where none is. */
export const loadKindOf = (condition: Condition): LoadKind =>
  LOAD_SCALES.find(({ kind }) => condition[kind] !== 0)?.kind ?? "braking";

/** A condition with one force and no other. */
export const withLoad = (condition: Condition, kind: LoadKind, newtons: number): Condition => ({
  ...condition,
  braking: 0,
  lateral: 0,
  drive: 0,
  [kind]: newtons,
});
