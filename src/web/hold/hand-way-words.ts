import type { HandWayName } from "./hold-search.ts";

/** Ways of the hand as they are chosen. */
export const HAND_WAY_WORDS: Readonly<Record<HandWayName, string>> = {
  "12-6": "rock, hands at 12 and 6",
  "3-9": "rock, hands at 3 and 9",
  top: "push at the top",
  bottom: "push at the bottom",
  front: "push at the front",
  rear: "push at the rear",
  bar: "bar at the joint",
};
