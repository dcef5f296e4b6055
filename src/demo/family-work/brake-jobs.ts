import type { JobRow } from "./job-rows.ts";

/** Own hours of the brake work of one axle of an invented car line. */
export interface BrakeHours {
  readonly discs: number;
  readonly pads: number;
  readonly guides: number;
  readonly caliper: number;
  readonly hose: number;
  readonly fluid: number;
  /** null: no parking brake on this axle. */
  readonly parking: number | null;
}

/** Brake work of one axle, the smaller job before the one that includes it; every line of it is invented. */
export function brakeJobs(axle: "front" | "rear", hours: BrakeHours): JobRow[] {
  const at = { axle, phase: "brakes", loosens: ["wheel"] } as const;
  const service = axle === "rear" && hours.parking !== null ? [10] : [];
  const open = ["lift", "wheel-off", `${axle}-fluid-open`];
  const aside = ["lift", "wheel-off", `${axle}-caliper-aside`];
  const hook = "Caliper on a hook, nothing hangs on its hose";
  return [
    {
      ...at,
      id: "pads",
      label: "Brake pads",
      verb: "renew",
      cures: ["pads/thickness", "pads/taper"],
      hours: hours.pads,
      access: aside,
      support: hook,
      cautions: [1, 7, 9, ...service, 13],
      fasteners: [["guide-bolt", 2]],
      parts: [[`${axle}-pads`, 1]],
      pair: true,
    },
    {
      ...at,
      id: "discs-and-pads",
      label: "Brake discs and pads",
      verb: "renew",
      cures: ["disc/thickness", "disc/variation", "disc/runout", "disc/surface", "pads/thickness", "pads/taper"],
      hours: hours.discs,
      access: aside,
      support: hook,
      cautions: [1, 7, 9, ...service, 13],
      fasteners: [
        [`${axle}-carrier-bolt`, 2],
        ["disc-screw", 1],
      ],
      parts: [
        [`${axle}-disc`, 1],
        [`${axle}-pads`, 1],
      ],
      pair: true,
    },
    {
      ...at,
      id: "caliper-guides",
      label: "Caliper guides",
      verb: "overhaul",
      cures: ["caliper/guides"],
      hours: hours.guides,
      access: aside,
      support: hook,
      cautions: [1, 7, 9, 13],
      fasteners: [["guide-bolt", 2]],
      parts: [[`${axle}-guide-kit`, 1]],
    },
    {
      ...at,
      id: "caliper",
      label: "Brake caliper",
      verb: "renew",
      cures: ["caliper/piston"],
      hours: hours.caliper,
      access: open,
      cautions: [1, 7, 8, 9, ...service, 13],
      fasteners: [
        [`${axle}-carrier-bolt`, 2],
        ["hose-washer", 2],
      ],
      parts: [[`${axle}-caliper`, 1]],
    },
    {
      ...at,
      id: "brake-hose",
      label: "Brake hose",
      verb: "renew",
      cures: ["brake-hose"],
      hours: hours.hose,
      access: open,
      cautions: [1, 8, 9, 13],
      fasteners: [["hose-washer", 2]],
      parts: [[`${axle}-brake-hose`, 1]],
      pair: true,
    },
    {
      ...at,
      id: "brake-fluid",
      label: "Brake fluid",
      verb: "renew",
      cures: ["brakes/fluid"],
      hours: hours.fluid,
      scope: "axle",
      access: open,
      cautions: [1, 8, 9],
      parts: [["brake-fluid", 1]],
    },
    {
      ...at,
      id: "brake-result",
      label: "Service brake, find the weak wheel",
      verb: "check",
      cures: ["brakes/result"],
      hours: 0.5,
      scope: "axle",
      access: aside,
      cautions: [1, 7, 9],
      parts: [],
    },
    ...(hours.parking === null
      ? []
      : [
          {
            ...at,
            id: "parking-brake",
            label: "Parking brake",
            verb: "overhaul",
            cures: ["brakes/parking"],
            hours: hours.parking,
            scope: "axle",
            access: aside,
            support: hook,
            cautions: [1, 7, 9, 10, 13],
            parts: [["parking-kit", 1]],
          } as const satisfies JobRow,
        ]),
  ];
}

/** Own hours of the work around a hub of an invented car line. */
export interface HubHours {
  readonly bearing: number;
  /** null: not driven. */
  readonly shaft: number | null;
  /** null: no level sensor. */
  readonly sensor: number | null;
}

/** Bearings, shafts, sensors, wheels and tyres of one axle; every line of it is invented. */
export function hubJobs(axle: "front" | "rear", hours: HubHours): JobRow[] {
  const at = { axle, access: ["lift", "wheel-off"], loosens: ["wheel"] } as const;
  const rows: JobRow[] = [
    {
      ...at,
      id: "wheel-bearing",
      label: "Wheel bearing",
      verb: "renew",
      cures: ["wheel-bearing"],
      hours: hours.bearing,
      access: ["lift", "wheel-off", `${axle}-caliper-aside`],
      support: "Caliper on a hook; the shaft, where there is one, held level",
      cautions: [1, 2, 9, 12, 13],
      fasteners: [["hub-bolt", 4], ...(hours.shaft === null ? [] : ([["shaft-bolt", 1]] as const))],
      parts: [[`${axle}-hub-unit`, 1]],
    },
    {
      ...at,
      id: "tyres",
      label: "Tyres, two of a kind",
      verb: "renew",
      cures: ["tyre/tread", "tyre/condition", "tyres/match"],
      hours: 0.35,
      cautions: [1, 13],
      fasteners: [["wheel-bolt", 5]],
      parts: [["tyre", 1]],
      pair: true,
    },
    {
      ...at,
      id: "wheel",
      label: "Wheel, trued or renewed",
      verb: "renew",
      cures: ["wheel/runout"],
      hours: 0.4,
      cautions: [1, 13],
      fasteners: [["wheel-bolt", 5]],
      parts: [["wheel", 1]],
    },
    {
      ...at,
      id: "wheel-bolts",
      label: "Wheel bolts",
      verb: "renew",
      cures: ["wheel-bolts"],
      hours: 0.15,
      cautions: [1, 13],
      fasteners: [["wheel-bolt", 5]],
      parts: [["wheel-bolt", 5]],
    },
  ];
  if (hours.shaft !== null)
    rows.push({
      ...at,
      id: "drive-shaft",
      label: "Drive-shaft joints and boots",
      verb: "overhaul",
      cures: ["drive-shaft"],
      hours: hours.shaft,
      support: "Shaft held level, never hung on its inner joint",
      cautions: [1, 2, 12, 13],
      fasteners: [["shaft-bolt", 1]],
      parts: [[`${axle}-shaft-kit`, 1]],
    });
  if (hours.sensor !== null)
    rows.push({
      ...at,
      id: "level-sensor",
      label: "Level sensor and its link",
      verb: "renew",
      cures: ["level-sensor"],
      hours: hours.sensor,
      phase: "electrics",
      cautions: [1, 2],
      loosens: ["sensor-link"],
      parts: [["level-sensor", 1]],
    });
  return rows;
}
