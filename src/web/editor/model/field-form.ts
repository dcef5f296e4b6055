import { familyFieldsSchema } from "#contract";
import type { SheetPath } from "./sheet-path.ts";
import { isKeyed } from "./sheet-value.ts";

/** The part of a published JSON Schema a form is made from. */
interface SchemaPart {
  readonly $ref?: string;
  readonly $defs?: Readonly<Record<string, SchemaPart>>;
  readonly description?: string;
  readonly type?: string;
  readonly enum?: readonly string[];
  readonly const?: unknown;
  readonly minimum?: number;
  readonly exclusiveMinimum?: number;
  readonly maximum?: number;
  readonly maxLength?: number;
  readonly properties?: Readonly<Record<string, SchemaPart>>;
  readonly required?: readonly string[];
  readonly items?: SchemaPart | false;
  readonly prefixItems?: readonly SchemaPart[];
  readonly anyOf?: readonly SchemaPart[];
  readonly oneOf?: readonly SchemaPart[];
}

/** One key of an object with what may stand under it. */
export interface FieldOfKey {
  readonly key: string;
  readonly required: boolean;
  readonly form: FieldForm;
}

/** One of several objects that may stand in one place, told apart by a word or by the keys it has. */
export interface Alternative {
  readonly word: string;
  readonly fields: readonly FieldOfKey[];
}

interface Said {
  readonly description: string;
}
export interface NumberForm extends Said {
  readonly kind: "number";
  readonly low: number;
  readonly high: number;
}
/** What kind of entry a place of the sheet takes. */
export type FieldForm =
  | NumberForm
  | (Said & { readonly kind: "text"; readonly long: boolean })
  | (Said & { readonly kind: "word"; readonly choices: readonly string[] })
  | (Said & { readonly kind: "yes-no" })
  | (Said & { readonly kind: "fixed"; readonly value: unknown })
  /** Figures that belong together: coordinates, a range. */
  | (Said & { readonly kind: "figures"; readonly entries: readonly NumberForm[] })
  /** A hard point: bare coordinates, or with its own origin and standard deviation. */
  | (Said & { readonly kind: "point" })
  /** A torn share: low and high, bare or with its own origin. */
  | (Said & { readonly kind: "range" })
  | (Said & { readonly kind: "group"; readonly fields: readonly FieldOfKey[] })
  /** `by`: the key whose word tells them apart; null: the keys themselves do. */
  | (Said & { readonly kind: "one-of"; readonly by: string | null; readonly alternatives: readonly Alternative[] })
  | (Said & { readonly kind: "list"; readonly entry: FieldForm })
  /** A list of words or whole numbers, written with commas. */
  | (Said & { readonly kind: "words"; readonly numeric: boolean; readonly choices: readonly string[] | null })
  /** Outlines and paths: lists of coordinates, entered as their piece of the file. */
  | (Said & { readonly kind: "piece" });

let published: SchemaPart | null = null;
const root = (): SchemaPart => {
  published ??= familyFieldsSchema() as SchemaPart;
  return published;
};

const REFERENCE = "#/$defs/";

/** A part with its reference followed; what is said beside the reference comes first. */
const followed = (part: SchemaPart): SchemaPart & { readonly name?: string } => {
  if (part.$ref === undefined) return part;
  const name = part.$ref.slice(REFERENCE.length);
  const target = root().$defs?.[name];
  if (target === undefined) throw new RangeError(`the schema has no part ${part.$ref}`);
  return { ...followed(target), ...(part.description === undefined ? {} : { description: part.description }), name };
};

const numberForm = (part: SchemaPart): NumberForm => ({
  kind: "number",
  description: part.description ?? "",
  low: part.minimum ?? part.exclusiveMinimum ?? Number.NEGATIVE_INFINITY,
  high: part.maximum ?? Number.POSITIVE_INFINITY,
});

const fieldsOf = (part: SchemaPart): readonly FieldOfKey[] =>
  Object.entries(part.properties ?? {}).map(([key, inner]) => ({
    key,
    required: part.required?.includes(key) ?? false,
    form: formOf(inner),
  }));

const oneOfForm = (parts: readonly SchemaPart[], description: string): FieldForm => {
  const by = Object.entries(parts[0]?.properties ?? {}).find(([, inner]) => inner.const !== undefined)?.[0] ?? null;
  const alternatives = parts.map((part): Alternative => {
    const word = by === null ? (part.required?.[0] ?? "") : String(part.properties?.[by]?.const);
    return { word, fields: fieldsOf(part).filter(({ key }) => key !== by) };
  });
  return { kind: "one-of", description, by, alternatives };
};

