import { mmFromMetres } from "#quantity";
import { type BodyLayout, CAR_BODY } from "#vehicle";
import type { BodiesFault, BodiesFile, RubberPlace } from "../bodies.ts";
import { firmerWords } from "../fault/firmer-rubber.ts";
import { formatNumber, writtenDecimals } from "../fault/format-figure.ts";

const spaced = (name: string): string => name.replaceAll("-", " ");

/** What people call a joint or link: its label, else its name. */
export function partWords(layout: BodyLayout, part: string): string {
  const found = [...layout.joints, ...layout.links].find(({ name }) => name === part);
  return found?.label ?? spaced(part);
}

/** An end of a link by what it is on: "end on the carrier arm". */
export function endWords(layout: BodyLayout, link: string, end: "from" | "to"): string {
  const on = layout.links.find(({ name }) => name === link)?.[end].on ?? "";
  return `end on the ${on === CAR_BODY ? "body" : spaced(on)}`;
}

/** In a list: "arm, front bush", "toe link, end on the knuckle". */
export const rubberWords = (layout: BodyLayout, { part, end }: RubberPlace): string =>
  end === null ? partWords(layout, part) : `${partWords(layout, part)}, ${endWords(layout, part, end)}`;

/** A part in a sentence; "Arm, front bush" is "front bush of the arm" there. */
export function partInSentence(layout: BodyLayout, part: string): string {
  const words = partWords(layout, part);
  const lower = `${words.charAt(0).toLowerCase()}${words.slice(1)}`;
  const comma = lower.lastIndexOf(", ");
  return comma < 0 ? lower : `${lower.slice(comma + 2)} of the ${lower.slice(0, comma)}`;
}

/** In a sentence: "the front bush of the arm", "the toe link's end on the knuckle". */
const placeInSentence = (layout: BodyLayout, { part, end }: RubberPlace): string =>
  end === null
    ? `the ${partInSentence(layout, part)}`
    : `the ${partInSentence(layout, part)}'s ${endWords(layout, part, end)}`;

/** "1.5 times", "1.5 to 2 times" */
const timesWords = (low: number, high: number): string => {
  const said = (x: number): string => formatNumber(x, Math.min(2, writtenDecimals(x)));
  return low === high ? `${said(low)} times` : `${said(low)} to ${said(high)} times`;
};

/** "firmer, 55 to 65 Shore A" */
const hardnessWords = ({ hardness }: Extract<BodiesFault, { readonly hardness: unknown }>): string =>
  firmerWords({ kind: "firmer", hardness });

export const playWords = (play: number): string =>
  `${formatNumber(mmFromMetres(play), Math.min(2, writtenDecimals(mmFromMetres(play))))} mm`;

/** After "with": "the front bush of the arm torn", "1 mm of play in the toe link". */
export function faultInSentence(layout: BodyLayout, fault: BodiesFault): string {
  if (fault.kind === "loose") return `${playWords(fault.play)} of play in the ${partInSentence(layout, fault.part)}`;
  const place = placeInSentence(layout, fault.place);
  if (fault.kind === "torn") return `${place} torn`;
  return "hardness" in fault
    ? `${place} ${hardnessWords(fault)}`
    : `${place} ${timesWords(fault.low, fault.high)} as firm`;
}

/** On a line of a curve, whose place the sentence says: "torn", "loose 1 mm", "1.5 times as firm", "firmer". */
export function faultOnLine(fault: BodiesFault): string {
  if (fault.kind === "loose") return `loose ${playWords(fault.play)}`;
  if (fault.kind === "torn") return "torn";
  // The hardness of both parts is too long for a line.
  return "hardness" in fault ? "firmer" : `${timesWords(fault.low, fault.high)} as firm`;
}

/** Where a named point is, by the joint or the end of a link that stands there; its name where none does. */
export function pointWords(layout: BodyLayout, point: string): string {
  const at = layout.points[point]?.join();
  const isThere = (name: string): boolean => layout.points[name]?.join() === at;
  const joint = layout.joints.find((one) => one.kind !== "slider" && isThere(one.at));
  if (joint) return partInSentence(layout, joint.name);
  for (const { name, from, to } of layout.links) {
    if (isThere(from.at)) return `${partInSentence(layout, name)}'s ${endWords(layout, name, "from")}`;
    if (isThere(to.at)) return `${partInSentence(layout, name)}'s ${endWords(layout, name, "to")}`;
  }
  return spaced(point);
}

/** What is doubtful in a file and computed all the same, one sentence after the other; null where nothing is. */
export const doubtWords = ({ doubts }: Pick<BodiesFile, "doubts">): string | null =>
  doubts.length === 0 ? null : doubts.map(({ path, got, hint }) => `${path}, ${got}: ${hint}`).join(" ");

/** A rate by its name, "<joint>" or "<link>.<end>", in words. */
export function placeOfRate(layout: BodyLayout, name: string): string {
  const end = name.endsWith(".from") ? "from" : name.endsWith(".to") ? "to" : null;
  const part = end === null ? name : name.slice(0, -end.length - 1);
  return end === null
    ? partInSentence(layout, part)
    : `${partInSentence(layout, part)}'s ${endWords(layout, part, end)}`;
}

/** A point or a rate by its name, in words. */
export const partOrPointWords = (layout: BodyLayout, name: string): string =>
  layout.points[name] === undefined ? placeOfRate(layout, name) : pointWords(layout, name);

/** What a change is called: "torn less sound". */
export const lessSoundWords = (fault: BodiesFault): string => `${fault.kind} less sound`;
