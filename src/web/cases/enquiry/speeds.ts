type Speeds = readonly [low: number, high: number];

/** Faster than any car that is asked about, km/h. */
const FASTEST = 400;

/** One speed or a range from its text, km/h: "90", "90-130", "90 to 130"; null for an empty text, undefined where it is neither. */
export const parseSpeeds = (text: string): Speeds | null | undefined => {
  const trimmed = text.trim();
  if (trimmed === "") return null;
  const match = /^(\d{1,3})(?:\s*(?:to|-|–)\s*(\d{1,3}))?(?:\s*km\/?h)?$/.exec(trimmed);
  if (match === null) return undefined;
  const low = Number(match[1]);
  const high = Number(match[2] ?? match[1]);
  return high >= low && high <= FASTEST ? [low, high] : undefined;
};

/** Speeds as they are typed; "" for none. */
export const speedWords = (speeds: Speeds | null): string =>
  speeds === null ? "" : speeds[0] === speeds[1] ? String(speeds[0]) : `${speeds[0]} to ${speeds[1]}`;
