/** Checks here read a document that may be wrong elsewhere, so that everything that is wrong is said at once. */
export type Loose = Readonly<Record<string, unknown>>;

export type Point = readonly [number, number, number];

export const isObject = (x: unknown): x is Loose => typeof x === "object" && x !== null && !Array.isArray(x);
export const isNumber = (x: unknown): x is number => typeof x === "number" && Number.isFinite(x);
export const entriesOf = (x: unknown): readonly (readonly [number, Loose])[] =>
  Array.isArray(x) ? x.flatMap((item, i) => (isObject(item) ? [[i, item] as const] : [])) : [];

/** The point under a key, or null where it is not one. */
export function pointOf(x: unknown): Point | null {
  return Array.isArray(x) && x.length === 3 && x.every(isNumber) ? (x as unknown as Point) : null;
}
