import { type CornerRecord, cornerInput, readReference, seatInput } from "../reference/linkage/corner-record.ts";
import { type ComplianceFile, memberInput, rubberInput } from "../reference/linkage/elastic-record.ts";

const EXAMPLE = "../../docs/examples/layouts/rear-integral-link.json";

/** Requests of the doors about joints, load states, whole cars and bodies with rubber; every optional part in them. */
export function makeWholeInputs() {
  const file = readReference<ComplianceFile>("linkage/compliance-more.json");
  const corners = Object.values(file.geometries).flatMap((corner) => {
    const elastic = file.elastic[corner.name];
    return elastic ? [{ corner, elastic }] : [];
  });
  return [
    ...corners.flatMap(({ corner, elastic }) => [jointsOf(corner), loadStatesOf(corner, elastic)]),
    ...carsOf(corners.map(({ corner }) => corner)),
    balanceOf(corners),
    bodies(),
    heldBodies(),
  ];
}

function jointsOf(corner: CornerRecord) {
  const [first, second] = corner.links;
  const [x, y, z] = corner.wheel_center;
  return {
    door: "linkage.joints",
    layout: corner.name,
    input: {
      side: "left",
      ...cornerInput(corner),
      bushes: [
        { link: first?.name, end: "inner", axis: [1, 0.1, 0] },
        { link: second?.name, end: "outer", axis: [0.2, 1, -0.1] },
      ],
      drive_shaft: { inner_mm: [x + 8, 0.25 * y, z - 5], outer_mm: [x, 0.9 * y, z], inner_axis: [0, 1, 0.02] },
      tightened_at_mm: -25,
      steps: [
        { wheel_travel_mm: -40, rack_mm: corner.links.some((l) => l.rack) ? 8 : 0 },
        { wheel_travel_mm: 0 },
        { wheel_travel_mm: 35 },
      ],
    },
  };
}

function loadStatesOf(corner: CornerRecord, elastic: ComplianceFile["elastic"][string]) {
  const soft = rubberInput(elastic)[0];
  const under = corner.links.find((l) => l.name.includes("lower") || l.name.includes("spring")) ?? corner.links[0];
  return {
    door: "linkage.load-states",
    layout: corner.name,
    input: {
      side: "left",
      ...cornerInput(corner),
      spring: { ...seatInput(corner.spring), rate_n_per_mm: elastic.spring_rate },
      damper: seatInput(corner.damper),
      rubber: rubberInput(elastic),
      members: memberInput(elastic),
      wheel_load_n: elastic.wheel_load,
      unsprung_kg: 38,
      droop_stop_mm: 45,
      under: [{ link: under?.name, share: 0.8, raised_mm: 20 }],
      hand: { rock_nm: 140, bar_n: 450, told_from_mm: 0.4 },
      faults: [
        ...(soft ? [{ kind: "soft", link: soft.link, factor: 0.3, ...("end" in soft ? { end: soft.end } : {}) }] : []),
        { kind: "play", link: corner.links[0]?.name, total_mm: 0.5 },
      ],
    },
  };
}

function carsOf(corners: readonly CornerRecord[]) {
  const rear = corners.find((c) => c.axle === "rear");
  if (!rear) throw new Error("no rear corner");
  return corners
    .filter((c) => c.axle === "front")
    .map((front) => ({
      door: "linkage.car",
      layout: `${front.name} and ${rear.name}`,
      input: {
        front: cornerInput(front),
        rear: cornerInput(rear),
        front_bar: { torsion_nm_per_deg: 21, lever_mm: 240, ratio: 0.7 },
        rear_bar: { torsion_nm_per_deg: 9, lever_mm: 190, ratio: 0.8 },
        about_mm: [-1300, 20, 300],
        turn: { pivots_mm: 1380, wheelbase_mm: 2700 },
        motions: [{ heave_mm: -12, roll_deg: 1.5, pitch_deg: 0.4, rack_mm: 9 }, { roll_deg: -2 }, {}],
      },
    }));
}

/** A car in two bends, from the first front and the first rear corner, with all that carries it. */
function balanceOf(corners: readonly { corner: CornerRecord; elastic: ComplianceFile["elastic"][string] }[]) {
  const axleOf = (axle: "front" | "rear") => {
    const one = corners.find(({ corner }) => corner.axle === axle);
    if (!one) throw new Error(`no ${axle} corner`);
    return {
      ...cornerInput(one.corner),
      spring: { ...seatInput(one.corner.spring), rate_n_per_mm: one.elastic.spring_rate },
      unsprung_kg: 36,
      tyre_n_per_mm: 210,
      bar: { torsion_nm_per_deg: 18, lever_mm: 220, ratio: 0.75 },
      rubber: rubberInput(one.elastic),
      members: memberInput(one.elastic),
    };
  };
  return {
    door: "linkage.car-balance",
    layout: "first front and first rear",
    input: {
      front: axleOf("front"),
      rear: axleOf("rear"),
      mass_kg: 1600,
      front_weight_share: 0.55,
      cg_height_mm: 540,
      lateral_m_per_s2: [0, 4, -2.5],
    },
  };
}

/** The example of two moving bodies; rates invented. */
function bodies() {
  return {
    door: "linkage.bodies-compliance",
    layout: "carrier arm and integral link",
    input: {
      side: "left",
      layout: readReference<Record<string, unknown>>(EXAMPLE),
      spring_n_per_mm: 70,
      wheel_load_n: 4200,
      rubber: [
        {
          part: "arm-front",
          radial_n_per_mm: 6000,
          axial_n_per_mm: 900,
          voided_n_per_mm: 2000,
          clocking_deg: 30,
          conical_nm_per_deg: 7,
          torsional_nm_per_deg: 2.5,
        },
        { part: "arm-rear", radial_n_per_mm: 4000, rate_sd_share: 0.2 },
        { part: "arm-ball", radial_n_per_mm: 60_000 },
        { part: "camber-link", end: "from", radial_n_per_mm: 9000, axial_n_per_mm: 800, axis: [1, 0, 0] },
        { part: "toe-link", end: "from", radial_n_per_mm: 11_000, axial_n_per_mm: 900, axis: [1, 0.1, 0] },
      ],
      members: [{ link: "camber-link", n_per_mm: 90_000 }],
      hold: "contact_height",
      faults: [
        { part: "arm-front", kind: "soft", factor: 0.3, factor_low: 0.2, factor_high: 0.4 },
        { part: "arm-ball", kind: "play", total_mm: 0.8 },
      ],
      sd_mm: { x: 2, y: 2, z: 1 },
      loads: [{ lateral_n: 500, braking_n: 1000, drive_n: -200, aligning_nm: 20, contact_rise_mm: 10 }, {}],
    },
  };
}

/** The same, held; mass, stop and pushes invented. */
function heldBodies() {
  const { hold: _hold, sd_mm: _sd, loads: _loads, ...rest } = bodies().input;
  return {
    door: "linkage.bodies-load-states",
    layout: "carrier arm and integral link",
    input: {
      ...rest,
      unsprung_kg: 38,
      droop_stop_mm: 90,
      under: [{ part: "carrier-arm" }, { part: "toe-link", share: 0.5, raised_mm: 10 }],
      hand: { rock_nm: 140, bar_n: 450, told_from_mm: 0.4 },
      pushes: [{ at_mm: [-2380, 760, 315], force_n: [0, 200, 0] }],
    },
  };
}
