import { type MetresPerSecond, metresPerSecondFromKmPerHour } from "#quantity";
import type { AxleName } from "#vehicle";
import { symptoms } from "../suspects/symptom-table.ts";
import type { SymptomEntry } from "./documents.ts";
import { weighReasons } from "./judge-place.ts";
import type { PlaceFinding } from "./place-finding.ts";
import { seenReason } from "./reading-reasons.ts";
import { SIGNS_OF_FLUID_GONE } from "./signs.ts";

/** Complaints by which an owner feels that a hydraulic bush has lost its fluid: judder, and a pull (workshop-scale, from memory). */
const FELT_BY: readonly string[] = [
  "steering-wheel-shakes-under-braking",
  "brake-pedal-pulsates",
  "pulls-under-braking",
  "pulls-at-steady-speed",
  "pulls-or-tugs-under-power",
];

/** Repair first: leaked, and felt. */
const GRADE_WHERE_FELT = 3;

/** Of these, the complaints a wheel is felt by that shakes along the road. */
const SHAKES = FELT_BY.slice(0, 2);

/** Road speed at which the owner feels an axle shake under braking, the middle of what was said; null: nobody said. */
export function feltSpeed(complaints: readonly SymptomEntry[], axle: AxleName): MetresPerSecond | null {
  const said = complaints.find(
    ({ symptom, axle: felt, conditions }) =>
      SHAKES.includes(symptom) && conditions.speedKmh !== null && (felt === "unknown" || felt === axle),
  )?.conditions.speedKmh;
  return said ? metresPerSecondFromKmPerHour((said[0] + said[1]) / 2) : null;
}

/**
 * Findings with a lost fluid graded by whether the owner feels it: a leaked bush alone is planned, with judder or a pull it
 * is to be repaired first. Source: workshop-scale (from memory).
 * @param complaints what the owner came with
 */
export function gradeFeltFluidLoss(
  findings: readonly PlaceFinding[],
  complaints: readonly SymptomEntry[],
): readonly PlaceFinding[] {
  const felt = complaints.filter(({ symptom }) => FELT_BY.includes(symptom));
  if (felt.length === 0) return findings;
  return findings.map((finding) => {
    const here = felt.find(({ axle }) => axle === "unknown" || axle === finding.axle);
    const hasLeaked =
      finding.kind === "hydraulic-bush" && finding.looks?.signs.some((sign) => SIGNS_OF_FLUID_GONE.includes(sign));
    if (here === undefined || hasLeaked !== true) return finding;
    const label = symptoms.find(({ id }) => id === here.symptom)?.label ?? here.symptom;
    const reason = seenReason(
      null,
      `fluid lost, and the owner feels it: ${label.charAt(0).toLowerCase()}${label.slice(1)}`,
      GRADE_WHERE_FELT,
    );
    return { ...finding, ...weighReasons([...finding.reasons, reason]), caveat: finding.caveat };
  });
}
