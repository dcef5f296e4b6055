import { z } from "zod";
import {
  coordinateMm,
  deviationMm,
  direction,
  hyphenName,
  lengthMm,
  originWord,
  placeMm,
  rateNPerMm,
  share,
  words,
} from "./figure-schema.ts";

/** A hard point of the left side: [x, y, z] alone takes origin and standard deviation from the axle's defaults. */
export const hardPoint = z
  .union([
    placeMm,
    z.strictObject({
      at_mm: placeMm.meta({
        description: "[x, y, z] in mm: x forward from the front axle, y left, z up from the design ground.",
      }),
      sd_mm: deviationMm.optional().meta({ description: "Standard deviation along x, y and z in mm." }),
      origin: originWord.optional(),
    }),
  ])
  .meta({
    id: "hard_point",
    description:
      "A point of the left side at ride height, in mm: [x, y, z], or an object where its own origin or standard deviation is given.",
  });

/** More fluid than any bush holds, or less than does anything, is a slip of unit (invented bounds). */
const fluidFigure = z.number().min(1e-3).max(1000);

/** More than any bush of a car resists a turn with, in N m per degree (invented bound). */
const momentNmPerDeg = z.number().positive().max(10_000);

/** Below and above it another scale is read (from memory). */
const hardnessShoreA = z.number().min(10).max(95);

const tornRange = z
  .union([
    z.tuple([share, share]),
    z.strictObject({
      low_share: share.meta({ description: "Least share of the sound rate that may be left." }),
      high_share: share.meta({ description: "Greatest share of the sound rate that may be left." }),
      origin: originWord.optional(),
    }),
  ])
  .meta({
    id: "torn_range",
    description:
      "Share of the sound rate a torn bush still has: [low, high], 0 to 1, or an object with its own origin.",
  });

/** What share of its rates a bush still has at each grade of wear. */
export const tornShare = z
  .strictObject({
    watch: tornRange.optional().meta({ description: "At the grade watch." }),
    plan: tornRange.optional().meta({ description: "At the grade plan; not above watch." }),
    repair_first: tornRange.optional().meta({ description: "At the grade repair first; not above plan." }),
  })
  .meta({ id: "torn_share", description: "Share of its sound rates a torn bush still has, as a range per grade." });

/** The fluid of a hydraulic bush, referred to its movement across the axis. */
export const fluidFill = z
  .strictObject({
    volume_n_per_mm: rateNPerMm.meta({ description: "Rate with which the chambers push the fluid, in N/mm." }),
    inertia_kg: fluidFigure.meta({ description: "Inertia of the fluid column in kg." }),
    damping_n_s_per_mm: fluidFigure.meta({ description: "Damping of the fluid column in N s/mm." }),
    loss_factor: z
      .number()
      .gt(0)
      .max(2)
      .meta({ description: "Tangent of the rubber's own loss angle; about 0.03 to 0.15." }),
    sd_share: z.number().min(0).max(2).optional().meta({ description: "Relative standard deviation of each figure." }),
    origin: originWord.optional(),
  })
  .meta({
    id: "fluid_fill",
    description:
      "Fluid of a hydraulic bush, its inertia and damping referred to the movement of the bush across its axis.",
  });