const listForm = (part: SchemaPart, description: string): FieldForm => {
  const { prefixItems, items } = part;
  if (prefixItems !== undefined) {
    const entries = prefixItems.map(followed);
    if (entries.every(({ type }) => type === "number" || type === "integer"))
      return { kind: "figures", description, entries: entries.map(numberForm) };
    return { kind: "words", description, numeric: false, choices: null };
  }
  if (items === undefined || items === false) return { kind: "piece", description };
  const entry = followed(items);
  if (entry.type === "string") return { kind: "words", description, numeric: false, choices: entry.enum ?? null };
  if (entry.type === "integer") return { kind: "words", description, numeric: true, choices: null };
  if (entry.type === "array") return { kind: "piece", description };
  return { kind: "list", description, entry: formOf(items) };
};

const formOf = (given: SchemaPart): FieldForm => {
  const part = followed(given);
  const description = part.description ?? "";
  if (part.name === "hard_point") return { kind: "point", description };
  if (part.name === "torn_range") return { kind: "range", description };
  if (part.const !== undefined) return { kind: "fixed", description, value: part.const };
  if (part.enum !== undefined) return { kind: "word", description, choices: part.enum };
  const several = part.oneOf ?? part.anyOf;
  if (several !== undefined) {
    const [only, ...others] = several.filter(({ type }) => type !== "null");
    if (only === undefined) return { kind: "piece", description };
    if (others.length === 0) return { ...formOf(only), description };
    return oneOfForm([only, ...others].map(followed), description);
  }
  switch (part.type) {
    case "number":
    case "integer":
      return numberForm(part);
    case "string":
      return { kind: "text", description, long: (part.maxLength ?? 0) > 1000 };
    case "boolean":
      return { kind: "yes-no", description };
    case "array":
      return listForm(part, description);
    case "object":
      if (part.properties === undefined) return { kind: "piece", description };
      return { kind: "group", description, fields: fieldsOf(part) };
    default:
      return { kind: "piece", description };
  }
};

const forms = new Map<string, FieldForm>();

const rootForm = (): FieldForm => {
  const whole = forms.get("") ?? formOf(root());
  forms.set("", whole);
  return whole;
};

/** The form of a key path of the sheet without places in lists: ["front", "wheel"]; a list key stands for one entry of it. */
export const formAt = (keys: readonly string[]): FieldForm => {
  const name = keys.join(".");
  const known = forms.get(name);
  if (known !== undefined) return known;
  let form = rootForm();
  for (const key of keys) {
    const inside = form.kind === "list" ? form.entry : form;
    const field = inside.kind === "group" ? inside.fields.find((one) => one.key === key) : undefined;
    if (field === undefined) throw new RangeError(`a family sheet has no ${name}`);
    form = field.form;
  }
  forms.set(name, form);
  return form;
};

/** Which alternative a value is; the first where it says nothing of it. */
export const alternativeOf = (
  form: Extract<FieldForm, { readonly kind: "one-of" }>,
  value: unknown,
): Alternative | undefined => {
  const { by, alternatives } = form;
  if (!isKeyed(value)) return alternatives[0];
  return (
    (by === null
      ? alternatives.find(({ word }) => Object.hasOwn(value, word))
      : alternatives.find(({ word }) => word === value[by])) ?? alternatives[0]
  );
};

/** The value as another alternative: what both have stays, the rest goes. */
export const asAlternative = (
  form: Extract<FieldForm, { readonly kind: "one-of" }>,
  value: unknown,
  word: string,
): unknown => {
  const chosen = form.alternatives.find((one) => one.word === word);
  const old = isKeyed(value) ? value : {};
  const kept = Object.entries(old).filter(([key]) => chosen?.fields.some((field) => field.key === key));
  if (form.by === null) {
    const [only] = Object.values(old);
    return kept.length > 0 ? Object.fromEntries(kept) : { [word]: only ?? null };
  }
  return { [form.by]: word, ...Object.fromEntries(kept) };
};

/** An entry to begin a list with: what must stand there is left open, words that tell alternatives apart are the first. */
export const newEntry = (form: FieldForm): unknown => {
  switch (form.kind) {
    case "one-of":
      return form.by === null
        ? { [form.alternatives[0]?.word ?? ""]: null }
        : { [form.by]: form.alternatives[0]?.word ?? null };
    case "group":
      return {};
    case "list":
    case "words":
      return [];
    default:
      return null;
  }
};

/** Keys of a path without the places in lists, for formAt. */
export const keysOf = (path: SheetPath): readonly string[] => path.filter((step) => typeof step === "string");
