import { z } from "zod";
import { valueAt } from "./wire-path.ts";

/** The part of a JSON Schema this program reads. */
export interface JsonSchema {
  readonly $ref?: string;
  readonly $defs?: Readonly<Record<string, JsonSchema>>;
  readonly type?: string;
  readonly const?: unknown;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: boolean | JsonSchema;
  readonly items?: JsonSchema | boolean;
  readonly prefixItems?: readonly JsonSchema[];
  readonly anyOf?: readonly JsonSchema[];
  readonly oneOf?: readonly JsonSchema[];
  readonly allOf?: readonly JsonSchema[];
}

const kept = new WeakMap<z.ZodType, JsonSchema>();

/** The JSON Schema of what a schema accepts (before any transformation), made once per schema. */
export const jsonSchemaOf = (schema: z.ZodType): JsonSchema => {
  const known = kept.get(schema);
  if (known !== undefined) return known;
  const made = z.toJSONSchema(schema, { io: "input", unrepresentable: "any" }) as JsonSchema;
  kept.set(schema, made);
  return made;
};

const isSchema = (part: JsonSchema | boolean | undefined): part is JsonSchema => typeof part === "object";

/** All alternatives a part of a schema may mean, references followed. */
const alternatives = (part: JsonSchema, root: JsonSchema, seen: readonly string[] = []): readonly JsonSchema[] => {
  if (part.$ref !== undefined) {
    if (seen.includes(part.$ref)) return [];
    const name = part.$ref.startsWith("#/$defs/") ? part.$ref.slice("#/$defs/".length) : null;
    const target = part.$ref === "#" ? root : name === null ? undefined : root.$defs?.[name];
    return target === undefined ? [] : alternatives(target, root, [...seen, part.$ref]);
  }
  const inner = [...(part.anyOf ?? []), ...(part.oneOf ?? []), ...(part.allOf ?? [])];
  return [part, ...inner.flatMap((one) => alternatives(one, root, seen))];
};

const step = (part: JsonSchema, key: PropertyKey): readonly JsonSchema[] => {
  if (typeof key === "number") return [part.prefixItems?.[key] ?? part.items].filter(isSchema);
  return [part.properties?.[String(key)] ?? part.additionalProperties].filter(isSchema);
};

/** True where a word that tells alternatives apart (kind: "strut") stands in the value and is another one. */
const saysOther = (part: JsonSchema, value: unknown): boolean =>
  typeof value === "object" &&
  value !== null &&
  Object.entries(part.properties ?? {}).some(
    ([key, { const: wanted }]) => wanted !== undefined && Object.hasOwn(value, key) && valueAt(value, [key]) !== wanted,
  );

/** Every alternative a schema has at a path of a document; those the document itself rules out are left away where others remain. */
const schemasAt = (schema: z.ZodType, path: readonly PropertyKey[], document: unknown): readonly JsonSchema[] => {
  const root = jsonSchemaOf(schema);
  const choose = (parts: readonly JsonSchema[], here: readonly PropertyKey[]): readonly JsonSchema[] => {
    const value = valueAt(document, here);
    const open = parts.filter((part) => !saysOther(part, value));
    return open.some((part) => part.type !== undefined) ? open : parts;
  };
  let parts = choose(alternatives(root, root), []);
  path.forEach((key, index) => {
    const inner = parts.flatMap((part) => step(part, key)).flatMap((part) => alternatives(part, root));
    parts = choose(inner, path.slice(0, index + 1));
  });
  return parts;
};

/** Every key that may stand in the object at a path of a document, in the order of the schema. */
export const knownKeysAt = (schema: z.ZodType, path: readonly PropertyKey[], document: unknown): readonly string[] => [
  ...new Set(schemasAt(schema, path, document).flatMap((part) => Object.keys(part.properties ?? {}))),
];

/** How many entries the list at a path must have, where the schema allows one number only; else null. */
export const exactLengthAt = (schema: z.ZodType, path: readonly PropertyKey[], document: unknown): number | null => {
  const lists = schemasAt(schema, path, document).filter((part) => part.type === "array");
  const first = lists[0];
  return lists.length === 1 && first?.minItems !== undefined && first.minItems === first.maxItems
    ? first.minItems
    : null;
};
