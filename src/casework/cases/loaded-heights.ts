import type { AsLeft } from "./as-left.ts";
import type { JobStep } from "./job-card.ts";
import { ownerWords, shownValue } from "./reading-reasons.ts";

/** How far the height at which rubber was tightened may be from the height the car stands at, metres (from memory). */
const MOST_APART = 0.01;

/**
 * Steps whose signed height lies further than that from the ride height of their wheel, in words: the height as left
 * where it was taken, else as found; of an axle's step the nearer wheel. What has no height to compare with is left out.
 */
export const heightsApart = (steps: readonly JobStep[], readings: readonly AsLeft[]): readonly string[] =>
  steps.flatMap((step) => {
    const signed = step.record?.hubToArch ?? null;
    const at = step.id.slice(step.id.indexOf("@") + 1);
    const stands = readings.flatMap((r) => {
      const height = r.asLeft ?? r.asFound;
      return r.group === "heights" && r.place.startsWith(at) && height !== null ? [height] : [];
    });
    if (signed === null || stands.length === 0) return [];
    const nearest = stands.reduce((a, b) => (Math.abs(b - signed) < Math.abs(a - signed) ? b : a));
    if (Math.abs(nearest - signed) <= MOST_APART) return [];
    const mm = (value: number): string => shownValue("ride-height", value);
    return [
      `${at.replace("-", " ")}: signed at ${mm(signed)}, the car stands at ${mm(nearest)}; they may differ by ${mm(MOST_APART)}, ${ownerWords.memory}`,
    ];
  });
