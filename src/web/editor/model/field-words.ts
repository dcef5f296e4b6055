/** A key of the sheet as a label, and the unit its figure is entered in. */
export interface FieldWords {
  readonly label: string;
  /** "" where it has none. */
  readonly unit: string;
}

/** Ends of keys that carry a unit, and how the unit is written; longest first. */
const UNITS: readonly (readonly [ending: string, unit: string])[] = [
  ["_nm_per_deg", "N·m/°"],
  ["_n_s_per_mm", "N·s/mm"],
  ["_n_per_mm", "N/mm"],
  ["_shore_a", "Shore A"],
  ["_per_s", "1/s"],
  ["_mm", "mm"],
  ["_deg", "°"],
  ["_kg", "kg"],
  ["_km", "km"],
  ["_nm", "N·m"],
  ["_bar", "bar"],
  ["_percent", "%"],
  ["_share", "of 1"],
  ["_n", "N"],
];

/** Where the key in words is not what a workshop says. */
const LABELS: Readonly<Record<string, string>> = {
  id: "Name others refer to",
  label: "Words",
  note: "Note",
  from_year: "Built from",
  to_year: "Built to",
  invented: "Invented",
  cg_height_mm: "Height of the centre of mass",
  kerb_mass_kg: "Kerb mass",
  front_weight_share: "Weight on the front",
  origin: "Origin",
  sd_mm: "Standard deviation x, y, z",
  rate_origin: "Origin of the rates",
  rate_sd_share: "Standard deviation of the rates",
  radial_n_per_mm: "Rate across the axis",
  axial_n_per_mm: "Rate along the axis",
  axis: "Direction of the axis x, y, z",
  voided_n_per_mm: "Rate through the voids",
  clocking_deg: "Voids turned from up",
  conical_nm_per_deg: "Against tilting",
  torsional_nm_per_deg: "Against twisting",
  hardness_shore_a: "Hardness of the rubber",
  fluid: "Fluid",
  volume_n_per_mm: "Rate of the chambers",
  inertia_kg: "Inertia of the fluid",
  damping_n_s_per_mm: "Damping of the fluid",
  loss_factor: "Loss factor of the rubber",
  sd_share: "Standard deviation of each",
  member_n_per_mm: "Rate of the bare link",
  rate_n_per_mm: "Rate",
  torn_share: "Torn: share of the rate left",
  hours: "Hours",
  price_cents: "Price without tax",
  section_mm: "Section: width, height",
  centre_mm: "Wheel centre x, y, z",
  free_axis: "Free axis x, y, z",
  body_mm: "End on the body",
  moving_mm: "Moving end",
  on: "Sits on",
  count: "How many",
  pair: "Both sides always",
  driven: "Driven",
  told: "Kind of source",
  prior_factor: "Factor on the chance",
  hub_to_arch_mm: "Hub to arch",
  height_tolerance_mm: "Height, up or down by",
  height_apart_mm: "Heights left and right apart by",
  camber_apart_deg: "Camber left and right apart by",
  caster_apart_deg: "Caster left and right apart by",
  thrust_deg: "Axle points aside by",
  camber_deg: "Camber",
  toe_deg: "Toe of one wheel",
  caster_deg: "Caster",
  needs_alignment: "Align afterwards",
  at_ride_height: "Final torque at ride height",
  grease: "Greased",
  cures: "Cures",
  loosens: "Upsets",
  path_mm: "Path",
  key: "Told by",
};

/** Words of keys and choices: "repair_first", "always-new" as they are said. */
export const inWords = (key: string): string => key.replaceAll("_", " ").replaceAll("-", " ");

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Label and unit of a key: "disc_diameter_mm" is "Disc diameter" in mm. */
export const fieldWords = (key: string): FieldWords => {
  const unit = UNITS.find(([ending]) => key.endsWith(ending));
  const stem = unit === undefined ? key : key.slice(0, -unit[0].length);
  return { label: LABELS[key] ?? sentence(inWords(stem)), unit: unit?.[1] ?? "" };
};

/** Origins as a page says them. */
export const ORIGIN_WORDS: Readonly<Record<string, string>> = {
  template: "template",
  invented: "invented",
  drawing: "drawing",
  "level-plane": "over a level plane",
  tape: "tape",
  bench: "bench, part off",
  maker: "maker",
  practice: "practice",
  guess: "guess",
};

/** A choice as it is said. */
export const choiceWords = (choice: string): string => ORIGIN_WORDS[choice] ?? inWords(choice);
