/** Ids of the looks one stroke made last, by visit; known as long as the page is open. */
const strokes = new Map<string, readonly string[]>();

/** Remembers what one stroke made, so that one press takes it back. */
export const rememberStroke = (visit: string, looks: readonly string[]): void => {
  strokes.set(visit, looks);
};

/** Ids of the looks the last stroke on a visit made; none where there was none. */
export const lastStroke = (visit: string): readonly string[] => strokes.get(visit) ?? [];
