import { TravelSweep } from "#engines/linkage";
import type { Finding } from "#numeric";
import { metresFromMm, mmFromMetres } from "#quantity";
import { geometryOf, placesOf } from "./axle-places.ts";
import { familyFinding } from "./family-finding.ts";
import type { LooseAxle } from "./loose-axle.ts";

const STOPS = [
  { key: "bump_stop_mm", end: "high", way: "rises" },
  { key: "droop_stop_mm", end: "low", way: "falls" },
] as const;

/** The fold is said to the whole millimetre below it, so that what is said can be entered. */
const wholeMmBelow = (metres: number): number => Math.floor(mmFromMetres(Math.abs(metres)));

/**
 * Stops that let the wheel travel farther than these hard points let it: said where the linkage folds, and in which joints.
 * Nothing where somebody has confirmed the points: pages then say themselves where it folds.
 */
export function checkStops(axle: LooseAxle): Finding[] {
  if (axle.pointsConfirmed) return [];
  const geometry = geometryOf(axle, placesOf(axle));
  const asked = STOPS.flatMap((stop) => {
    const value = axle.raw[stop.key];
    return typeof value === "number" ? [{ ...stop, value }] : [];
  });
  if (geometry === null || asked.length === 0) return [];
  const ends = new TravelSweep(geometry).findEnds(metresFromMm(Math.max(...asked.map(({ value }) => value))));
  return asked.flatMap(({ key, end, way, value }) => {
    const fold = ends[end];
    if (fold === null || Math.abs(fold.at) >= metresFromMm(value)) return [];
    const joints = fold.joints.map(({ joint }) => joint).join(", ");
    return [
      familyFinding(
        "stop-beyond-fold",
        `${axle.name}.${key}`,
        value,
        `at most ${wholeMmBelow(fold.at)}, in millimetres: there this linkage folds as the wheel ${way}`,
        `It locks in ${joints}. Check the stop; if it is right, check the hard points of these parts.`,
      ),
    ];
  });
}
