import type { Slip } from "./slips.ts";

/** Work of few entries with one of each kind, invented; every slip below is made in it. */
export const workSheetForSlips = {
  limits: [
    {
      place: "disc/thickness",
      axle: "front",
      quantity: "thickness",
      lower_mm: 25.6,
      owner: "maker",
      source: "invented",
      grade: "repair-first",
    },
    {
      place: "lower-arm/ball-joint",
      quantity: "play",
      upper_mm: 0.4,
      load_state: "hanging",
      owner: "law",
      source: "invented",
      grade: "repair-first",
    },
    {
      place: "tyre",
      quantity: "pressure",
      lower_bar: 2.1,
      upper_bar: 2.6,
      owner: "workshop",
      source: "invented",
      grade: "watch",
    },
  ],
  access: [{ id: "lift", label: "Lift and lower", hours: 0.2, scope: "car" }],
  operations: [
    {
      id: "renew-lower-arm",
      label: "Renew the lower arm",
      hours: 1.1,
      scope: "corner",
      phase: "chassis",
      access: ["lift"],
      fasteners: [
        {
          item: "arm-bolt",
          label: "Arm bolt",
          count: 2,
          policy: "always-new",
          stages: [{ torque_nm: 70 }, { angle_deg: 90 }],
          owner: "maker",
          source: "invented",
          at_ride_height: true,
        },
      ],
      source: "invented",
    },
  ],
  remedies: [
    {
      id: "lower-arm",
      label: "Lower arm",
      axle: "front",
      cures: ["lower-arm/front-bush", "lower-arm/rear-bush", "lower-arm/ball-joint"],
      operations: ["renew-lower-arm"],
      parts: [{ part: "arm", count: 1 }],
      pair: true,
    },
  ],
  parts: [
    { id: "arm", label: "Lower arm", price_cents: 11_400, kind: "part" },
    { id: "arm-set", label: "Arms, both sides", kind: "set", contents: [{ part: "arm", count: 2 }] },
    { id: "axle-set", label: "Front axle", kind: "set", contents: [{ part: "arm-set", count: 1 }] },
  ],
  known_faults: [
    {
      id: "arm-bush",
      position: "front/lower-arm/rear-bush",
      scope: "all",
      sign: "oil trace",
      face: "lower",
      how_to_see: "With a lamp from the wheel arch",
      told: "told",
      confirmed: 3,
      denied: 1,
      prior_factor: 2,
    },
  ],
  alignment: [{ axle: "front", camber_deg: [-1.2, -0.4], hub_to_arch_mm: 362, owner: "maker", source: "invented" }],
};

const wrong = (code: string, path: string, to: unknown): Slip => ({ code, path, edits: [{ set: path, to }] });
const removed = (code: string, path: string): Slip => ({ code, path, edits: [{ remove: path }] });

/** One slip each: what must be said, and where. */
export const workSlips: readonly Slip[] = [
  { ...wrong("unknown-access", "work.operations[0].access[0]", "lfit"), hint: /nearest is lift/ },
  {
    ...wrong("unknown-operation", "work.remedies[0].operations[0]", "renew-lower-amr"),
    hint: /nearest is renew-lower-arm/,
  },
  { ...wrong("unknown-part", "work.remedies[0].parts[0].part", "spring"), hint: /Add it to work\.parts/ },
  wrong("unknown-part", "work.parts[1].contents[0].part", "bolt-of-nobody"),
  {
    ...wrong("unknown-place", "work.remedies[0].cures[1]", "lower-arm/rear-bsh"),
    hint: /nearest is lower-arm\/rear-bush/,
  },
  wrong("unknown-place", "work.limits[1].place", "lower-arm/hinge"),
  wrong("unknown-position", "work.known_faults[0].position", "rear/lower-arm/rear-bush"),
  removed("missing-key", "work.limits[0].owner"),
  wrong("unknown-word", "work.limits[0].owner", "somebody"),
  { code: "limit-without-end", path: "work.limits[0]", edits: [{ remove: "work.limits[0].lower_mm" }] },
  { code: "range-not-rising", path: "work.limits[2].upper_bar", edits: [{ set: "work.limits[2].upper_bar", to: 1.9 }] },
  wrong("range-not-rising", "work.alignment[0].camber_deg", [-0.4, -1.2]),
  wrong("torque-implausible", "work.operations[0].fasteners[0].stages[0].torque_nm", 7000),
  wrong("torque-implausible", "work.operations[0].fasteners[0].stages[0].torque_nm", 0.07),
  wrong("angle-implausible", "work.operations[0].fasteners[0].stages[1].angle_deg", 1.57),
  {
    code: "angle-without-torque",
    path: "work.operations[0].fasteners[0].stages[0]",
    edits: [{ remove: "work.operations[0].fasteners[0].stages[0]" }],
  },
  {
    code: "duplicate-work-id",
    path: "work.parts[3].id",
    edits: [{ append: "work.parts", entry: { id: "arm", label: "Another arm", kind: "part" } }],
  },
  {
    code: "set-in-itself",
    path: "work.parts[1].contents",
    edits: [{ set: "work.parts[1].contents", to: [{ part: "axle-set", count: 1 }] }],
  },
  { code: "set-without-contents", path: "work.parts[1]", edits: [{ remove: "work.parts[1].contents" }] },
  wrong("contents-without-set", "work.parts[1].kind", "part"),
  {
    code: "duplicate-target",
    path: "work.alignment[1].axle",
    edits: [{ append: "work.alignment", entry: { axle: "front", owner: "maker", source: "invented" } }],
  },
  {
    code: "key-unit",
    path: "work.limits[0].lower_bar",
    edits: [{ set: "work.limits[0].lower_bar", to: 2 }],
  },
  wrong("wrong-type", "work.parts[0].price_cents", "114 euros"),
];
