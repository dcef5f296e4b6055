import type { Family } from "#vehicle";
import { exactMm } from "./exact-figure.ts";
import { FAMILY_FORMAT, type FamilySheet } from "./family-schema.ts";
import { type AxleFile, formatAxle } from "./format-axle.ts";
import { formatWork } from "./format-work.ts";

/** A family sheet as it is written: an axle of several bodies has no members of one knuckle. */
export type FamilyFile = Omit<FamilySheet, "front" | "rear"> & { readonly front: AxleFile; readonly rear: AxleFile };

/**
 * A family as it stands in a file.
 * @returns the sheet; parseFamily gives the same family back, to the double, for every family that came from a sheet or
 * a template. A length set by other arithmetic may have no double in mm that lands on it: then the nearest, one unit in
 * the last place away.
 */
export function formatFamily(family: Family): FamilyFile {
  return {
    format: FAMILY_FORMAT,
    id: family.id,
    name: family.name,
    ...(family.fromYear !== undefined && { from_year: family.fromYear }),
    ...(family.toYear !== undefined && { to_year: family.toYear }),
    invented: family.invented,
    ...(family.note !== undefined && { note: family.note }),
    ...(family.assumed !== undefined && { assumed: [...family.assumed] }),
    wheelbase_mm: exactMm(family.wheelbase),
    kerb_mass_kg: family.kerbMass,
    front_weight_share: family.frontWeightShare,
    cg_height_mm: exactMm(family.cgHeight),
    front: formatAxle(family.front),
    rear: formatAxle(family.rear),
    variants: family.variants.map(({ label, key, choices }) => ({
      label,
      key,
      choices: choices.map((choice) => ({ ...choice })),
    })),
    life: family.life.map((life) => ({
      position: life.position,
      low_km: life.lowKm,
      middle_km: life.middleKm,
      high_km: life.highKm,
      source: life.source,
    })),
    ...(family.work !== null && { work: formatWork(family.work) }),
  };
}
