import { type SignName, signWords } from "#casework";
import { metresFromMm, mmFromMetres } from "#quantity";
import { ASSUMED_PLAY, FIRMER_FACTOR, PLAY_MM, type PositionMark, type PositionMarks } from "./position-mark.ts";

const BETWEEN_ENTRIES = "~";
const BEFORE_MARK = ":";
const BETWEEN_SIGNS = ",";
const SEEN = /^seen-([a-z,-]+)$/;
const TORN = /^torn-([123])$/;
/** Shore A of the old part and of the new; x: not known. */
const SHORE = /^firmer-shore-(x|\d+(?:\.\d+)?)-(x|\d+(?:\.\d+)?)$/;
const NOT_KNOWN = "x";
const AMOUNT = /^(loose|firmer)-(\d+(?:\.\d+)?)$/;

const within = (value: number, range: { readonly low: number; readonly high: number }): boolean =>
  value >= range.low && value <= range.high;

const isSign = (name: string): name is SignName => Object.hasOwn(signWords, name);

/**
 * One mark as it stands in an address: "torn-3", "loose-1.5" (mm), "loose" (by the play that is assumed until one is
 * measured), "firmer-2" (times), "firmer-shore-55-65" (Shore A, old and new; x where one is not known), "fluid-gone", "seen-lip,scored", "sound".
 */
export const formatMark = (mark: PositionMark): string => {
  switch (mark.kind) {
    case "sound":
      return "sound";
    case "torn":
      return `torn-${mark.grade}`;
    case "loose":
      return mark.assumed ? "loose" : `loose-${Number(mmFromMetres(mark.play).toFixed(3))}`;
    case "firmer":
      return "hardness" in mark
        ? `firmer-shore-${mark.hardness.from ?? NOT_KNOWN}-${mark.hardness.to ?? NOT_KNOWN}`
        : `firmer-${mark.factor}`;
    case "fluid-gone":
      return "fluid-gone";
    case "seen":
      return `seen-${mark.signs.join(BETWEEN_SIGNS)}`;
  }
};

const parseSigns = (names: readonly string[]): PositionMark | null =>
  names.every(isSign) && new Set(names).size === names.length ? { kind: "seen", signs: names } : null;

/** Whatever lies on the scale is a mark; whether the relation holds there is said where it is computed. */
const SHORE_SCALE = { low: 0, high: 100 };

const parseHardness = (old: string, fitted: string): PositionMark | null => {
  const [from, to] = [old, fitted].map((text) => (text === NOT_KNOWN ? null : Number(text))) as [
    number | null,
    number | null,
  ];
  return [from, to].every((one) => one === null || within(one, SHORE_SCALE))
    ? { kind: "firmer", hardness: { from, to } }
    : null;
};

/** A mark read back from an address; null where the text names none. */
export const parseMark = (text: string): PositionMark | null => {
  if (text === "sound" || text === "fluid-gone") return { kind: text };
  if (text === "loose") return ASSUMED_PLAY;
  const seen = SEEN.exec(text)?.[1];
  if (seen !== undefined) return parseSigns(seen.split(BETWEEN_SIGNS));
  const torn = TORN.exec(text);
  if (torn !== null) return { kind: "torn", grade: Number(torn[1]) as 1 | 2 | 3 };
  const shore = SHORE.exec(text);
  if (shore !== null) return parseHardness(shore[1] ?? NOT_KNOWN, shore[2] ?? NOT_KNOWN);
  const amount = AMOUNT.exec(text);
  if (amount === null) return null;
  const value = Number(amount[2]);
  if (amount[1] === "loose") return within(value, PLAY_MM) ? { kind: "loose", play: metresFromMm(value) } : null;
  return within(value, FIRMER_FACTOR) ? { kind: "firmer", factor: value } : null;
};

/** Marks as they stand in the address: "rear-left/trailing-link/inner-bush:torn-3~...", in the order they were made; "" for none. */
export const formatMarks = (marks: PositionMarks): string =>
  [...marks].map(([position, mark]) => `${position}${BEFORE_MARK}${formatMark(mark)}`).join(BETWEEN_ENTRIES);

/** Marks read back from an address; `unread` holds the entries that name no mark, as they came. */
export const parseMarks = (text: string): { readonly marks: PositionMarks; readonly unread: readonly string[] } => {
  const marks = new Map<string, PositionMark>();
  const unread: string[] = [];
  for (const entry of text.split(BETWEEN_ENTRIES).filter((part) => part !== "")) {
    const cut = entry.lastIndexOf(BEFORE_MARK);
    const mark = cut > 0 ? parseMark(entry.slice(cut + 1)) : null;
    if (mark === null) unread.push(entry);
    else marks.set(entry.slice(0, cut), mark);
  }
  return { marks, unread };
};

/** The marks with one position marked anew, or with its mark taken off (null). */
export const withMark = (marks: PositionMarks, position: string, mark: PositionMark | null): PositionMarks => {
  const next = new Map(marks);
  if (mark === null) next.delete(position);
  else next.set(position, mark);
  return next;
};
