import type { Finding } from "#numeric";
import type { CornerAssembly, Position } from "#vehicle";
import { jointOf } from "../fault/corner-model.ts";
import type { HandQuestion } from "../hold.ts";

/** More than two people bring to a wheel or a bar (invented). */
export const MOST_MOMENT = 400;
export const MOST_PUSH = 500;
export const MOST_BAR = 1500;
const MOST_PLAY = 0.02;

/** Everything that keeps a hand test from being computed; empty where nothing does. */
export function checkHandQuestion(question: HandQuestion, position: Position | null, a: CornerAssembly): Finding[] {
  const { corner, held, fault, way } = question;
  const joint = position ? jointOf(a, position) : null;
  if (!position || !joint || `${position.axle}-${position.side}` !== corner)
    return [
      {
        code: "unknown-position",
        path: "position",
        got: question.position,
        needed: `the id of a joint of the ${corner.replace("-", " ")} corner`,
        hint: "Ids read like rear-left/trailing-link/inner-bush.",
      },
    ];
  const findings: Finding[] = [];
  if (fault.kind === "torn" && !joint.tornShare[fault.grade])
    findings.push({
      code: "no-torn-share",
      path: "fault.grade",
      got: String(fault.grade),
      needed: `a grade with a torn share on file: ${Object.keys(joint.tornShare).join(", ") || "none"}`,
      hint: "torn_share says how much of its rate is left; look at the joint as loose instead.",
    });
  if (held.kind === "ride" && way.kind !== "bar")
    findings.push({
      code: "wheel-on-ground",
      path: "way",
      got: "a hand on a wheel that stands on the ground",
      needed: "a wheel that hangs or is supported, or a bar at the joint",
      hint: "Choose another way of holding the car, or the bar.",
    });
  const range = (path: string, value: number, high: number, unit: string, factor = 1): void => {
    if (!(value > 0 && value <= high))
      findings.push({
        code: "out-of-range",
        path,
        got: `${value * factor} ${unit}`,
        needed: `more than 0, at most ${high * factor} ${unit}`,
        hint: "",
      });
  };
  if (fault.kind === "loose") range("fault.play", fault.play, MOST_PLAY, "mm", 1000);
  if (way.kind === "rock") range("way.moment", way.moment, MOST_MOMENT, "N m");
  else range("way.force", way.force, way.kind === "bar" ? MOST_BAR : MOST_PUSH, "N");
  return findings;
}
