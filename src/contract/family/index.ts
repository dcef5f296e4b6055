export { checkFamily, LARGEST_FILE_BYTES } from "./check-family.ts";
export { type FamilyCode, familyCodes } from "./codes.ts";
export { FAMILY_FORMAT, type FamilySheet, familySheet } from "./family-schema.ts";
export { formatFamily } from "./format-family.ts";
export {
  type ParsedFamily,
  parseFamily,
  parseFamilyText,
  parseKeptFamily,
  parseKeptFamilyText,
} from "./parse-family.ts";
export { familyFieldsSchema, familyJsonSchema } from "./published-schema.ts";
export { correctedSilhouette, silhouetteOfFamily } from "./silhouette-of-family.ts";
export { parseSilhouette, type SilhouetteSheet, silhouetteSheet } from "./silhouette-sheet.ts";
export { usualPointSdMm } from "./usual-point-sd.ts";
export { workCodes } from "./work-codes.ts";
