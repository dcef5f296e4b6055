import type { Finding } from "#numeric";
import { describeValue } from "../refusal-words.ts";
import type { FamilyCode } from "./codes.ts";
import type { workCodes } from "./work-codes.ts";

/** One finding of a family sheet; `got` is shown in the words all findings use. */
export function familyFinding(
  code: FamilyCode | keyof typeof workCodes,
  path: string,
  got: unknown,
  needed: string,
  hint: string,
): Finding {
  return { code, path, got: typeof got === "string" ? got : describeValue(got), needed, hint };
}

/** "[1, 2, 3] mm" */
export function placeWords(place: readonly [number, number, number]): string {
  return `[${place.join(", ")}] mm`;
}

/** The way past a bound that is no law of nature. */
export const CONFIRM_POINTS = 'If the car is so, write "points_confirmed": true on this axle.';
