import {
  type CornerRecord,
  carInput,
  cornerInput,
  readReference,
  seatInput,
} from "../reference/linkage/corner-record.ts";
import { type ComplianceFile, memberInput, rubberInput } from "../reference/linkage/elastic-record.ts";
import { makeWholeInputs } from "./valid-whole-inputs.ts";

/** A valid request of one door. */
export interface ValidInput {
  readonly door: string;
  readonly layout: string;
  readonly input: Record<string, unknown>;
}

/** Length of a corner's first link, mm. */
const lengthOf = ({ links: [link] }: CornerRecord): number => {
  if (!link) throw new Error("a corner without links");
  return Math.hypot(...link.inner.map((c, i) => c - (link.outer[i] as number)));
};

/** An entry of rubber with voids and moments against turning where its axis lies level enough to clock them from up. */
function withVoids(entry: ReturnType<typeof rubberInput>[number]) {
  if (entry.link === "strut_top") return { ...entry, conical_nm_per_deg: 3 };
  const axis = "axis" in entry ? entry.axis : undefined;
  if (!axis || Math.abs(axis[2]) > 0.5 * Math.hypot(...axis)) return entry;
  return {
    ...entry,
    voided_n_per_mm: 0.6 * entry.radial_n_per_mm,
    clocking_deg: 35,
    conical_nm_per_deg: 6,
    torsional_nm_per_deg: 2,
  };
}

/** One valid request per linkage door and layout, with every optional part in it, the alignment and the rubber doors. */
export function makeValidInputs(): readonly ValidInput[] {
  const file = readReference<ComplianceFile>("linkage/compliance-more.json");
  const corners = Object.values(file.geometries).flatMap((corner): ValidInput[] => {
    const elastic = file.elastic[corner.name] ?? Object.values(file.elastic)[0];
    if (!file.elastic[corner.name] || !elastic) return [];
    const steered = corner.links.some((l) => l.rack);
    const spring = seatInput(corner.spring);
    const soft = rubberInput(elastic)[0];
    const fault = soft && { kind: "soft", factor: 0.3, ...soft };
    const softFault = fault && {
      kind: "soft",
      link: fault.link,
      factor: 0.3,
      ...("end" in fault ? { end: fault.end } : {}),
    };
    const elasticKeys = {
      rubber: rubberInput(elastic).map(withVoids),
      members: memberInput(elastic),
      wheel_load_n: elastic.wheel_load,
    };
    const rated = { ...spring, rate_n_per_mm: elastic.spring_rate };
    return [
      {
        door: "linkage.travel",
        layout: corner.name,
        input: {
          side: "left",
          ...cornerInput(corner),
          spring,
          damper: seatInput(corner.damper),
          car: carInput(corner),
          steps: [
            { wheel_travel_mm: -40, rack_mm: steered ? 10 : 0 },
            { wheel_travel_mm: 0 },
            { wheel_travel_mm: 35, rack_mm: 0 },
          ],
        },
      },
      {
        door: "linkage.compliance",
        layout: corner.name,
        input: {
          side: "left",
          ...cornerInput(corner),
          spring: rated,
          ...elasticKeys,
          hold: "contact_height",
          faults: [softFault, { kind: "play", link: corner.links[0]?.name, total_mm: 0.5 }],
          loads: [
            { lateral_n: 500, braking_n: 1000, drive_n: -200, aligning_nm: 20, contact_rise_mm: 10 },
            { braking_n: -300 },
          ],
        },
      },
      {
        door: "linkage.band",
        layout: corner.name,
        input: {
          side: "left",
          axle: corner.axle,
          ...cornerInput(corner),
          sd_mm: { x: 2, y: 1, z: 0.5 },
          travels_mm: [-30, 0, 30],
          compliance: { spring: rated, ...elasticKeys, fault: softFault },
        },
      },
      {
        door: "linkage.match",
        layout: corner.name,
        input: {
          side: "left",
          ...cornerInput(corner),
          sd_mm: { x: 2, y: 2, z: 1 },
          points: [{ point: `${corner.links[0]?.name}.inner`, sd_mm: { x: 1, y: 1, z: 1 } }],
          one_base: [
            {
              points: [`${corner.links[0]?.name}.inner`, `${corner.links[1]?.name}.inner`],
              sd_mm: { x: 1, y: 0, z: 2 },
            },
          ],
          readings: [-30, 0, 30].map((travel_mm) => ({
            travel_mm,
            travel_u_mm: 0.5,
            camber_deg: corner.static_camber_deg - 0.01 * travel_mm,
            camber_u_deg: 0.05,
            toe_deg: corner.static_toe_deg + 0.001 * travel_mm,
            toe_u_deg: 0.03,
          })),
          lengths: [{ link: corner.links[0]?.name, length_mm: lengthOf(corner), u_mm: 0.5 }],
          travels_mm: [-20, 0, 20],
          draws: { count: 3, seed: 5 },
        },
      },
    ];
  });
  return [
    ...corners,
    ...makeWholeInputs(),
    {
      door: "alignment.caster-from-sweep",
      layout: "",
      input: { camber_in_deg: -1.4, camber_out_deg: 1.3, sweep_deg: 20 },
    },
    { door: "alignment.axle", layout: "", input: { left_toe_deg: 0.1, right_toe_deg: 0.05, rim_diameter_mm: 431.8 } },
    {
      door: "rubber.rate",
      layout: "",
      input: {
        inner_radius_mm: 8,
        outer_radius_mm: 19,
        length_mm: 42,
        hardness_shore_a: 57,
        hand_force_n: 150,
        hand_moment_nm: 20,
      },
    },
    { door: "rubber.firmer", layout: "", input: { old_hardness_shore_a: 52, new_hardness_shore_a: 68 } },
    {
      door: "rubber.hydraulic",
      layout: "",
      input: {
        rubber_n_per_mm: 410,
        loss_factor: 0.07,
        volume_n_per_mm: 520,
        fluid_inertia_kg: 44,
        fluid_damping_n_s_per_mm: 2.2,
        frequencies_hz: [4, 16],
        search_hz: [1, 50],
        wheel: {
          mass_kg: 40,
          circumference_mm: 2010,
          harmonics: [
            { order: 1, thickness_peak_to_peak_mm: 0.012 },
            { order: 2, torque_amplitude_nm: 9 },
          ],
          disc: { effective_radius_mm: 131, friction: 0.39, caliper_n_per_mm: 28_000 },
          speeds_km_per_h: [70, 120],
          speed_range_km_per_h: [30, 190],
        },
      },
    },
  ];
}
