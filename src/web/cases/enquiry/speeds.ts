import { parseTypedQuantity } from "../../number/parse-typed-quantity.ts";

type Speeds = readonly [low: number, high: number];

/** Faster than any car that is asked about, km/h. */
const FASTEST = 400;

const BOUNDS = { low: 0, high: FASTEST };
const JOINED = /\s*(?:\bto\b|[-‐‑‒–—−])\s*/;

/** Speeds a driver says are no finer than this, km/h; what came in miles is rounded to it. */
const toTenth = (value: number): number => Math.round(value * 10) / 10;

/** What came of a text of speeds: speeds (null: none were typed), or what keeps it from being any, in plain words. */
export type TypedSpeeds = { readonly speeds: Speeds | null } | { readonly trouble: string };

/** One speed or a range from its text, km/h: "90", "90-130", "55 to 70 mph", either end first. */
export const parseSpeeds = (text: string): TypedSpeeds => {
  const plain = text.trim();
  if (plain === "") return { speeds: null };
  const needed = `needed is one speed or a range in km/h, 0 to ${FASTEST}: 90 to 130`;
  const parts = plain.split(JOINED);
  // "55 to 70 mph": one unit behind both.
  const unit = /[a-z][a-z/ ]*$/i.exec(parts.at(-1) ?? "")?.[0] ?? "";
  const read = parts.map((part) => parseTypedQuantity(/[a-z]/i.test(part) ? part : part + unit, "km/h", BOUNDS));
  const values = read.flatMap((one) => (one.kind === "number" ? [one.value] : []));
  const [one, other = one] = values;
  if (one === undefined || other === undefined || values.length !== read.length || values.length > 2)
    return { trouble: `Speed: “${text.trim()}” came; ${needed}. Not kept yet.` };
  const [low, high] = [Math.min(one, other), Math.max(one, other)].map(toTenth) as [number, number];
  return low >= 0 && high <= FASTEST
    ? { speeds: [low, high] }
    : { trouble: `Speed: “${text.trim()}” came; ${needed}. Not kept yet.` };
};

/** Speeds as they are typed; "" for none. */
export const speedWords = (speeds: Speeds | null): string =>
  speeds === null ? "" : speeds[0] === speeds[1] ? String(speeds[0]) : `${speeds[0]} to ${speeds[1]}`;
