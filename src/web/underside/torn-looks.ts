/**
 * What a torn rubber of each grade looks and feels like, for the eye under the car. Source: workshop-scale (from memory);
 * a maker's figure counts before it.
 */
export const TORN_LOOKS: Readonly<Record<1 | 2 | 3, string>> = {
  1: "fine surface cracks; springs back",
  2: "cracks over 2 to 3 mm deep or over a quarter of the web; soft at first",
  3: "web torn or sleeve over 3 mm off centre; stays where pushed",
};

/** What a hydraulic bush without its fluid looks and feels like (trade-causes, from memory). */
export const FLUID_GONE_LOOKS =
  "looks whole, gives to a push as before; oil trace or dry hollow, nothing slows the arm";
