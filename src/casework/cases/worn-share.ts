import type { Family, Limit, QuantityName } from "#vehicle";
import type { PlaceFinding } from "./place-finding.ts";
import { limitsFor, summarise } from "./reading-reasons.ts";

/** Tread of a new tyre, metres (from memory). */
const NEW_TREAD = 0.008;

/** What a part that wears shows when it is new, metres; null: not known of this quantity. */
function newValue(family: Family, { axle }: PlaceFinding, quantity: QuantityName): number | null {
  const { brake } = family[axle];
  if (quantity === "pad-thickness") return brake.padThickness;
  if (quantity === "thickness") return brake.discThickness;
  return quantity === "tread" ? NEW_TREAD : null;
}

/**
 * How much of what may wear away is gone, by the thinnest reading: 0 new, 1 at the lowest limit on file; null where no such
 * reading or limit is there. A part that is renewed again and again says so by its reading, not by the odometer.
 */
export function wornShare(family: Family, limits: readonly Limit[], finding: PlaceFinding): number | null {
  for (const { quantity, value } of summarise(finding.looks?.readings ?? [])) {
    const whole = newValue(family, finding, quantity);
    const [item = "", detail = null] = finding.place.split("/").slice(1);
    const lowest = limitsFor(quantity, { limits, position: { ...finding, item, detail } }).flatMap((limit) =>
      limit.lower === null || "byItself" in limit ? [] : [limit.lower],
    );
    if (whole === null || lowest.length === 0) continue;
    const end = Math.min(...lowest);
    if (whole > end) return Math.min(1, Math.max(0, (whole - value) / (whole - end)));
  }
  return null;
}
