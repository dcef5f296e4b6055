import type { SymptomEntry } from "../cases/documents.ts";
import type { PlaceFinding } from "../cases/place-finding.ts";
import type { Cause } from "./cause.ts";
import { causes } from "./cause-table.ts";
import { isReadingAlone, placesOfCause, placesOnLayout } from "./look-state.ts";
import type { Symptom } from "./symptom.ts";

/**
 * True where a cause would sit at a part and this car's layout has none: a strut axle has no upper arm. What only a
 * reading speaks of can be on every car, read or not.
 */
const hasNoPlaceHere = (cause: Cause, findings: readonly PlaceFinding[]): boolean =>
  !isReadingAlone(cause) && cause.kinds.length > 0 && placesOnLayout(cause, findings).length === 0;

/**
 * A complaint without the causes this car's layout cannot have, their shares given to the others in proportion. What sits
 * at no place at all stays; without a layout, or where nothing would be left, the complaint comes back as it is.
 */
export function fitToLayout(symptom: Symptom, findings: readonly PlaceFinding[]): Symptom {
  if (findings.length === 0) return symptom;
  const left = symptom.causes.filter(([id]) => {
    const cause = causes.find((c) => c.id === id);
    return cause === undefined || !hasNoPlaceHere(cause, findings);
  });
  const before = symptom.causes.reduce((sum, [, share]) => sum + share, 0);
  const kept = left.reduce((sum, [, share]) => sum + share, 0);
  if (kept === 0) return symptom;
  return { ...symptom, causes: left.map(([cause, share]) => [cause, (share * before) / kept] as const) };
}

/** The axle every complaint is felt at; null: none is said, or there are two. */
export function feltAxle(entries: readonly SymptomEntry[]): "front" | "rear" | null {
  const axles = new Set(entries.map(({ axle }) => axle));
  const [only] = axles;
  return axles.size === 1 && only !== undefined && only !== "unknown" ? only : null;
}

/** Places where a cause would sit, of those the ones at the axle it is felt at; all where that axle has none. */
export function placesFor(
  cause: Cause,
  findings: readonly PlaceFinding[],
  felt: "front" | "rear" | null,
): readonly PlaceFinding[] {
  const all = placesOfCause(cause, findings);
  const there = all.filter(({ axle }) => axle === felt);
  return there.length === 0 ? all : there;
}
