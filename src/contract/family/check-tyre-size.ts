import type { Finding } from "#numeric";
import { mmFromMetres } from "#quantity";
import { parseTyreSize } from "#vehicle";
import { familyFinding } from "./family-finding.ts";
import { asObject, type LooseAxle } from "./loose-axle.ts";

/**
 * How far a measured figure may lie from the one the size says, as a share (invented: more than makers and rims make,
 * less than one size to the next).
 */
const WIDTH_SHARE = 0.06;
const RADIUS_SHARE = 0.03;
const RIM_SHARE = 0.012;

const HINT = "Correct the one that is wrong, or leave the figures out: the size says them by itself.";
const round = (mm: number): number => Math.round(mm * 10) / 10;

/** A tyre size and the width, free radius and rim diameter given beside it that are those of another tyre. */
export function checkTyreSize(axle: LooseAxle): Finding[] {
  const wheel = asObject(axle.raw.wheel);
  const size = typeof wheel.tyre_size === "string" ? parseTyreSize(wheel.tyre_size) : null;
  if (!size) return [];
  const path = `${axle.name}.wheel`;
  const compared = [
    ["tyre_width_mm", mmFromMetres(size.width), WIDTH_SHARE],
    ["free_radius_mm", mmFromMetres(size.freeRadius), RADIUS_SHARE],
    ["rim_diameter_mm", mmFromMetres(size.rimDiameter), RIM_SHARE],
  ] as const;
  const apart = compared.flatMap(([key, said, share]) => {
    const given = wheel[key];
    return typeof given === "number" && Math.abs(given - said) > share * said ? [{ key, said, given }] : [];
  });
  if (apart.length > 1) {
    const figures = apart.map(({ key, said, given }) => `${key} ${given} (the size says ${round(said)})`).join(", ");
    return [
      familyFinding(
        "tyre-size-apart",
        `${path}.tyre_size`,
        wheel.tyre_size,
        `the size that goes with ${figures}`,
        HINT,
      ),
    ];
  }
  return apart.map(({ key, said, given }) =>
    familyFinding(
      "tyre-size-apart",
      `${path}.${key}`,
      given,
      `about ${round(said)} mm, as tyre_size ${String(wheel.tyre_size)} says`,
      HINT,
    ),
  );
}
