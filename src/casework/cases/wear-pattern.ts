/** How a tyre has worn across its tread (names and what they point to: common practice, from memory). */
export type WearPattern = "inner-edge" | "outer-edge" | "centre" | "both-shoulders" | "feathered";

/** A pattern as it stands in what was found. */
export const wearWords: Readonly<Record<WearPattern, string>> = {
  "inner-edge": "inner-edge wear",
  "outer-edge": "outer-edge wear",
  centre: "centre wear",
  "both-shoulders": "both-shoulder wear",
  feathered: "feathered",
};
