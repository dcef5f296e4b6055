import { TravelSweep } from "#engines/linkage";
import { degreesFromRadians, metresFromMm, mmFromMetres } from "#quantity";
import { type AxlePlaces, geometryOf } from "./axle-places.ts";
import type { LooseAxle } from "./loose-axle.ts";

/** How far a wheel goes astray over 50 mm up and down, the largest change from ride height. */
export interface WheelMotion {
  readonly toe: number;
  readonly camber: number;
  /** Of the wheel centre, mm. */
  readonly foreAft: number;
  readonly sideways: number;
}

const TRAVELS_MM = [-50, -25, 25, 50] as const;
/**
 * What no wheel of a car does over 50 mm (all invented; the templates at every corner of what may be entered and the
 * invented families stay below half of each).
 */
const MOST: WheelMotion = { toe: 2, camber: 8, foreAft: 45, sideways: 30 };

/** The motion over 50 mm up and down, degrees and mm; "ends" where the linkage cannot go that far, null where it is not known. */
export function computeWheelMotion(axle: LooseAxle, places: AxlePlaces): WheelMotion | "ends" | null {
  const geometry = geometryOf(axle, places);
  if (geometry === null) return null;
  const sweep = new TravelSweep(geometry);
  const at = (mm: number) => {
    const answer = sweep.solve({ travel: metresFromMm(mm), rack: 0 });
    return "foldAt" in answer ? null : answer.attitude;
  };
  const standing = at(0);
  const moved = TRAVELS_MM.map(at);
  if (standing === null || moved.some((one) => one === null)) return "ends";
  const most = (of: (attitude: NonNullable<ReturnType<typeof at>>) => number): number =>
    Math.max(...moved.map((one) => (one === null ? 0 : Math.abs(of(one) - of(standing)))));
  return {
    toe: degreesFromRadians(most(({ toe }) => toe)),
    camber: degreesFromRadians(most(({ camber }) => camber)),
    foreAft: mmFromMetres(most(({ centre }) => centre[0])),
    sideways: mmFromMetres(most(({ centre }) => centre[1])),
  };
}

/** How far a motion lies beyond what wheels do: 0 to 1 within it, more beyond; Infinity where the linkage ends. */
export function straying(motion: WheelMotion | "ends"): number {
  if (motion === "ends") return Number.POSITIVE_INFINITY;
  return Math.max(...(Object.keys(MOST) as (keyof WheelMotion)[]).map((key) => motion[key] / MOST[key]));
}
