import { z } from "zod";

/** Figures outside these are slips of unit (key rubber-bound in docs/sources.md). */
const size = z.number().min(1e-6).max(1e9);
const frequency = z.number().min(1e-3).max(1e5).meta({ description: "more than 0" });
const speed = z.number().min(0).max(2000);

const harmonic = z.strictObject({
  order: z.number().min(1).max(1000).meta({ description: "how often it comes by in one turn of the wheel" }),
  thickness_peak_to_peak_mm: size.optional().meta({ description: "of this harmonic; this or torque_amplitude_nm" }),
  torque_amplitude_nm: size.optional(),
});

const disc = z.strictObject({
  effective_radius_mm: size,
  friction: size,
  caliper_n_per_mm: size.meta({
    description: "clamp force on one pad per mm of disc thickness, the pedal held; both pads carry it",
  }),
});

const wheel = z.strictObject({
  mass_kg: size.meta({ description: "the mass that moves fore and aft with the wheel" }),
  circumference_mm: size.meta({ description: "rolling" }),
  harmonics: z.array(harmonic).min(1).max(100),
  disc: disc.optional().meta({ description: "needed with a thickness" }),
  speeds_km_per_h: z.array(speed).max(2000),
  speed_range_km_per_h: z.tuple([speed, speed]).meta({ description: "[from, to], searched for the worst" }),
});

export const hydraulicInput = z.strictObject({
  rubber_n_per_mm: size.meta({ description: "rate of the rubber alone" }),
  loss_factor: z.number().min(0).max(100).meta({ description: "tangent of the rubber's own loss angle" }),
  volume_n_per_mm: size.meta({ description: "rate with which the chambers push the fluid" }),
  fluid_inertia_kg: size.meta({ description: "of the fluid column, referred to the movement of the bush" }),
  fluid_damping_n_s_per_mm: size.meta({ description: "of the fluid column, referred to the movement of the bush" }),
  frequencies_hz: z.array(frequency).max(2000),
  search_hz: z.tuple([frequency, frequency]).meta({ description: "[from, to], searched for the largest loss angle" }),
  wheel: wheel.optional(),
});
export type HydraulicInput = z.output<typeof hydraulicInput>;
export type HydraulicWheel = z.output<typeof wheel>;

const state = (peak: z.ZodType) =>
  z.strictObject({
    frequencies: z.array(
      z.strictObject({ frequency_hz: z.number(), stiffness_n_per_mm: z.number(), loss_angle_deg: z.number() }),
    ),
    peak_loss: peak,
  });
const worst = z.strictObject({ speed_km_per_h: z.number(), mm: z.number(), at_end: z.boolean() });

export const hydraulicOutput = z.strictObject({
  sound: state(z.strictObject({ frequency_hz: z.number(), loss_angle_deg: z.number(), at_end: z.boolean() })),
  leaked: state(z.null().meta({ description: "without the fluid the loss angle is the same everywhere" })),
  response: z
    .array(
      z.strictObject({
        speed_km_per_h: z.number(),
        order: z.number(),
        frequency_hz: z.number(),
        force_amplitude_n: z.number(),
        sound_mm_per_n: z.number(),
        leaked_mm_per_n: z.number(),
        sound_mm: z.number(),
        leaked_mm: z.number(),
      }),
    )
    .optional()
    .meta({ description: "for each speed, for each harmonic" }),
  worst: z
    .array(z.strictObject({ order: z.number(), sound: worst, leaked: worst }))
    .optional()
    .meta({ description: "for each harmonic, over the closed range of speeds" }),
});
