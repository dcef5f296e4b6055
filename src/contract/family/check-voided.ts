import type { Finding } from "#numeric";
import { familyFinding } from "./family-finding.ts";
import type { LooseAxle } from "./loose-axle.ts";

const TURNING = ["conical_nm_per_deg", "torsional_nm_per_deg"] as const;

/** Voids and moments against turning of one joint: each with all it needs, and only where it means something. */
export function checkVoidedJoint(path: string, raw: Readonly<Record<string, unknown>>, axle: LooseAxle): Finding[] {
  const has = (key: string): boolean => raw[key] !== undefined;
  const found: Finding[] = [];
  const [voided, clocked] = [has("voided_n_per_mm"), has("clocking_deg")];
  if (voided !== clocked)
    found.push(
      familyFinding(
        "voids-without-clocking",
        `${path}.${voided ? "clocking_deg" : "voided_n_per_mm"}`,
        "nothing",
        voided
          ? "the angle at which the voids lie, in degrees"
          : "the rate through the voids, in newtons per millimetre",
        "Give both, or neither for a bush without voids.",
      ),
    );
  const turning = TURNING.filter(has);
  if (!voided && turning.length === 0) return found;
  const isStrutTop = path.endsWith(".top_mount");
  const needs = [...(isStrutTop ? [] : ["axis" as const]), "radial_n_per_mm" as const];
  for (const key of needs)
    if (!has(key))
      found.push(
        familyFinding(
          "voids-without-axis",
          `${path}.${key}`,
          "nothing",
          key === "axis"
            ? "the direction of the axis, [x, y, z]"
            : "the rate across the axis, in newtons per millimetre",
          "A ball joint or a rigid pivot has no voids and resists no turn.",
        ),
      );
  const free = isStrutTop
    ? turning.filter((key) => key === "torsional_nm_per_deg")
    : isArmBall(path, axle)
      ? turning
      : [];
  for (const key of free)
    found.push(
      familyFinding(
        "turn-not-resisted",
        `${path}.${key}`,
        raw[key],
        "nothing here",
        isStrutTop
          ? "The rod of a strut turns freely about its line."
          : "Several links of one arm meet in this joint: it is a ball, about which nothing resists.",
      ),
    );
  return found;
}

/** Whether the path is the outer joint of a link that shares its outer point with another. */
function isArmBall(path: string, axle: LooseAxle): boolean {
  const own = axle.links.findIndex((_, index) => path === `${axle.name}.links[${index}].outer_joint`);
  const outer = axle.links[own]?.outer?.join();
  return outer !== undefined && axle.links.some((link, index) => index !== own && link.outer?.join() === outer);
}
