import { parseTypedNumber } from "../../number/parse-typed-number.ts";

type Speeds = readonly [low: number, high: number];

/** Faster than any car that is asked about, km/h. */
const FASTEST = 400;

const BOUNDS = { low: 0, high: FASTEST };
const JOINED = /\s*(?:\bto\b|[-‐‑‒–—−])\s*/;

/** What came of a text of speeds: speeds (null: none were typed), or what keeps it from being any, in plain words. */
export type TypedSpeeds = { readonly speeds: Speeds | null } | { readonly trouble: string };

/** One speed or a range from its text, km/h: "90", "90-130", "90 to 130", either end first. */
export const parseSpeeds = (text: string): TypedSpeeds => {
  const plain = text
    .trim()
    .replace(/\s*km\s*\/?\s*h$/i, "")
    .trim();
  if (plain === "") return { speeds: null };
  const needed = `needed is one speed or a range in km/h, 0 to ${FASTEST}: 90 to 130`;
  const read = plain.split(JOINED).map((part) => parseTypedNumber(part, BOUNDS));
  const values = read.flatMap((one) => (one.kind === "number" ? [one.value] : []));
  const [one, other = one] = values;
  if (one === undefined || other === undefined || values.length !== read.length || values.length > 2)
    return { trouble: `Speed: “${text.trim()}” came; ${needed}. Not kept yet.` };
  const [low, high] = [Math.min(one, other), Math.max(one, other)];
  return low >= 0 && high <= FASTEST
    ? { speeds: [low, high] }
    : { trouble: `Speed: “${text.trim()}” came; ${needed}. Not kept yet.` };
};

/** Speeds as they are typed; "" for none. */
export const speedWords = (speeds: Speeds | null): string =>
  speeds === null ? "" : speeds[0] === speeds[1] ? String(speeds[0]) : `${speeds[0]} to ${speeds[1]}`;
