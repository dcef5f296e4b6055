import type { BranchEnd } from "#engines/linkage";
import { mmFromMetres } from "#quantity";
import { partInSentence } from "../bodies/bodies-words.ts";
import { engineName } from "../fault/corner-model.ts";
import type { CornerOfCar, RigidCorner } from "../fault/corner-of-car.ts";

/** Links are looked at for locking so far from ride height, metres of wheel travel. */
const REACH = 0.2;
/** Joints that take less than this of the largest force where the travel ends only guide. */
const LOCKS = 0.3;
const MOST_KEPT = 8;

/** Joints of the mechanism that are no links. */
const OTHER_JOINTS: Readonly<Record<string, string>> = { strut: "strut", trailing_arm: "trailing arm" };

/** "a", "a and b", "a, b and c". */
const joinWords = (words: readonly string[]): string =>
  words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;

type Ends = ReturnType<RigidCorner["findEnds"]>;

/** Ends already found, by the points they hang on: the same corner is asked again at every move of a slider. */
const found = new Map<string, Ends>();

function endsOf({ assembly, rigid }: CornerOfCar): Ends {
  const { links, strut, trailingArm, bodies, wheel } = assembly;
  const key = JSON.stringify([links, strut, trailingArm, bodies?.layout, wheel]);
  const known = found.get(key);
  if (known) return known;
  const ends = rigid("centre-height").findEnds(REACH);
  if (found.size >= MOST_KEPT) found.clear();
  found.set(key, ends);
  return ends;
}

/** Where the links of a corner lock, rack at rest, and where its stops end the travel, in one or two sentences. */
export function bindingWords(corner: CornerOfCar): string {
  const { assembly } = corner;
  const { low, high } = endsOf(corner);
  const { droopStop, bumpStop } = assembly;
  const mm = (metres: number): string => `${mmFromMetres(Math.abs(metres)).toFixed(0)} mm`;
  const stops = `its stops end the travel at ${mm(droopStop)} of droop and ${mm(bumpStop)} of bump`;
  const labels = new Map(assembly.links.map((link) => [engineName(link.name), link.label.toLowerCase()]));
  const locked = ([end, way, stop]: readonly [BranchEnd | null, string, number]): string[] => {
    if (!end) return [];
    const joints = end.joints
      .filter(({ share }) => share >= LOCKS)
      .map(({ joint }) =>
        assembly.bodies
          ? partInSentence(assembly.bodies.layout, joint)
          : (labels.get(joint) ?? OTHER_JOINTS[joint] ?? joint),
      );
    const early = Math.abs(end.at) < stop ? ", before its stop" : "";
    return [`at ${mm(end.at)} of ${way}${early}, in the ${joinWords(joints)}`];
  };
  const places = [locked([low, "droop", droopStop]), locked([high, "bump", bumpStop])].flat();
  return places.length === 0
    ? `No link locks within ${mm(REACH)} of ride height; ${stops}.`
    : `The links lock ${places.join("; ")}. On the car ${stops}.`;
}
