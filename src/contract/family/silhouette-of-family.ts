import { mmFromMetres } from "#quantity";
import { type AssumedFigure, type Axle, type Family, isAssumed, silhouetteLayouts } from "#vehicle";
import { exactMm } from "./exact-figure.ts";
import { formatFamily } from "./format-family.ts";
import type { ParsedFamily } from "./parse-family.ts";
import { parseSilhouette, type SilhouetteSheet } from "./silhouette-sheet.ts";

/** Templates place what the body holds to this many decimals of a millimetre. */
const DECIMALS = 1;

const drivenAxle = ({ front }: Family): NonNullable<SilhouetteSheet["driven_axle"]> =>
  front.driveShare >= 1 ? "front" : front.driveShare <= 0 ? "rear" : "both";

const isScaled = (rung: string): rung is "layout" | "scaled" => rung === "layout" || rung === "scaled";

/** How much lower than the same axle as built this one stands, mm. */
const lowered = (built: Axle, axle: Axle): number =>
  Number(mmFromMetres(built.spring.body.at[2] - axle.spring.body.at[2]).toFixed(DECIMALS));

/** The file of a family, what may differ in one that is only its silhouette left out. */
const comparable = (family: Family): string => {
  const { id, note, invented, assumed, ...sheet } = formatFamily(family);
  return JSON.stringify(sheet);
};

/** Whether the templates make exactly this family of these entries. */
const makes = (sheet: SilhouetteSheet, family: Family): boolean => {
  const made = parseSilhouette(sheet);
  return "family" in made && comparable(made.family) === comparable(family);
};

/** Entries by the figure they make. */
const KEYS: Readonly<Partial<Record<AssumedFigure, keyof SilhouetteSheet>>> = {
  "front-layout": "front_layout",
  "rear-layout": "rear_layout",
  wheelbase: "wheelbase_mm",
  "front-track": "front_track_mm",
  "rear-track": "rear_track_mm",
  "front-tyre-size": "tyre_size",
  "rear-tyre-size": "tyre_size",
  "kerb-mass": "kerb_mass_kg",
  "front-weight-share": "front_weight_share",
  "driven-axle": "driven_axle",
  "front-height": "front_lowered_mm",
  "rear-height": "rear_lowered_mm",
};

/** The entries somebody has made; those the family calls assumed are left out, where they are still what is assumed. */
const entered = (sheet: SilhouetteSheet, family: Family): SilhouetteSheet => {
  const assumed = new Set<string>(
    Object.entries(KEYS).flatMap(([figure, key]) => (isAssumed(family, figure as AssumedFigure) ? [key] : [])),
  );
  const made: SilhouetteSheet = Object.fromEntries(Object.entries(sheet).filter(([key]) => !assumed.has(key)));
  return makes(made, family) ? made : sheet;
};

/**
 * The entries a family was begun from, found from its own figures.
 * @returns null where the templates do not make exactly this family of any entries: it was measured, or edited since
 */
export function silhouetteOfFamily(family: Family): SilhouetteSheet | null {
  const { front, rear } = family;
  if (front.rung !== rear.rung || !isScaled(front.rung)) return null;
  const frontLayout = silhouetteLayouts.front.find((layout) => layout === front.layout);
  const rearLayout = silhouetteLayouts.rear.find((layout) => layout === rear.layout);
  if (frontLayout === undefined || rearLayout === undefined) return null;
  const asBuilt: SilhouetteSheet = {
    name: family.name,
    front_layout: frontLayout,
    rear_layout: rearLayout,
    wheelbase_mm: exactMm(family.wheelbase),
    front_track_mm: exactMm(front.track),
    rear_track_mm: exactMm(rear.track),
    tyre_size: front.wheel.tyreSize,
    kerb_mass_kg: family.kerbMass,
    front_weight_share: family.frontWeightShare,
    driven_axle: drivenAxle(family),
    ...(front.rung === "layout" && { rung: "layout" }),
  };
  const built = parseSilhouette(asBuilt);
  if ("findings" in built) return null;
  const sheet: SilhouetteSheet = {
    ...asBuilt,
    front_lowered_mm: lowered(built.family.front, front),
    rear_lowered_mm: lowered(built.family.rear, rear),
  };
  return makes(sheet, family) ? entered(sheet, family) : null;
}

/** The family other entries make in the place of one: it keeps its id, its note and whether it is invented. */
export function correctedSilhouette(family: Family, sheet: SilhouetteSheet): ParsedFamily {
  const made = parseSilhouette(sheet);
  if ("findings" in made) return made;
  const { id, invented, note } = family;
  return { family: { ...made.family, id, invented, ...(note !== undefined && { note }) } };
}
