import type { Finding } from "#numeric";
import { axleAndSide, type Family, type Position, positionsOf } from "#vehicle";
import type { FaultQuestion } from "../fault-effect.ts";
import { type CornerKnown, jointOf } from "./corner-model.ts";
import { checkFirmer } from "./firmer-rubber.ts";

/** More force at one wheel than any road car's tyre passes on, N. */
const MOST_FORCE = 20_000;
const MOST_PLAY = 0.02;

/** The position of a question, or what is wrong with asking it. */
export function findPosition(family: Family, question: FaultQuestion): Position | null {
  return positionsOf(family).find((p) => p.id === question.position) ?? null;
}

/** Everything that keeps a question from being computed; empty where nothing does. */
export function checkQuestion(question: FaultQuestion, position: Position, model: CornerKnown): Finding[] {
  const findings: Finding[] = [];
  const { axle, side } = axleAndSide(question.corner);
  if (position.axle !== axle || position.side !== side)
    findings.push({
      code: "not-consistent",
      path: "corner",
      got: question.corner,
      needed: `the corner of ${position.id}`,
      hint: "",
    });
  const joint = jointOf(model.assembly, position);
  const { fault, condition } = question;
  if (!joint)
    findings.push({
      code: "no-rubber-here",
      path: "position",
      got: position.id,
      needed: "a joint of the linkage",
      hint: "What this position does to the car is not computed by the linkage.",
    });
  else if (fault.kind !== "loose" && joint.radial === null)
    findings.push({
      code: "no-rubber-here",
      path: "position",
      got: `${position.label}: no rate on file`,
      needed: "a joint with a rate",
      hint: "Enter its rates in the family sheet, or mark it loose.",
    });
  if (fault.kind === "firmer" && "hardness" in fault && joint?.kind === "ball-joint")
    findings.push({
      code: "no-rubber-here",
      path: "fault.hardness.to",
      got: `a hardness at ${position.label}`,
      needed: "a part of rubber",
      hint: "A ball joint has no hardness of rubber; give how many times its rate is.",
    });
  if (fault.kind === "torn" && joint && joint.radial !== null && !joint.tornShare[fault.grade])
    findings.push({
      code: "no-torn-share",
      path: "fault.grade",
      got: String(fault.grade),
      needed: `a grade with a torn share on file: ${Object.keys(joint.tornShare).join(", ") || "none"}`,
      hint: "torn_share says how much of its rate is left.",
    });
  if (
    fault.kind === "loose" &&
    !model.assembly.bodies &&
    (position.joint === null || !model.assembly.links.some((l) => l.name === position.joint?.link))
  )
    findings.push({
      code: "no-play-here",
      path: "fault.kind",
      got: "loose",
      needed: "a joint of a link",
      hint: "A mount can be torn or firmer; play is told along a link.",
    });
  const range = (
    path: string,
    value: number,
    low: number,
    high: number,
    unit: string,
    factor: number,
    hint = "",
  ): void => {
    if (!(value >= low && value <= high))
      findings.push({
        code: "out-of-range",
        path,
        got: `${value * factor} ${unit}`,
        needed: `${low * factor} to ${high * factor} ${unit}`,
        hint,
      });
  };
  if (fault.kind === "loose") range("fault.play", fault.play, 1e-6, MOST_PLAY, "mm", 1000);
  if (fault.kind === "firmer") findings.push(...checkFirmer(fault, joint?.hardness ?? null));
  for (const key of ["braking", "lateral", "drive"] as const)
    range(
      `condition.${key}`,
      condition[key],
      -MOST_FORCE,
      MOST_FORCE,
      "N",
      1,
      "A firm stop is about 2000 N at one wheel.",
    );
  range("condition.contactRise", condition.contactRise, -0.2, 0.2, "mm", 1000);
  range("condition.rack", condition.rack, -0.15, 0.15, "mm", 1000);
  return findings;
}
