import { type CornerAssembly, layoutDoubt, type Position } from "#vehicle";
import { cautionsFor } from "../cases/cautions.ts";
import { formatNumber } from "../fault/format-figure.ts";
import type { BestWay, Held, HeldJoint, HeldState, Hold, SeenBy } from "../hold.ts";
import { HAND_MEANS, SUPPORT_RAISED, SUPPORT_SHARE } from "./held-corner.ts";
import { DRAWS } from "./sample-holds.ts";

const LEAST_FORCE = 10;

/** Newtons, 0 or more, as a workshop reads them: "8.2 kN", "340 N", "under 10 N". */
export const formatForce = (newtons: number): string => {
  if (newtons < LEAST_FORCE) return `under ${LEAST_FORCE} N`;
  return newtons >= 1000
    ? `${formatNumber(newtons / 1000, newtons >= 10_000 ? 0 : 1)} kN`
    : `${formatNumber(Math.round(newtons / 10) * 10, 0)} N`;
};

/** Name of the part a support stands under. */
export function partName(a: CornerAssembly, part: string): string {
  const link = a.links.find(({ name }) => name === part);
  return (link?.arm ?? link?.label ?? part).replaceAll("-", " ").toLowerCase();
}

export function heldTitle(a: CornerAssembly, held: Held): string {
  if (held.kind === "ride") return "Standing";
  return held.kind === "hanging" ? "Hanging" : `Under the ${partName(a, held.part)}`;
}

/** How a corner is brought into a state. */
export function howToHold(a: CornerAssembly, held: Held): string {
  const raised = `${formatNumber(1000 * SUPPORT_RAISED, 0)} mm`;
  if (held.kind === "ride") return "On its wheels, at ride height.";
  if (held.kind === "hanging")
    return "Car lifted and on stands under the maker's points, this wheel free and hanging at its stop.";
  const steered = a.links.find(({ name }) => name === held.part)?.steered
    ? " For comparison only: a steered link is no place to lift at."
    : "";
  return `Car lifted and on stands as for hanging; then a second jack under the ${partName(a, held.part)} as far out as it bears (${formatNumber(100 * SUPPORT_SHARE, 0)} % of the way to its outer joint), raised ${raised} from hanging.${steered}`;
}

const rockWords = { "12-6": "hands at 12 and 6", "3-9": "hands at 3 and 9" } as const;

const seenWords: Readonly<Record<SeenBy, string>> = {
  hand: "a hand on the wheel opens its play",
  bar: "only a bar at the joint opens its play",
  nothing: "its play stays pressed shut",
  "too-close": "whether its play opens is too close to call",
};

/** What is seen of a joint in a state. */
export const seenInWords = ({ by, rock }: Pick<HeldJoint, "by" | "rock">): string =>
  by === "hand" ? `a rock with ${rockWords[rock]} opens its play` : seenWords[by];

/** How the play of a joint is seen best. */
export function bestWords(a: CornerAssembly, state: HeldState | null, joint: HeldJoint | null): string {
  if (!state || !joint) return "No way of holding the car frees it: judge it taken apart, or by its signs.";
  const hold =
    state.held.kind === "under"
      ? `Support the ${partName(a, state.held.part)} outboard`
      : state.held.kind === "hanging"
        ? "Let the wheel hang"
        : "Leave the car on its wheels";
  if (joint.by === "hand") return `${hold} and rock the wheel, ${rockWords[joint.rock]}.`;
  if (joint.by === "bar") return `${hold} and set a bar at the joint: a rock of the wheel does not reach it.`;
  return `${hold} and try both: rock with ${rockWords[joint.rock]}, then a bar. Which of them opens it is too close to call.`;
}

/** "Spring link, outer joint" as it is said in a sentence: "outer joint of the spring link". */
export function jointWords({ label }: Pick<Position, "label">): string {
  const lower = `${label.charAt(0).toLowerCase()}${label.slice(1)}`;
  const comma = lower.lastIndexOf(", ");
  return comma < 0 ? lower : `${lower.slice(comma + 2)} of the ${lower.slice(0, comma)}`;
}

interface SentenceFacts {
  readonly assembly: CornerAssembly;
  readonly positions: readonly Position[];
  readonly states: readonly HeldState[];
  readonly best: readonly BestWay[];
}

/** The outer joint that is pressed most while the car stands, and how to see its play. */
export function describeHold({ assembly, positions, states, best }: SentenceFacts): string {
  const standing = states.find(({ held }) => held.kind === "ride");
  const outer = standing?.joints.filter(
    ({ position }) => positions.find(({ id }) => id === position)?.joint?.end === "outer",
  );
  const most = outer?.toSorted((a, b) => b.load - a.load)[0];
  const position = positions.find(({ id }) => id === most?.position);
  const way = best.find((one) => one.position === most?.position);
  if (!most || !position || !way) return "No joint of this corner could be computed standing.";
  const onStrut = assembly.strut !== null && assembly.spring.seat.on === "knuckle";
  const first = onStrut
    ? `Standing, the strut carries the car; the ${jointWords(position)} is pressed by ${formatForce(most.load)} all the same`
    : `Standing, the ${jointWords(position)} carries the car, pressed together by ${formatForce(most.load)}`;
  return `${first}: ${seenWords[most.by]}. ${way.words}`;
}

/** What holds of every figure of a corner's loads. */
export function holdNotes(a: CornerAssembly): Pick<Hold, "howSure" | "computedSo" | "cautions"> {
  return {
    howSure: `${layoutDoubt(a, [a.axle])}Each load with its 95 % from ${DRAWS} corners drawn with a fixed seed, every hard point by its own deviation. Where fewer than 97.5 % of them agree on what opens a joint, it is too close to call. What a hand and a bar bring is from memory.`,
    computedSo: `Weight of what moves with the wheel (${formatNumber(a.unsprungMass, 0)} kg), ground (${formatForce(a.wheelLoad)} standing), spring, droop stop in the damper, support: static balance of the rigid corner. Both hands bring ${HAND_MEANS.rock} N·m to the tyre, a bar ${HAND_MEANS.bar} N to the joint. No bar of the axle, no gas force, no friction; not for air springs.`,
    cautions: [
      ...cautionsFor([1, 2]).map(({ text }) => text),
      "A support under a part takes the load off a joint and holds nothing else: nobody goes under a car that it carries.",
      "The vehicle maker's way of holding this very car and the maker's limits come first, and the law of the place where it is stricter.",
    ],
  };
}
