import { type CarMotion, carMotions } from "#casework";

/** What of the whole car stands in its address. */
export interface WholeCarSearch {
  readonly motion?: CarMotion["kind"];
  /** As the page shows it: mm or degrees. */
  readonly by?: number;
  /** Along the car in a bend, g: braked negative. */
  readonly along?: number;
  /** Id of the position whose rubber is torn in a bend. */
  readonly torn?: string;
}

const numberIn = (value: unknown): number | null => {
  const number = typeof value === "string" && value.trim() !== "" ? Number(value) : value;
  return typeof number === "number" && Number.isFinite(number) ? number : null;
};

/** Reads the search part of an address; what cannot be read is left out. */
export const readWholeCarSearch = (search: Record<string, unknown>): WholeCarSearch => {
  const motion = carMotions.find(({ kind }) => kind === search.motion)?.kind;
  const [by, along] = [numberIn(search.by), numberIn(search.along)];
  return {
    ...(motion === undefined ? {} : { motion }),
    ...(by === null ? {} : { by }),
    ...(along === null ? {} : { along }),
    ...(typeof search.torn === "string" && search.torn !== "" ? { torn: search.torn } : {}),
  };
};
