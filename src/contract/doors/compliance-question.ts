import type { FaultQuestion } from "#casework";
import { subtract, type Vector } from "#numeric";
import { degreesFromRadians, perDegreeFromPerRadian } from "#quantity";
import {
  assembleCorner,
  axleAndSide,
  type CornerJoint,
  clockingOfDirection,
  type Family,
  positionsOf,
  STRUT_TOP,
  TRAILING_ARM,
} from "#vehicle";
import { formatCorner, formatSeat } from "./corner-question.ts";

/**
 * The question of a page as the JSON that `linkage.compliance` takes, so that every figure can be asked again at the
 * door: the corner of the family on its own side, contact height held, the fault with `factor` of the sound rate
 * (torn or firmer) or its play. `factor` null asks for the sound corner. Loads: the asked one.
 */
export function formatComplianceQuestion(
  family: Family,
  question: FaultQuestion,
  factor: number | null,
): Record<string, unknown> {
  const a = assembleCorner(family, question.corner);
  // The top mount of a strut has no axis of its own: its line is that.
  const rates = (j: CornerJoint, line: Vector | null): Record<string, unknown> | null =>
    j.radial === null
      ? null
      : {
          radial_n_per_mm: j.radial / 1000,
          ...(j.axial !== null && j.axis && !line ? { axial_n_per_mm: j.axial / 1000, axis: j.axis } : {}),
          ...(j.voided
            ? {
                voided_n_per_mm: j.voided.rate / 1000,
                clocking_deg: degreesFromRadians(
                  clockingOfDirection(line ?? j.axis ?? j.voided.through, j.voided.through),
                ),
              }
            : {}),
          ...(j.conical !== null ? { conical_nm_per_deg: perDegreeFromPerRadian(j.conical) } : {}),
          ...(j.torsional !== null ? { torsional_nm_per_deg: perDegreeFromPerRadian(j.torsional) } : {}),
        };
  const rubber: Record<string, unknown>[] = [];
  const push = (entry: Record<string, unknown>, joint: CornerJoint, line: Vector | null = null): void => {
    const r = rates(joint, line);
    if (r) rubber.push({ ...entry, ...r });
  };
  for (const l of a.links) {
    push({ link: l.name, end: "inner" }, l.innerJoint);
    push({ link: l.name, end: "outer" }, l.outerJoint);
  }
  if (a.strut) push({ link: "strut_top" }, a.strut.topMount, subtract(a.strut.top.at, a.strut.axisPoint.at));
  if (a.trailingArm) push({ link: "trailing_arm" }, a.trailingArm.bushJoint);
  const { condition } = question;
  return {
    ...formatCorner(a, axleAndSide(question.corner).side),
    spring: { ...formatSeat(a, a.spring), rate_n_per_mm: a.spring.rate / 1000 },
    rubber,
    members: a.links.flatMap((l) => (l.memberRate === null ? [] : [{ link: l.name, n_per_mm: l.memberRate / 1000 }])),
    wheel_load_n: a.wheelLoad,
    hold: "contact_height",
    faults: factor === null ? [] : faultsOf(family, question, factor),
    loads: [
      {
        lateral_n: condition.lateral,
        braking_n: condition.braking,
        drive_n: condition.drive,
        contact_rise_mm: condition.contactRise * 1000,
      },
    ],
  };
}

function faultsOf(family: Family, question: FaultQuestion, factor: number): Record<string, unknown>[] {
  const position = positionsOf(family).find((p) => p.id === question.position);
  const joint = position?.joint;
  if (!joint) return [];
  const link = joint.link === STRUT_TOP ? "strut_top" : joint.link === TRAILING_ARM ? "trailing_arm" : joint.link;
  const a = assembleCorner(family, question.corner);
  const own = a.links.find((l) => l.name === joint.link);
  const names =
    own && joint.end === "outer" && own.arm !== null
      ? a.links.filter((l) => l.arm === own.arm).map((l) => l.name)
      : [link];
  return names.map((n) =>
    question.fault.kind === "loose"
      ? { link: n, kind: "play", total_mm: question.fault.play * 1000 }
      : { link: n, kind: "soft", end: joint.end, factor },
  );
}
