/**
 * What a torn rubber of each grade looks and feels like, for the eye under the car. Source: workshop-scale (from memory);
 * a maker's figure counts before it.
 */
export const TORN_LOOKS: Readonly<Record<1 | 2 | 3, string>> = {
  1: "fine surface cracks; springs back",
  2: "cracks over 2 to 3 mm deep or over a quarter of the web; soft at first",
  3: "web torn, sleeve over 3 mm off centre or fluid out; stays where pushed",
};
