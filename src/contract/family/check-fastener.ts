import type { z } from "zod";
import type { Finding } from "#numeric";
import { familyFinding } from "./family-finding.ts";
import type { fastenerSheet } from "./work-schema.ts";

/** Torques and angles of a chassis from a plastic clip's screw to a drive-shaft nut; beyond them it is a slip (invented bounds). */
const TORQUE_NM: readonly [number, number] = [2, 500];
const ANGLE_DEG: readonly [number, number] = [10, 360];

/** Stages of a fastener: torques and angles that make sense, an angle only on top of a torque. */
export function checkFastener(use: z.infer<typeof fastenerSheet>, path: string): Finding[] {
  return (use.stages ?? []).flatMap((stage, index): Finding[] => {
    const at = `${path}.stages[${index}]`;
    if ("torque_nm" in stage) {
      const { torque_nm: torque } = stage;
      const [least, most] = TORQUE_NM;
      if (torque >= least && torque <= most) return [];
      const hint = torque > most ? "Is it in N·cm, or in kgf·cm?" : "Is it in kN·m, or in kgf·m?";
      return [familyFinding("torque-implausible", `${at}.torque_nm`, torque, `${least} to ${most} N·m`, hint)];
    }
    const { angle_deg: angle } = stage;
    const [least, most] = ANGLE_DEG;
    const found =
      angle >= least && angle <= most
        ? []
        : [
            familyFinding(
              "angle-implausible",
              `${at}.angle_deg`,
              angle,
              `${least} to ${most} degrees`,
              "Is it in radians or in turns?",
            ),
          ];
    if (index === 0)
      found.push(
        familyFinding(
          "angle-without-torque",
          at,
          `${angle} degrees`,
          "a torque before the angle",
          "Enter the joining torque first.",
        ),
      );
    return found;
  });
}
