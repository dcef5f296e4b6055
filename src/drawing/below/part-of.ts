import type { Axle, Position } from "#vehicle";

/** Name of a drawn part: what a mark on a position makes heavier, hatched or selected. */
export type PartName = string;

/** The drawn part a link belongs to: its arm where it is one leg of an arm, else itself. */
export function partOfLink(axle: Axle, linkName: string): PartName {
  const link = axle.links.find((candidate) => candidate.name === linkName);
  return link?.arm ?? linkName;
}

const PART_OF_KIND: Readonly<Partial<Record<Position["kind"], PartName>>> = {
  spring: "spring",
  damper: "damper",
  "strut-mount": "damper",
  "bump-stop": "damper",
  bearing: "hub",
  "hub-face": "hub",
  "bar-link": "bar-link",
  "bar-bush": "bar",
  "drive-shaft": "drive-shaft",
  hose: "hose",
  disc: "disc",
  pads: "pads",
  caliper: "caliper",
  tyre: "tyre",
  wheel: "tyre",
  "wheel-bolts": "hub",
  rack: "rack",
  "rack-mount": "rack",
  "steering-play": "rack",
  "subframe-mount": "subframe",
  "differential-mount": "final-drive",
  "level-sensor": "level-sensor",
};

/** The drawn part a position lies on; null where it lies on nothing that is drawn. */
export function partOf(axle: Axle, position: Position): PartName | null {
  // Of several bodies a place bears the name of the arm or link it sits on.
  if (position.joint !== null && axle.bodies !== undefined) return position.item;
  if (position.joint !== null) return partOfLink(axle, position.joint.link);
  if (position.item === "damper") return "damper";
  return PART_OF_KIND[position.kind] ?? null;
}
