import type { PlaceFinding } from "./place-finding.ts";

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** A label without its last part where what was found begins with the same words. */
const shortLabel = (label: string, found: string): string => {
  const cut = label.lastIndexOf(", ");
  const last = label.slice(cut + 2).toLowerCase();
  return cut > 0 && found.toLowerCase().startsWith(last) ? label.slice(0, cut) : label;
};

/** Where and what, nothing said twice: "front left, brake disc: thickness variation 0.040 mm", "front left: ride height 352 mm". */
export function foundAt({ axle, side, label, found }: Pick<PlaceFinding, "axle" | "side" | "label" | "found">): string {
  const where = side === null ? `${axle} axle` : `${axle} ${side}`;
  const short = shortLabel(label, found);
  return found.toLowerCase().startsWith(short.toLowerCase())
    ? `${where}: ${found}`
    : `${where}, ${lower(short)}: ${found}`;
}
