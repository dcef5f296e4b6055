import type { Grade, Position } from "#vehicle";
import type { GradeMark } from "../scene.ts";

/** What has been found at a position. A position without one has not been looked at. */
export interface PositionState {
  /** null: read, and yet not known, as where nothing is on file to hold it against. */
  readonly grade: Grade | null;
  /** Too close to call. */
  readonly close?: boolean;
  /** What it is, in a few words: "torn"; shown first under the name. */
  readonly sign?: string;
  /** Reading and limit, one short line each: "4.6 mm", "limit 3.2, general practice". */
  readonly lines?: readonly string[];
}

/** By position id. */
export type PositionStates = Readonly<Record<string, PositionState>>;

/** True where there is something to say: a grade above sound, or too close to call. */
export function hasFinding(state: PositionState | undefined): boolean {
  return state !== undefined && ((state.grade ?? 0) > 0 || state.close === true);
}

/** The lines under the name of a position. */
export function linesOf(state: PositionState | undefined): readonly string[] {
  if (state === undefined) return [];
  return [...(state.sign === undefined ? [] : [state.sign]), ...(state.lines ?? [])];
}

/** How many of these positions have been looked at. */
export function countSeen(positions: readonly Position[], states: PositionStates): number {
  return positions.filter((position) => states[position.id] !== undefined).length;
}

/** The mark of a state without its place: hatched where nobody has looked, a ring with a dash where it is not known. */
export const gradeOfState = (
  state: PositionState | undefined,
): Pick<GradeMark, "kind" | "grade" | "close" | "read"> => ({
  kind: "grade",
  grade: state?.grade ?? null,
  close: state?.close ?? false,
  read: state !== undefined && state.grade === null,
});
