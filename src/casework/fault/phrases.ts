import type { CornerAssembly, Position, Side } from "#vehicle";
import type { Condition, RubberFault } from "../fault-effect.ts";
import { formatNumber } from "./format-figure.ts";

/** "rear left", in the order a workshop says it. */
export const cornerWords = (axle: string, side: Side): string => `${axle} ${side}`;

const kn = (newtons: number): string => formatNumber(Math.abs(newtons) / 1000, 1);

/** The forces of a condition, for the beginning of a sentence; "Standing still" without any. */
export function conditionWords(condition: Condition): string {
  const parts: string[] = [];
  if (condition.braking > 0) parts.push(`${kn(condition.braking)} kN of braking at this wheel`);
  if (condition.braking < 0) parts.push(`${kn(condition.braking)} kN pushing this wheel forward`);
  if (condition.drive !== 0)
    parts.push(
      `${kn(condition.drive)} kN of drive ${condition.drive > 0 ? "" : "backward "}at this wheel`.replace("  ", " "),
    );
  if (condition.lateral !== 0)
    parts.push(`${kn(condition.lateral)} kN of side force toward the ${condition.lateral > 0 ? "left" : "right"}`);
  return parts.length === 0 ? "Standing without any force" : `Under ${parts.join(" and ")}`;
}

/** What stands at the position: "the torn bush", "the loose joint", "the firmer bush". */
export function faultWords(position: Position, fault: RubberFault): string {
  const thing = position.kind === "ball-joint" ? "joint" : position.kind === "strut-mount" ? "top mount" : "bush";
  const softer = fault.kind === "firmer" && "factor" in fault && fault.factor < 1;
  return `${softer ? "softer" : fault.kind} ${thing}`;
}

/** Toe as a direction: positive is in. */
export const inOrOut = (toe: number): string => (toe >= 0 ? "in" : "out");

/**
 * What the driver notices when a wheel turns further in (positive) or out, as far as the direction alone decides it.
 * A left wheel that turns in points right; a front wheel takes the car along, a rear wheel turns the tail and so the
 * nose the other way (rigid-body argument, own reasoning; how much is felt is not computed).
 */
export function noticedWords(axle: "front" | "rear", side: Side, toe: number, condition: Condition): string {
  const pointsRight = (side === "left") === toe > 0;
  if (condition.braking === 0 && condition.drive === 0 && condition.lateral === 0) return "";
  const longitudinal = condition.braking !== 0 || condition.drive !== 0;
  if (longitudinal) {
    const goesRight = axle === "front" ? pointsRight : !pointsRight;
    return `The car ${axle === "front" ? "pulls" : "steps"} to the ${goesRight ? "right" : "left"}.`;
  }
  const outward = pointsRight === condition.lateral > 0;
  if (axle === "rear")
    return outward
      ? "In that bend the tail steers outward and feels loose."
      : "In that bend the tail steers inward and the car answers later.";
  return outward
    ? "In that bend the car runs wide and wants more steering."
    : "In that bend the car turns in more sharply.";
}

/** Layout in words, for "computed so". */
export function layoutWords(a: CornerAssembly): string {
  if (a.bodies) return `${a.bodies.layout.name}: ${a.bodies.layout.bodies.length} moving bodies`;
  const counts = ["no", "one", "two", "three", "four", "five"];
  const links = `${counts[a.links.length] ?? a.links.length} links`;
  if (a.strut) return `A strut with ${links}`;
  if (a.trailingArm) return `A trailing arm with ${links}`;
  return `${links.charAt(0).toUpperCase()}${links.slice(1)}`;
}

/** Percent without decimals. */
export const percent = (share: number): string => `${Math.round(share * 100)}`;

export const originWords: Readonly<Record<string, string>> = {
  template: "from the template",
  invented: "invented",
  drawing: "from a drawing",
  "level-plane": "measured over a level plane",
  tape: "measured by tape",
  bench: "measured on the bench",
  maker: "the maker's",
  practice: "common practice, no source",
  guess: "a guess",
};
