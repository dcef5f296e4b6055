import fc from "fast-check";
import type { JsonSchema } from "../../src/contract/index.ts";

/** The further parts of a JSON Schema that bound a value. */
interface BoundedSchema extends JsonSchema {
  readonly enum?: readonly unknown[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
  readonly exclusiveMaximum?: number;
  readonly pattern?: string;
  readonly format?: string;
}

const largestDrawn = 3000;

const numberOf = (schema: BoundedSchema): fc.Arbitrary<number> => {
  const low = schema.minimum ?? schema.exclusiveMinimum ?? -largestDrawn;
  const high = Math.min(schema.maximum ?? schema.exclusiveMaximum ?? largestDrawn, Math.max(largestDrawn, low + 1));
  if (schema.type === "integer") return fc.integer({ min: Math.ceil(low), max: Math.floor(high) });
  const plain = fc.double({ min: low, max: high, noNaN: true, minExcluded: schema.exclusiveMinimum !== undefined });
  const round = fc
    .integer({ min: Math.ceil(low), max: Math.floor(high) })
    .map((value) => Math.min(Math.max(value, low), high));
  return fc.oneof(plain, round);
};

const words = fc.constantFrom(
  "lower-link",
  "upper-link",
  "toe-link",
  "strut_top",
  "trailing_arm",
  "inner",
  "205/55 R16",
);

const textOf = (schema: BoundedSchema): fc.Arbitrary<string> => {
  if (schema.format === "date") return fc.constantFrom("2019-02-28", "2031-12-31");
  return fc.oneof({ weight: 9, arbitrary: words }, { weight: 1, arbitrary: fc.string({ maxLength: 12 }) });
};

/** Documents a JSON Schema accepts (patterns of text aside): every optional key there or not, figures over their whole range. */
export const arbitraryOf = (schema: BoundedSchema, root: BoundedSchema = schema): fc.Arbitrary<unknown> => {
  if (schema.$ref !== undefined) {
    const named = root.$defs?.[schema.$ref.replace("#/$defs/", "")];
    return named === undefined ? fc.jsonValue() : arbitraryOf(named, root);
  }
  if (schema.const !== undefined) return fc.constant(schema.const);
  if (schema.enum !== undefined) return fc.constantFrom(...schema.enum);
  const choices = schema.anyOf ?? schema.oneOf;
  if (choices !== undefined) return fc.oneof(...choices.map((choice) => arbitraryOf(choice, root)));
  switch (schema.type) {
    case "number":
    case "integer":
      return numberOf(schema);
    case "string":
      return textOf(schema);
    case "boolean":
      return fc.boolean();
    case "null":
      return fc.constant(null);
    case "array":
      return listOf(schema, root);
    case "object":
      return objectOf(schema, root);
    default:
      return fc.jsonValue({ maxDepth: 1 });
  }
};

const listOf = (schema: BoundedSchema, root: BoundedSchema): fc.Arbitrary<unknown> => {
  if (schema.prefixItems !== undefined) return fc.tuple(...schema.prefixItems.map((item) => arbitraryOf(item, root)));
  const item = typeof schema.items === "object" ? arbitraryOf(schema.items, root) : fc.jsonValue({ maxDepth: 1 });
  const minLength = schema.minItems ?? 0;
  return fc.array(item, { minLength, maxLength: Math.min(schema.maxItems ?? 5, Math.max(5, minLength)) });
};

const objectOf = (schema: BoundedSchema, root: BoundedSchema): fc.Arbitrary<unknown> => {
  const keys = Object.entries(schema.properties ?? {}).map(([key, part]) => [key, arbitraryOf(part, root)] as const);
  const named = fc.record(Object.fromEntries(keys), { requiredKeys: [...(schema.required ?? [])] });
  if (typeof schema.additionalProperties !== "object") return named;
  return fc.dictionary(words, arbitraryOf(schema.additionalProperties, root), { maxKeys: 4 });
};
