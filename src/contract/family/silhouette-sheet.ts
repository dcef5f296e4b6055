import { z } from "zod";
import type { Finding } from "#numeric";
import { metresFromMm, mmFromMetres } from "#quantity";
import {
  familyFromSilhouette,
  type SilhouetteEntries,
  silhouetteDefaults,
  silhouetteLayouts,
  silhouetteRanges,
} from "#vehicle";
import { parseWire } from "../refusal.ts";
import { words } from "./figure-schema.ts";
import type { ParsedFamily } from "./parse-family.ts";

const lengthIn = ([low, high]: readonly [number, number]) =>
  z.number().min(mmFromMetres(low)).max(mmFromMetres(high)).optional();
const figureIn = ([low, high]: readonly [number, number]) => z.number().min(low).max(high).optional();
const standard = (value: string | number): string => `Absent: ${value}.`;
const defaults = silhouetteDefaults;

/** A car nobody has measured, as it is entered: every key may be left out. */
export const silhouetteSheet = z
  .strictObject({
    name: words.optional().meta({ description: "What the workshop calls this car line." }),
    front_layout: z
      .enum(silhouetteLayouts.front)
      .optional()
      .meta({ description: `Silhouette of the front axle. ${standard(defaults.frontLayout)}` }),
    rear_layout: z
      .enum(silhouetteLayouts.rear)
      .optional()
      .meta({ description: `Silhouette of the rear axle. ${standard(defaults.rearLayout)}` }),
    wheelbase_mm: lengthIn(silhouetteRanges.wheelbase).meta({
      description: `Distance between the axles in mm. ${standard(mmFromMetres(defaults.wheelbase))}`,
    }),
    front_track_mm: lengthIn(silhouetteRanges.frontTrack).meta({
      description: `Between the middles of the front tyres in mm. ${standard(mmFromMetres(defaults.frontTrack))}`,
    }),
    rear_track_mm: lengthIn(silhouetteRanges.rearTrack).meta({
      description: `Between the middles of the rear tyres in mm. ${standard(mmFromMetres(defaults.rearTrack))}`,
    }),
    tyre_size: z
      .string()
      .min(1)
      .max(40)
      .optional()
      .meta({ description: `As on the sidewall. ${standard(defaults.tyreSize)}` }),
    kerb_mass_kg: figureIn(silhouetteRanges.kerbMass).meta({
      description: `Mass of the empty car ready to drive, in kg. ${standard(defaults.kerbMass)}`,
    }),
    front_weight_share: figureIn(silhouetteRanges.frontWeightShare).meta({
      description: `Share of the kerb mass on the front axle. ${standard(defaults.frontWeightShare)}`,
    }),
    driven_axle: z
      .enum(["front", "rear", "both"])
      .optional()
      .meta({ description: `Axle the engine drives. ${standard(defaults.drivenAxle)}` }),
    front_lowered_mm: lengthIn(silhouetteRanges.frontLowered).meta({
      description: "How much lower than built the front stands, in mm; negative: raised. Absent: 0.",
    }),
    rear_lowered_mm: lengthIn(silhouetteRanges.rearLowered).meta({
      description: "How much lower than built the rear stands, in mm; negative: raised. Absent: 0.",
    }),
    rung: z.enum(["layout", "scaled"]).optional().meta({
      description:
        "scaled: templates fitted to these measures; layout: places only, nothing is computed. Absent: scaled.",
    }),
  })
  .meta({ title: "Silhouette of a car", description: "What can be told of a car nobody has measured." });

export type SilhouetteSheet = z.infer<typeof silhouetteSheet>;

const wireKeys: Readonly<Record<keyof SilhouetteEntries, keyof SilhouetteSheet>> = {
  name: "name",
  frontLayout: "front_layout",
  rearLayout: "rear_layout",
  wheelbase: "wheelbase_mm",
  frontTrack: "front_track_mm",
  rearTrack: "rear_track_mm",
  tyreSize: "tyre_size",
  kerbMass: "kerb_mass_kg",
  frontWeightShare: "front_weight_share",
  drivenAxle: "driven_axle",
  frontLowered: "front_lowered_mm",
  rearLowered: "rear_lowered_mm",
};

/** Layouts people meet for which there is no template yet. */
const NOT_OFFERED = /twist|torsion|live|solid|rigid|leaf|swing/i;

/** What to do about a layout that is not offered, and about a length in metres, where nothing else is said. */
function withHint(finding: Finding): Finding {
  const { code, path, got, hint } = finding;
  if (code === "unknown-word" && path.endsWith("_layout") && NOT_OFFERED.test(got))
    return {
      ...finding,
      hint: "Not offered yet. Take no other layout for it: its places and figures would be another axle's.",
    };
  const metres = Number(got);
  return code === "out-of-range" && hint === "" && path.endsWith("_mm") && metres > 0.5 && metres < 6
    ? {
        ...finding,
        hint: `It looks like metres: in millimetres it would be ${Number((metres * 1000).toPrecision(12))}.`,
      }
    : finding;
}

/**
 * The family of a silhouette that is already JSON data, or a finding per entry no template fits, all at once.
 * @param before what reading its text has found already
 */
export function parseSilhouette(document: unknown, before: readonly Finding[] = []): ParsedFamily {
  const parsed = parseWire(silhouetteSheet, document, before);
  if ("findings" in parsed) return { findings: parsed.findings.map(withHint) };
  const made = familyFromSilhouette(entriesOf(parsed.value), parsed.value.rung ?? "scaled");
  if ("family" in made) return made;
  return {
    findings: made.findings.map((finding) => ({
      ...finding,
      path: wireKeys[finding.path as keyof SilhouetteEntries] ?? finding.path,
    })),
  };
}

function entriesOf(sheet: SilhouetteSheet): SilhouetteEntries {
  const length = (key: keyof SilhouetteEntries, mm: number | undefined) =>
    mm === undefined ? {} : { [key]: metresFromMm(mm) };
  return {
    ...(sheet.name !== undefined && { name: sheet.name }),
    ...(sheet.front_layout !== undefined && { frontLayout: sheet.front_layout }),
    ...(sheet.rear_layout !== undefined && { rearLayout: sheet.rear_layout }),
    ...(sheet.tyre_size !== undefined && { tyreSize: sheet.tyre_size }),
    ...(sheet.kerb_mass_kg !== undefined && { kerbMass: sheet.kerb_mass_kg }),
    ...(sheet.front_weight_share !== undefined && { frontWeightShare: sheet.front_weight_share }),
    ...(sheet.driven_axle !== undefined && { drivenAxle: sheet.driven_axle }),
    ...length("wheelbase", sheet.wheelbase_mm),
    ...length("frontTrack", sheet.front_track_mm),
    ...length("rearTrack", sheet.rear_track_mm),
    ...length("frontLowered", sheet.front_lowered_mm),
    ...length("rearLowered", sheet.rear_lowered_mm),
  };
}
