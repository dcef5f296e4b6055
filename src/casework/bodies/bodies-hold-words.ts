import type { PlaySeenBy, Rock, Support } from "#engines/linkage";
import type { BodyLayout } from "#vehicle";
import type { BodiesFile, BodiesHeld, HeldPart } from "../bodies.ts";
import { cautionsFor } from "../cases/cautions.ts";
import { formatNumber } from "../fault/format-figure.ts";
import { HAND_MEANS, SUPPORT_RAISED, SUPPORT_SHARE } from "../hold/held-corner.ts";
import { formatForce } from "../hold/hold-words.ts";
import { partInSentence } from "./bodies-words.ts";
import { LAYOUT_DRAWS } from "./draw-layouts.ts";

const spaced = (name: string): string => name.replaceAll("-", " ");
const rockWords: Readonly<Record<Rock, string>> = { "12-6": "hands at 12 and 6", "3-9": "hands at 3 and 9" };
const seenWords: Readonly<Record<PlaySeenBy | "too-close", string>> = {
  hand: "a hand on the wheel opens its play",
  bar: "only a bar at the joint opens its play",
  nothing: "its play stays pressed shut",
  "too-close": "whether its play opens is too close to call",
};

export function wayTitle(support: Support): string {
  if (support.kind === "ride") return "Standing";
  return support.kind === "hanging" ? "Hanging" : `Under the ${spaced(support.part)}`;
}

/** How the car is brought into a state. */
export function wayWords(support: Support): string {
  if (support.kind === "ride") return "On its wheels, at ride height.";
  if (support.kind === "hanging")
    return "Car lifted and on stands under the maker's points, this wheel free and hanging at its stop.";
  return `Car lifted and on stands as for hanging; then a second jack under the ${spaced(support.part)} as far out as it bears (${formatNumber(100 * SUPPORT_SHARE, 0)} % of the way to its outer joint), raised ${formatNumber(1000 * SUPPORT_RAISED, 0)} mm from hanging.`;
}

/** How the play of a joint is seen best; null where no way frees it. */
export function bestWay(support: Support | null, joint: HeldPart | null): string {
  if (!support || !joint || joint.by === "nothing")
    return "No way of holding the car frees it: judge it taken apart, or by its signs.";
  const hold =
    support.kind === "under"
      ? `Support the ${spaced(support.part)} outboard`
      : support.kind === "hanging"
        ? "Let the wheel hang"
        : "Leave the car on its wheels";
  if (joint.by === "hand") return `${hold} and rock the wheel, ${rockWords[joint.rock]}.`;
  if (joint.by === "bar") return `${hold} and set a bar at the joint: a rock of the wheel does not reach it.`;
  return `${hold} and try both: rock with ${rockWords[joint.rock]}, then a bar. Which of them opens it is too close to call.`;
}

/** The joint that is pressed most while the car stands, and how to see its play. */
export function holdSentence(
  layout: BodyLayout,
  standing: BodiesHeld | undefined,
  best: readonly { readonly part: string; readonly words: string }[],
): string {
  const most = standing?.parts.toSorted((a, b) => b.load - a.load)[0];
  if (most === undefined) return "No joint could be computed standing.";
  const way = best.find(({ part }) => part === most.part)?.words ?? "";
  return `Standing, the ${partInSentence(layout, most.part)} is pressed together most, by ${formatForce(most.load)}: ${seenWords[most.by]}. ${way}`;
}

/** What a rock moves, in words: "Hands at 3 and 9: 1.2 mm sound, 2.3 mm with it." */
export function rockSentence(
  rock: Rock,
  moved: { readonly sound: number; readonly faulty: number | null; readonly shut: boolean },
  tells: "yes" | "no" | "too-close" | null,
): string {
  const mm = (metres: number): string => `${formatNumber(1000 * metres, 1)} mm`;
  const head = `${rockWords[rock].charAt(0).toUpperCase()}${rockWords[rock].slice(1)}: the tyre's edge moves ${mm(moved.sound)} from side to side${moved.faulty === null ? "" : " sound"}`;
  if (moved.faulty === null) return `${head}.`;
  const told = {
    yes: "A person tells the difference.",
    no: "No person tells the difference.",
    "too-close": "Whether a person tells the difference is too close to call.",
  }[tells ?? "too-close"];
  const shut = moved.shut ? " Its play stays pressed shut." : "";
  return `${head}, ${mm(moved.faulty)} with the fault.${shut} ${told}`;
}

/** What holds of every force. */
export const holdWords = ({ elasticity, held }: BodiesFile) => ({
  howSure: `Each load with its 95 % from ${LAYOUT_DRAWS} layouts drawn with a fixed seed, every point by the file's deviation; what a hand moves also with the rates and the range of the fault. Where fewer than 97.5 % of them agree on what opens a joint, it is too close to call. What a hand and a bar bring is from memory.`,
  computedSo: `Weight of what moves with the wheel (${formatNumber(held?.unsprungMass ?? 0, 0)} kg), ground (${formatForce(elasticity.wheelLoad)} standing), spring, droop stop in the damper, support: static balance of all bodies, rigid. Both hands bring ${HAND_MEANS.rock} N·m to the tyre, a bar ${HAND_MEANS.bar} N to the joint. No bar of the axle, no gas force, no friction; not for air springs.`,
  cautions: [
    ...cautionsFor([1, 2]).map(({ text }) => text),
    "A support under a part takes the load off a joint and holds nothing else: nobody goes under a car that it carries.",
    "The vehicle maker's way of holding this very car and the maker's limits come first, and the law of the place where it is stricter.",
  ],
});
