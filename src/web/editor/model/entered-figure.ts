import type { SheetPath } from "./sheet-path.ts";
import { isKeyed, withSheetValue } from "./sheet-value.ts";

/** Figures of an axle by the keys that hold them, behind the name of the axle. */
const OF_AXLE: Readonly<Record<string, readonly string[]>> = {
  layout: ["layout"],
  track: ["track_mm"],
  "tyre-size": ["wheel.tyre_size"],
  height: ["wheel.centre_mm", "wheel.loaded_radius_mm"],
  "spring-rate": ["spring.rate_n_per_mm"],
  "unsprung-mass": ["unsprung_mass_kg"],
  "set-angles": ["wheel.camber_deg", "wheel.toe_deg"],
};

/** Which keys of the sheet hold a figure that can be an assumed one. */
export const HOLDERS: Readonly<Record<string, readonly string[]>> = {
  wheelbase: ["wheelbase_mm"],
  "kerb-mass": ["kerb_mass_kg"],
  "front-weight-share": ["front_weight_share"],
  "centre-of-mass-height": ["cg_height_mm"],
  "driven-axle": ["front.driven", "rear.driven", "front.drive_share", "rear.drive_share"],
  "brake-shares": ["front.brake_share", "rear.brake_share"],
  ...Object.fromEntries(
    ["front", "rear"].flatMap((axle) =>
      Object.entries(OF_AXLE).map(([figure, keys]) => [`${axle}-${figure}`, keys.map((key) => `${axle}.${key}`)]),
    ),
  ),
};

/** The sheet with what was entered at a place no longer called assumed. */
export const withEntered = (sheet: unknown, path: SheetPath): unknown => {
  const assumed = isKeyed(sheet) ? sheet.assumed : undefined;
  if (!Array.isArray(assumed)) return sheet;
  const place = path.join(".");
  const kept = assumed.filter(
    (figure) => !HOLDERS[String(figure)]?.some((key) => place === key || place.startsWith(`${key}.`)),
  );
  return kept.length === assumed.length
    ? sheet
    : withSheetValue(sheet, ["assumed"], kept.length === 0 ? undefined : kept);
};