/** One end of a link, or one mount. */
export const joint = z
  .strictObject({
    kind: z.enum(["bush", "hydraulic-bush", "ball-joint", "rigid"]).meta({ description: "What sits there." }),
    radial_n_per_mm: rateNPerMm
      .optional()
      .meta({ description: "Rate across the axis in N/mm; of a ball joint in every direction. Absent: rigid." }),
    axial_n_per_mm: rateNPerMm
      .optional()
      .meta({ description: "Rate along the axis in N/mm; only together with axis." }),
    axis: direction.optional().meta({ description: "Direction of the bush's axis, [x, y, z], any length; left side." }),
    voided_n_per_mm: rateNPerMm.optional().meta({
      description:
        "Rate across the axis through the voids in N/mm; radial_n_per_mm then holds across both. Only together with clocking_deg.",
    }),
    clocking_deg: z.number().min(-360).max(360).optional().meta({
      description:
        "Where the voids lie, in degrees: turned about the axis as given, right-handed, from straight up; about an axis more upright than level, from forward. Left side.",
    }),
    conical_nm_per_deg: momentNmPerDeg
      .optional()
      .meta({ description: "Moment against tilting the axis, in N m per degree. Absent: nothing resists." }),
    torsional_nm_per_deg: momentNmPerDeg
      .optional()
      .meta({ description: "Moment against turning about the axis, in N m per degree. Absent: nothing resists." }),
    hardness_shore_a: hardnessShoreA.optional().meta({
      description:
        "Hardness of its rubber, Shore A. What a harder part does is computed from it; the rates given stand. Absent: not on file.",
    }),
    rate_sd_share: z
      .number()
      .min(0)
      .max(2)
      .optional()
      .meta({ description: "Relative standard deviation of all rates together." }),
    rate_origin: originWord.optional(),
    torn_share: tornShare.optional(),
    fluid: fluidFill.optional().meta({ description: "Only of a hydraulic bush with a rate. Absent: not on file." }),
    outer_diameter_mm: lengthMm.optional().meta({ description: "Outer diameter in mm, for the drawing." }),
    length_mm: lengthMm.optional().meta({ description: "Length along its axis in mm, for the drawing." }),
    label: words
      .optional()
      .meta({ description: "What the trade calls it where the plain words are not enough: front bush." }),
  })
  .meta({ id: "joint", description: "A bush, hydraulic bush, ball joint or rigid pivot with its rates." });

/** Width as seen from below and height. */
export const sectionMm = z
  .tuple([lengthMm, lengthMm])
  .meta({ description: "[width as seen from below, height] in mm, for the drawing." });

/** A link of one wheel, left side. */
export const link = z
  .strictObject({
    name: hyphenName.meta({ description: "Its name in this file: lower-case words joined by hyphens." }),
    label: words.optional().meta({ description: "As the trade says it; without it the name in words." }),
    inner_mm: hardPoint.meta({ description: "Where it is held in the body or subframe, in mm." }),
    outer_mm: hardPoint.meta({ description: "Where it is held in the knuckle, in mm." }),
    steered: z.boolean().optional().meta({ description: "True where the rack moves its inner end. Absent: false." }),
    inner_joint: joint.optional().meta({ description: "What sits at its inner end. Absent: a rigid bush." }),
    outer_joint: joint.optional().meta({ description: "What sits at its outer end. Absent: a rigid ball joint." }),
    member_n_per_mm: rateNPerMm
      .optional()
      .meta({ description: "Rate of the bare link along its length in N/mm. Absent: rigid." }),
    section_mm: sectionMm.optional(),
    arm: hyphenName
      .optional()
      .meta({ description: "Name of the rigid arm this link is a leg of; legs of one arm share their outer point." }),
    sheet: z.enum(["lower", "upper"]).optional().meta({
      description: "Corner sheet it is drawn on. Absent: lower where its outer end lies below the wheel centre.",
    }),
  })
  .meta({ id: "link", description: "A link from the body (inner) to the knuckle (outer) of the left wheel." });

export const strut = z
  .strictObject({
    top_mm: hardPoint.meta({ description: "Fixed in the body, in mm." }),
    axis_point_mm: hardPoint.meta({
      description: "Fixed in the knuckle; the line through both keeps passing through the top, in mm.",
    }),
    top_mount: joint.optional().meta({
      description:
        "The rubber of the top mount; its axis is the strut line, along which it has no rate. Absent: a rigid bush.",
    }),
  })
  .meta({ id: "strut", description: "A damper strut that guides the wheel." });

