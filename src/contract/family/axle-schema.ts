import { z } from "zod";
import { coordinateMm, deviationMm, lengthMm, massKg, originWord, outlineMm, placeMm, share } from "./figure-schema.ts";
import { bar, brake, damper, link, spring, strut, tornShare, trailingArm } from "./joint-schema.ts";

/** Farther from ride height than the wheel of any road car travels (invented bound). */
const FARTHEST_STOP_MM = 400;

export const layoutWord = z.enum(["five-link", "double-wishbone", "strut", "trailing-arm", "bodies"]);
export const rungWord = z.enum(["layout", "scaled", "measured", "matched"]);

const defaults = z
  .strictObject({
    origin: originWord.optional().meta({ description: "Origin of every hard point that gives none. Absent: guess." }),
    sd_mm: deviationMm.optional().meta({
      description:
        "Standard deviation along x, y, z in mm of every hard point that gives none. Absent: what is usual for its origin.",
    }),
    rate_origin: originWord.optional().meta({ description: "Origin of every rate that gives none. Absent: guess." }),
    rate_sd_share: z.number().min(0).max(2).optional().meta({
      description: "Relative standard deviation of every rate that gives none. Absent: what is usual for its origin.",
    }),
    torn_share: tornShare.optional().meta({ description: "Torn share of every bush that gives none." }),
  })
  .meta({
    id: "axle_defaults",
    description: "What the points and rubber of this axle take where they say nothing themselves.",
  });

export const wheel = z
  .strictObject({
    centre_mm: placeMm.meta({ description: "Wheel centre of the left wheel at ride height, in mm." }),
    camber_deg: z
      .number()
      .min(-15)
      .max(15)
      .meta({ description: "Camber at ride height in degrees; positive: top outward." }),
    toe_deg: z
      .number()
      .min(-10)
      .max(10)
      .meta({ description: "Toe of one wheel at ride height in degrees; positive: in." }),
    tyre_size: z.string().min(1).max(40).meta({ description: "As on the sidewall: 225/50 R17." }),
    loaded_radius_mm: lengthMm.optional().meta({
      description:
        "From the wheel centre to the contact patch along the wheel's plane in mm. Absent: the tyre just touches z = 0.",
    }),
    tyre_width_mm: lengthMm.optional().meta({ description: "Absent: the nominal width of the tyre size, in mm." }),
    free_radius_mm: lengthMm
      .optional()
      .meta({ description: "Absent: half the nominal diameter of the tyre size, in mm." }),
    rim_diameter_mm: lengthMm
      .optional()
      .meta({ description: "Absent: the nominal rim diameter of the tyre size, in mm." }),
    rim_width_mm: lengthMm
      .optional()
      .meta({ description: "Between the bead seats in mm. Absent: 0.85 of the tyre width, to the nearest half inch." }),
    rim_offset_mm: coordinateMm
      .optional()
      .meta({ description: "From the rim's middle outward to its mounting face in mm. Absent: 45." }),
  })
  .meta({ id: "wheel", description: "The left wheel at ride height." });

/** Every key of an axle sheet; the whole is put together in axleSheet. */
export const axleShape = {
  layout: layoutWord.meta({ description: "The linkage of this axle." }),
  rung: rungWord.meta({ description: "How well its geometry is known: layout, scaled, measured, matched." }),
  defaults: defaults.optional(),
  track_mm: lengthMm.meta({ description: "Distance between the wheel centres in mm." }),
  wheel,
  bodies: z.record(z.string(), z.unknown()).optional().meta({
    description:
      "Only where layout is bodies, and then instead of links, strut, trailing_arm, spring and damper: a linkage of several bodies as docs/family-sheet.md says; its layout as in layout.schema.json.",
  }),
  links: z.array(link).min(1).max(12).meta({ description: "All links of the left wheel, tie rod included." }),
  strut: strut.optional(),
  trailing_arm: trailingArm.optional(),
  spring,
  damper,
  bar: bar.optional(),
  brake,
  subframe_mm: z.array(outlineMm).max(20).optional().meta({
    description:
      "Outlines of the subframe as seen from below, both sides, [x, y] in mm; the first is the outer one, the others are openings.",
  }),
  subframe_half_mm: z.array(outlineMm).max(20).optional().meta({
    description:
      "Instead of subframe_mm: the left halves only, from the front centre line round to the rear centre line; mirrored.",
  }),
  subframe_mounts_mm: z
    .array(placeMm)
    .max(12)
    .optional()
    .meta({ description: "Where the subframe is bolted to the body, both sides, each [x, y, z] in mm." }),
  knuckle_mm: z
    .array(outlineMm)
    .max(20)
    .optional()
    .meta({ description: "Extra metal of the left knuckle as seen from below, [x, y] in mm." }),
  points_confirmed: z.boolean().optional().meta({
    description:
      "True where somebody has looked again at hard points of an unusual order or motion and they are so. Absent: false.",
  }),
  correlation: z
    .strictObject({
      points: z.array(z.string()).min(1).max(30).meta({
        description:
          'Hard points by their first end: "toe-link.inner", "strut.top", "strut.axis-point", "trailing-arm.bush".',
      }),
      lower: z.array(z.array(z.number().min(-1).max(1))).meta({
        description: "Below the diagonal, row by row: x, y, z of one point after another; row i has i numbers.",
      }),
    })
    .optional()
    .meta({
      id: "correlation",
      description: "How the errors of the hard points hang together. Absent: each has an error of its own.",
    }),
  rack_travel_mm: lengthMm
    .optional()
    .meta({ description: "Rack travel from the middle to one end in mm; steered axles." }),
  driven: z.boolean().meta({ description: "True where the engine drives this axle." }),
  level_sensor: z
    .boolean()
    .optional()
    .meta({ description: "True where a level sensor hangs on this axle. Absent: false." }),
  unsprung_mass_kg: massKg.meta({ description: "Mass that moves with one wheel, in kg." }),
  brake_share: share.meta({ description: "Share of the total brake force taken by this axle." }),
  drive_share: share.meta({ description: "Share of the total drive torque taken by this axle." }),
  bump_stop_mm: lengthMm
    .max(FARTHEST_STOP_MM)
    .meta({ description: "Wheel travel from ride height up to the bump stop in mm." }),
  droop_stop_mm: lengthMm
    .max(FARTHEST_STOP_MM)
    .meta({ description: "Wheel travel from ride height down to full droop in mm." }),
};

/** The data sheet of one axle. */
export const axleSheet = z
  .strictObject(axleShape)
  .meta({ id: "axle", description: "One axle: geometry and rubber of its left wheel, and what is drawn." });

export type AxleSheet = z.infer<typeof axleSheet>;
export type WheelSheet = z.infer<typeof wheel>;
export type DefaultsSheet = z.infer<typeof defaults>;
