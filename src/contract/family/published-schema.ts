import { z } from "zod";
import { familySheet } from "./family-schema.ts";

interface AxleNode extends Record<string, unknown> {
  readonly required: readonly string[];
}

/** Keys of an axle with one knuckle, which one with bodies has not. */
const ONE_KNUCKLE = ["links", "spring", "damper"];

/** The schema of a sheet both of whose axles have one knuckle: every key the editor has a field for. */
export function familyFieldsSchema(): Record<string, unknown> {
  return { ...z.toJSONSchema(familySheet, { target: "draft-2020-12", io: "input" }) };
}

/** The published JSON Schema (draft 2020-12) of a family sheet; a copy stands in docs/family.schema.json. */
export function familyJsonSchema(): Record<string, unknown> {
  const schema = familyFieldsSchema();
  const defs = schema.$defs as Record<string, AxleNode>;
  const axle = defs.axle as AxleNode;
  const { required, ...rest } = axle;
  const either = [{ required: ONE_KNUCKLE }, { required: ["bodies"] }];
  return {
    ...schema,
    $defs: {
      ...defs,
      axle: { ...rest, required: required.filter((key) => !ONE_KNUCKLE.includes(key)), anyOf: either },
    },
  };
}