export const trailingArm = z
  .strictObject({
    bush_mm: hardPoint.meta({ description: "Middle of its front bush, in mm." }),
    free_axis: direction.optional().meta({
      description: "Direction along which the bush lets the arm slide; absent: held in all three directions.",
    }),
    bush_joint: joint.optional().meta({ description: "The rubber of its front bush. Absent: a rigid bush." }),
    section_mm: sectionMm.optional(),
  })
  .meta({ id: "trailing_arm", description: "An arm fixed to the knuckle and held in a bush ahead of it." });

/** Where the moving end of a spring or damper sits. */
export const seat = z
  .discriminatedUnion("on", [
    z.strictObject({
      on: z.literal("knuckle").meta({ description: "On the knuckle." }),
      moving_mm: hardPoint.meta({ description: "Moving end at ride height, in mm." }),
    }),
    z.strictObject({
      on: z.literal("link").meta({ description: "On the line of one link." }),
      link: words.meta({ description: "Name of the link." }),
      fraction: share.meta({ description: "How far along the link from its inner end, 0 to 1." }),
    }),
    z.strictObject({
      on: z.literal("arm").meta({ description: "On a rigid arm of two links." }),
      links: z.tuple([words, words]).meta({ description: "Names of the two links of the arm." }),
      moving_mm: hardPoint.meta({ description: "Moving end at ride height, in mm." }),
    }),
  ])
  .meta({
    id: "seat",
    description: "Where the moving end sits: on the knuckle, on one link, or on the rigid arm of two links.",
  });

export const spring = z
  .strictObject({
    body_mm: hardPoint.meta({ description: "Upper seat in the body, in mm." }),
    seat,
    rate_n_per_mm: rateNPerMm.meta({ description: "Rate in N/mm." }),
    coil_diameter_mm: lengthMm
      .optional()
      .meta({ description: "Mean diameter of the coil in mm, for the drawing. Absent: 110." }),
    wire_diameter_mm: lengthMm
      .optional()
      .meta({ description: "Diameter of the wire in mm, for the drawing. Absent: 12." }),
  })
  .meta({ id: "spring", description: "The coil spring of one wheel." });

export const damper = z
  .strictObject({
    body_mm: hardPoint.meta({ description: "Upper end in the body, in mm." }),
    seat,
    tube_diameter_mm: lengthMm
      .optional()
      .meta({ description: "Diameter of the tube in mm, for the drawing. Absent: 50." }),
    kind: z
      .enum(["passive", "adaptive"])
      .optional()
      .meta({ description: "Adaptive: force set by current. Absent: passive." }),
  })
  .meta({ id: "damper", description: "The damper of one wheel." });

export const bar = z
  .strictObject({
    diameter_mm: lengthMm.meta({ description: "Diameter in mm." }),
    path_mm: z
      .array(placeMm)
      .min(2)
      .max(60)
      .meta({ description: "From the middle of the car to the left end at ride height, each [x, y, z] in mm." }),
    body_bush_mm: placeMm.meta({ description: "Left bush on the body, in mm." }),
    link_upper_mm: placeMm.meta({ description: "Upper end of the left drop link, in mm." }),
    link_lower_mm: placeMm.meta({ description: "Lower end of the left drop link, in mm." }),
  })
  .meta({ id: "bar", description: "The anti-roll bar." });

export const brake = z
  .strictObject({
    disc_diameter_mm: lengthMm.meta({ description: "Diameter of the disc in mm." }),
    disc_thickness_mm: lengthMm.meta({ description: "New thickness of the disc in mm." }),
    vented: z.boolean().meta({ description: "True for a vented disc." }),
    hat_depth_mm: coordinateMm.meta({ description: "From the mounting face inward to the middle of the disc, in mm." }),
    piston_diameter_mm: lengthMm.meta({ description: "Diameter of the piston in mm." }),
    pad_thickness_mm: lengthMm.meta({ description: "New lining of one pad without its plate, in mm." }),
    caliper_at: z.enum(["front", "rear"]).meta({ description: "Caliper ahead of or behind the wheel centre." }),
    parking: z.boolean().meta({ description: "True where the parking brake acts on this axle." }),
  })
  .meta({ id: "brake", description: "Disc, pads and caliper of one wheel." });
