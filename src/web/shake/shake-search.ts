/** What of a bush without its fluid stands in the address. */
export interface ShakeSearch {
  /** Thickness variation of the disc; absent: the most a new disc may have. */
  readonly variation_mm?: number;
  /** Road speed at which the driver feels it; absent: nobody said. */
  readonly felt_kmh?: number;
}

/** What a disc may vary in thickness on the page, mm: from a good new one to one that shakes any car (invented). */
export const VARIATION_MM = { low: 0.005, high: 0.1, step: 0.005, usual: 0.015 } as const;
/** Speeds the curves are drawn at, km/h. */
export const FELT_KMH = { low: 40, high: 200, step: 1 } as const;

const numberWithin = (value: unknown, { low, high }: { readonly low: number; readonly high: number }) => {
  const number = typeof value === "string" && value.trim() !== "" ? Number(value) : value;
  return typeof number === "number" && number >= low && number <= high ? number : null;
};

/** Reads the search part of an address; what cannot be read is left out. */
export const readShakeSearch = (search: Record<string, unknown>): ShakeSearch => {
  const variation = numberWithin(search.variation_mm, VARIATION_MM);
  const felt = numberWithin(search.felt_kmh, FELT_KMH);
  return {
    ...(variation === null ? {} : { variation_mm: variation }),
    ...(felt === null ? {} : { felt_kmh: Math.round(felt) }),
  };
};
