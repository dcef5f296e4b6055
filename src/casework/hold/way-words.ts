import { formatNumber } from "../fault/format-figure.ts";
import type { HandWay } from "../hold.ts";

const edgeWords = { top: "the top", bottom: "the bottom", front: "the front", rear: "the rear" } as const;

/** What the hand does, with its force or moment and its place. */
export function wayWords(way: HandWay): string {
  if (way.kind === "bar") return `a bar at the joint, ${formatNumber(way.force, 0)} N to and fro`;
  if (way.kind === "push")
    return `a push and pull of ${formatNumber(way.force, 0)} N sideways at ${edgeWords[way.at]} of the tyre`;
  const hands = way.at === "12-6" ? "12 and 6" : "3 and 9";
  return `a rock of ${formatNumber(way.moment, 0)} N·m, hands at ${hands}`;
}
