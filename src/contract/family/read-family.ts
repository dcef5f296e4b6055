import { metresFromMm } from "#quantity";
import type { Family } from "#vehicle";
import type { FamilySheet } from "./family-schema.ts";
import { readAxle } from "./read-axle.ts";
import { readWork } from "./read-work.ts";

/** A family sheet that has been checked, as the program computes with it. */
export function readFamily(sheet: FamilySheet): Family {
  return {
    id: sheet.id,
    name: sheet.name,
    ...(sheet.from_year !== undefined && { fromYear: sheet.from_year }),
    ...(sheet.to_year !== undefined && { toYear: sheet.to_year }),
    invented: sheet.invented ?? false,
    ...(sheet.note !== undefined && { note: sheet.note }),
    ...(sheet.assumed !== undefined && { assumed: sheet.assumed }),
    wheelbase: metresFromMm(sheet.wheelbase_mm),
    kerbMass: sheet.kerb_mass_kg,
    frontWeightShare: sheet.front_weight_share,
    cgHeight: metresFromMm(sheet.cg_height_mm),
    front: readAxle("front", sheet.front),
    rear: readAxle("rear", sheet.rear),
    variants: sheet.variants ?? [],
    life: (sheet.life ?? []).map((one) => ({
      position: one.position,
      lowKm: one.low_km,
      middleKm: one.middle_km,
      highKm: one.high_km,
      source: one.source,
    })),
    work: sheet.work === undefined ? null : readWork(sheet.work),
  };
}
