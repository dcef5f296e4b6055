import fc from "fast-check";

/** A random change of a request: drawn as plain data, applied to a copy. */
export interface Mutation {
  readonly kind: "remove" | "replace" | "scale" | "shift" | "rename" | "repeat" | "copy-point";
  /** Picks the place: a share of all places of that kind. */
  readonly at: number;
  readonly other: number;
  readonly value: unknown;
  readonly factor: number;
}

const oddValues: readonly unknown[] = [
  null,
  true,
  "",
  "knuckle",
  "left",
  "__proto__",
  [],
  {},
  0,
  -0,
  -1,
  1,
  1e-300,
  5e-324,
  1e-9,
  1e5,
  1e9,
  1e300,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  [0, 0, 0],
  [1, 0, 0],
  ["upper_front", "upper_rear"],
];
const factors = [0, -1, 1e-6, 0.1, 0.5, 0.9, 1.1, 2, 10, 1e3, 1e6];

/** Arbitrary lists of one to four changes. */
export const mutations: fc.Arbitrary<readonly Mutation[]> = fc.array(
  fc.record({
    kind: fc.constantFrom("remove", "replace", "scale", "shift", "shift", "rename", "repeat", "copy-point"),
    at: fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
    other: fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
    value: fc.constantFrom(...oddValues),
    factor: fc.constantFrom(...factors),
  }),
  { minLength: 1, maxLength: 4 },
);

type Holder = Record<string, unknown> | unknown[];
interface Place {
  readonly holder: Holder;
  readonly key: string | number;
  readonly value: unknown;
}

function placesOf(value: unknown): readonly Place[] {
  if (typeof value !== "object" || value === null) return [];
  const holder = value as Holder;
  const steps: readonly (readonly [string | number, unknown])[] = Array.isArray(value)
    ? [...value.entries()]
    : Object.entries(value);
  return steps.flatMap(([key, inner]) => [{ holder, key, value: inner }, ...placesOf(inner)]);
}

const pick = <T>(list: readonly T[], share: number): T | undefined => list[Math.floor(share * list.length)];

function set({ holder, key }: Place, value: unknown): void {
  if (Array.isArray(holder)) holder[key as number] = value;
  else holder[key] = value;
}

function apply(document: unknown, m: Mutation): void {
  const all = placesOf(document);
  const numbers = all.filter((p) => typeof p.value === "number");
  const points = all.filter((p) => Array.isArray(p.value) && p.value.length === 3);
  const lists = all.filter((p) => Array.isArray(p.value) && p.value.length > 0);
  const keyed = all.filter((p) => !Array.isArray(p.holder));
  const place = pick(
    { scale: numbers, shift: numbers, "copy-point": points, repeat: lists, rename: keyed, remove: all, replace: all }[
      m.kind
    ],
    m.at,
  );
  if (!place) return;
  switch (m.kind) {
    case "remove":
      if (Array.isArray(place.holder)) place.holder.splice(place.key as number, 1);
      else delete place.holder[place.key];
      return;
    case "replace":
      set(place, structuredClone(m.value));
      return;
    case "scale":
      set(place, (place.value as number) * m.factor);
      return;
    case "shift":
      set(place, (place.value as number) + (m.other - 0.5) * 400);
      return;
    case "rename":
      set({ ...place, key: `${place.key}${pick(["x", "_mm", "_m", ""], m.other)}` }, place.value);
      return;
    case "repeat":
      (place.value as unknown[]).push(structuredClone((place.value as unknown[])[0]));
      return;
    case "copy-point":
      set(place, structuredClone(pick(points, m.other)?.value));
      return;
  }
}

/** The request with the changes made, one after the other. */
export function mutate(input: unknown, changes: readonly Mutation[]): unknown {
  const copy: unknown = structuredClone(input);
  for (const change of changes) apply(copy, change);
  return copy;
}
