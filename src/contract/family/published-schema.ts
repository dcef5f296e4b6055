import { z } from "zod";
import { familySheet } from "./family-schema.ts";

/** The published JSON Schema (draft 2020-12) of a family sheet; a copy stands in docs/family.schema.json. */
export function familyJsonSchema(): Record<string, unknown> {
  return { ...z.toJSONSchema(familySheet, { target: "draft-2020-12", io: "input" }) };
}
