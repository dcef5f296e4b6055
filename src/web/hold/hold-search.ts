import { MOST_BAR, MOST_MOMENT, MOST_PUSH } from "#casework";
import type { Corner } from "../car.ts";
import { CORNERS } from "../travel/travel-search.ts";

/** How a hand is set: both hands on the tyre, a push at its edge, a bar at the joint. */
export const HAND_WAYS = ["12-6", "3-9", "top", "bottom", "front", "rear", "bar"] as const;
export type HandWayName = (typeof HAND_WAYS)[number];

/** What of the sheet of load states stands in its address. */
export interface HoldSearch {
  readonly corner?: Corner;
  /** "ride", "hanging", or "under/" with the name of a part. */
  readonly held?: string;
  /** Id of the joint that is looked at. */
  readonly at?: string;
  /** "torn-3", "loose-1.5" (mm). */
  readonly as?: string;
  readonly way?: HandWayName;
  /** Newtons, or newton metres for a rock. */
  readonly by?: number;
}

/** The largest force or moment of a way. */
export const mostOf = (way: HandWayName): number =>
  way === "bar" ? MOST_BAR : way === "12-6" || way === "3-9" ? MOST_MOMENT : MOST_PUSH;

/** Reads the search part of an address; what cannot be read is left out. */
export const readHoldSearch = (search: Record<string, unknown>): HoldSearch => {
  const corner = CORNERS.find((one) => one === search.corner);
  const way = HAND_WAYS.find((one) => one === search.way);
  const text = (key: "held" | "at" | "as") => {
    const value = search[key];
    return typeof value === "string" && value !== "" ? { [key]: value } : {};
  };
  const by = typeof search.by === "string" ? Number(search.by) : search.by;
  return {
    ...(corner === undefined ? {} : { corner }),
    ...text("held"),
    ...text("at"),
    ...text("as"),
    ...(way === undefined ? {} : { way }),
    ...(typeof by === "number" && by > 0 && Number.isFinite(by) ? { by } : {}),
  };
};
