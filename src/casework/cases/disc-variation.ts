import type { Position } from "#vehicle";
import type { CountedReading, PlaceLooks } from "./place-looks.ts";

/** From so many points on the spread of a disc's thickness says something (workshop-scale, from memory; eight are asked for). */
const LEAST_POINTS = 4;

/**
 * What counts at a place, with the thickness variation of a disc taken from the points read at its thickness: the most
 * less the least, metres, never negative. A variation that was read itself stands before it; null: nothing was looked at.
 */
export function withVariation(
  position: Pick<Position, "id" | "kind" | "detail">,
  here: ReadonlyMap<string, PlaceLooks>,
): PlaceLooks | null {
  const own = here.get(position.id) ?? null;
  if (position.kind !== "disc" || position.detail !== "variation") return own;
  if (own?.readings.some((r) => r.quantity === "thickness-variation")) return own;
  const points = here.get(position.id.replace("/variation", "/thickness"))?.readings ?? [];
  const spread = spreadOf(points.filter((r) => r.quantity === "thickness"));
  if (spread === null) return own;
  const before = own ?? { place: position.id, readings: [], signs: [], looks: [] };
  return { ...before, readings: [...before.readings, spread], seen: true, notTaken: false };
}

/** Most less least of the points that were last read in one state of load; null where they are too few. */
function spreadOf(points: readonly CountedReading[]): CountedReading | null {
  const newest = points.toSorted((a, b) => b.look.sequence - a.look.sequence)[0];
  const alike = points.filter((r) => r.loadState === newest?.loadState);
  if (newest === undefined || alike.length < LEAST_POINTS) return null;
  const [least, most] = [
    alike.reduce((a, b) => (b.value < a.value ? b : a)),
    alike.reduce((a, b) => (b.value > a.value ? b : a)),
  ];
  return {
    quantity: "thickness-variation",
    point: null,
    value: most.value - least.value,
    u: Math.hypot(most.u, least.u),
    loadState: null,
    look: newest.look,
  };
}
