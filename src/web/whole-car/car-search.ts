import { type CarMotion, carMotions, type RubberFault } from "#casework";
import { parseMark } from "../underside/marks-in-address.ts";

/** What of the whole car stands in its address. */
export interface WholeCarSearch {
  readonly motion?: CarMotion["kind"];
  /** As the page shows it: mm or degrees. */
  readonly by?: number;
  /** Along the car in a bend, g: braked negative. */
  readonly along?: number;
  /** Id of the position that is torn, loose or firmer in a bend. */
  readonly at?: string;
  /** What it is, as a mark says it: "torn-3", "loose-1.5", "firmer-shore-55-65". */
  readonly as?: string;
}

const numberIn = (value: unknown): number | null => {
  const number = typeof value === "string" && value.trim() !== "" ? Number(value) : value;
  return typeof number === "number" && Number.isFinite(number) ? number : null;
};

/** The fault of a joint a mark stands for; null where it stands for none that is computed in a bend. */
export const changeOf = (as: string | undefined): RubberFault | null => {
  const mark = as === undefined ? null : parseMark(as);
  return mark !== null && (mark.kind === "torn" || mark.kind === "loose" || mark.kind === "firmer") ? mark : null;
};

/** Reads the search part of an address; what cannot be read is left out. */
export const readWholeCarSearch = (search: Record<string, unknown>): WholeCarSearch => {
  const motion = carMotions.find(({ kind }) => kind === search.motion)?.kind;
  const [by, along] = [numberIn(search.by), numberIn(search.along)];
  return {
    ...(motion === undefined ? {} : { motion }),
    ...(by === null ? {} : { by }),
    ...(along === null ? {} : { along }),
    ...(typeof search.at === "string" && search.at !== "" ? { at: search.at } : {}),
    ...(typeof search.as === "string" && changeOf(search.as) !== null ? { as: search.as } : {}),
  };
};

interface AddressedAmount {
  readonly name: string;
  readonly unit: string;
  /** As it stands in the address; undefined where nothing does. */
  readonly asked: number | undefined;
  /** What the slider reaches of it. */
  readonly shown: number;
}

/** What an address asked for beyond the reach of its slider, and where it is held instead; null where it asked for nothing beyond. */
export const heldWords = (amounts: readonly AddressedAmount[]): string | null => {
  const beyond = amounts.filter(({ asked, shown }) => asked !== undefined && asked !== shown);
  if (beyond.length === 0) return null;
  const told = beyond.map(({ name, unit, asked, shown }) => `${name} ${asked} ${unit}, held at ${shown} ${unit}`);
  return `The address asked for more than is computed: ${told.join("; ")}.`;
};
