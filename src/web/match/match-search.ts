import type { Corner } from "../car.ts";
import { CORNERS } from "../travel/travel-search.ts";

/** What of matching stands in its address: the corner and every entry as it was typed. */
export interface MatchSearch {
  readonly corner?: Corner;
  /** Rows "height|camber|toe" with ";" between them. */
  readonly read?: string;
  /** "link|length" with ";" between them. */
  readonly bench?: string;
  /** "height|camber|toe|length" */
  readonly pm?: string;
}

/** Reads the search part of an address; what cannot be read is left out. */
export const readMatchSearch = (search: Record<string, unknown>): MatchSearch => {
  const corner = CORNERS.find((one) => one === search.corner);
  const text = (key: "read" | "bench" | "pm") => {
    const value = search[key];
    return typeof value === "string" && value !== "" ? { [key]: value } : {};
  };
  return { ...(corner === undefined ? {} : { corner }), ...text("read"), ...text("bench"), ...text("pm") };
};
