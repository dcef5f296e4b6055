export { FAMILY_FORMAT, type FamilySheet, familySheet } from "./family-schema.ts";
export { type ParsedFamily, parseFamily, parseFamilyText } from "./parse-family.ts";
