import { type Family, familyFromSilhouette, type SilhouetteEntries } from "#vehicle";

const knot: SilhouetteEntries = {
  name: "Knot estate",
  frontLayout: "strut",
  rearLayout: "five-link",
  wheelbase: 2.74,
  frontTrack: 1.56,
  rearTrack: 1.55,
  tyreSize: "215/55 R17",
  kerbMass: 1520,
  frontWeightShare: 0.57,
  drivenAxle: "front",
};
const dotterel: SilhouetteEntries = {
  name: "Dotterel coach",
  frontLayout: "double-wishbone",
  rearLayout: "trailing-arm",
  wheelbase: 2.88,
  frontTrack: 1.58,
  rearTrack: 1.57,
  tyreSize: "225/60 R17",
  kerbMass: 1740,
  frontWeightShare: 0.53,
  drivenAxle: "front",
  rearLowered: 0.012,
};

/** Two invented car lines nobody has measured: silhouettes scaled to a few measures, with no work on file. */
export function demoSilhouettes(): readonly Family[] {
  return [knot, dotterel].map((entries) => {
    const made = familyFromSilhouette(entries);
    if ("findings" in made) throw new Error(`a demo silhouette is wrong: ${JSON.stringify(made.findings)}`);
    return {
      ...made.family,
      invented: true,
      note: "Invented: there is no such car. Scaled from the templates of its layouts to measures that were made up for the demo workshop.",
    };
  });
}
