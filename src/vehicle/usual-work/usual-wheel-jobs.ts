import type { UsualFastener, UsualJob } from "./usual-job.ts";

const carrierBolts: UsualFastener = {
  item: "carrier-bolt",
  label: "Caliper carrier bolt",
  count: 2,
  policy: "if-seized",
  atRideHeight: false,
};
const hubBolts: UsualFastener = {
  item: "hub-bolt",
  label: "Hub unit bolt",
  count: 4,
  policy: "if-seized",
  atRideHeight: false,
};
const shaftNut: UsualFastener = {
  item: "shaft-nut",
  label: "Drive-shaft nut or bolt",
  count: 1,
  policy: "always-new",
  atRideHeight: false,
};

const brakes = {
  verb: "renew",
  scope: "corner",
  phase: "brakes",
  access: ["lift", "wheel-off", "caliper-aside"],
  support: "Caliper on a hook, never on its hose",
  cautions: [1, 7, 9, 13],
  loosens: ["wheel"],
  fasteners: [carrierBolts],
  pair: true,
  needsAlignment: false,
} as const satisfies Partial<UsualJob>;

const fluid = { ...brakes, access: ["lift", "wheel-off", "fluid-open"], cautions: [1, 7, 8, 9, 13], pair: false };

/** Brake work, the same on every layout, the smaller job before the one that includes it; own hours are invented start values. */
export const brakeJobs: readonly UsualJob[] = [
  {
    ...brakes,
    id: "pads",
    label: "Brake pads",
    cures: ["pads"],
    hours: 0.25,
    parts: [{ id: "pads", label: "Brake pads, one wheel", count: 1 }],
  },
  {
    ...brakes,
    id: "discs-and-pads",
    label: "Brake discs and pads",
    cures: ["disc", "pads"],
    hours: 0.45,
    parts: [
      { id: "disc", label: "Brake disc", count: 1 },
      { id: "pads", label: "Brake pads, one wheel", count: 1 },
    ],
  },
  {
    ...brakes,
    id: "caliper-guides",
    label: "Caliper guides",
    cures: ["caliper/guides"],
    verb: "overhaul",
    hours: 0.3,
    pair: false,
    parts: [{ id: "guide-kit", label: "Guide pin kit", count: 1 }],
  },
  {
    ...fluid,
    id: "caliper",
    label: "Brake caliper",
    cures: ["caliper/piston"],
    hours: 0.5,
    parts: [{ id: "caliper", label: "Brake caliper", count: 1 }],
  },
  {
    ...fluid,
    id: "brake-hose",
    label: "Brake hose",
    cures: ["brake-hose"],
    hours: 0.35,
    parts: [{ id: "brake-hose", label: "Brake hose", count: 1 }],
  },
  {
    ...fluid,
    id: "brake-fluid",
    label: "Brake fluid",
    cures: ["brakes/fluid"],
    scope: "axle",
    hours: 0.3,
    fasteners: [],
    parts: [{ id: "brake-fluid", label: "Brake fluid, half a litre", count: 1 }],
  },
  {
    ...brakes,
    id: "parking-brake",
    label: "Parking brake",
    cures: ["brakes/parking"],
    verb: "overhaul",
    scope: "axle",
    hours: 0.8,
    cautions: [1, 7, 9, 10, 13],
    parts: [{ id: "parking-brake-kit", label: "Parking brake kit, one wheel", count: 1 }],
  },
  {
    ...brakes,
    id: "brake-result",
    label: "Service brake, find the weak wheel",
    cures: ["brakes/result"],
    verb: "check",
    scope: "axle",
    hours: 0.6,
    fasteners: [],
    parts: [],
  },
];

const wheels = {
  verb: "renew",
  scope: "corner",
  phase: "chassis",
  access: ["lift", "wheel-off"],
  support: "",
  cautions: [1, 2, 13],
  loosens: ["wheel"],
  fasteners: [],
  pair: false,
  needsAlignment: false,
} as const satisfies Partial<UsualJob>;

/** Bearings, shafts, sensors, wheels and tyres, the same on every layout; own hours are invented start values. */
export const wheelJobs: readonly UsualJob[] = [
  {
    ...wheels,
    id: "wheel-bearing",
    label: "Wheel bearing",
    cures: ["wheel-bearing"],
    hours: 0.9,
    access: ["lift", "wheel-off", "caliper-aside", "knuckle-free"],
    support: "Caliper on a hook, shaft end held up",
    cautions: [1, 2, 9, 12, 13],
    fasteners: [hubBolts, shaftNut],
    parts: [{ id: "wheel-bearing", label: "Wheel bearing unit", count: 1 }],
  },
  {
    ...wheels,
    id: "drive-shaft",
    label: "Drive-shaft joint and boots",
    cures: ["drive-shaft"],
    hours: 0.9,
    access: ["lift", "wheel-off", "knuckle-free"],
    support: "Shaft held level, never hung on its inner joint",
    cautions: [1, 2, 12, 13],
    fasteners: [shaftNut],
    parts: [{ id: "shaft-boot-kit", label: "Drive-shaft joint kit", count: 1 }],
  },
  {
    ...wheels,
    id: "level-sensor",
    label: "Level sensor and its link",
    cures: ["level-sensor"],
    hours: 0.3,
    phase: "electrics",
    cautions: [1, 2, 4],
    loosens: ["sensor-link"],
    parts: [{ id: "level-sensor", label: "Level sensor with link", count: 1 }],
  },
  {
    ...wheels,
    id: "tyres",
    label: "Tyres, two of a kind",
    cures: ["tyre", "tyres"],
    hours: 0.3,
    pair: true,
    parts: [{ id: "tyre", label: "Tyre", count: 1 }],
  },
  {
    ...wheels,
    id: "wheel",
    label: "Wheel, true or renew",
    cures: ["wheel/runout"],
    hours: 0.35,
    parts: [{ id: "wheel", label: "Wheel", count: 1 }],
  },
  {
    ...wheels,
    id: "wheel-bolts",
    label: "Wheel bolts",
    cures: ["wheel-bolts"],
    hours: 0.15,
    parts: [{ id: "wheel-bolt-set", label: "Wheel bolts, one wheel", count: 1 }],
  },
];
