import { makeValidInputs } from "./valid-inputs.ts";

type Json = Record<string, unknown>;
/** A request as a test takes it apart; every key may be anything. */
// biome-ignore lint/suspicious/noExplicitAny: the tests spoil requests key by key
export type Request = any;

const valid = makeValidInputs();
export const DOUBLE_WISHBONE = "front_double_wishbone";
const STRUT = "front_strut_open";
const THREE_LATERALS = "rear_trailing_arm_three_open";

/** A valid request of a door for a layout, to be spoilt. */
export function validRequest(door: string, layout: string): Request {
  const found = valid.find((v) => v.door === door && v.layout === layout);
  if (!found) throw new Error(`no valid request of ${door} for ${layout}`);
  return structuredClone(found.input);
}

/** One way to spoil a request, and what must be said of it. */
export interface SpoiltRequest {
  readonly what: string;
  readonly door: string;
  readonly layout?: string;
  readonly spoil: (r: Request) => void;
  /** Path, code, and words that must stand in got, needed or hint. */
  readonly findings: readonly (readonly [path: string, code: string, ...words: readonly string[]])[];
}

export const travel = "linkage.travel";
export const compliance = "linkage.compliance";
const band = "linkage.band";
const looseSeat = (on: string, more: Json) => ({ body_mm: [0, 560, 650], on, ...more });

/** Every way a request of the linkage doors is spoilt. */
export const spoiltRequests: readonly SpoiltRequest[] = [
  {
    what: "two links on one line",
    door: travel,
    spoil: (r) => {
      r.links[1] = { ...r.links[0], name: "twin" };
    },
    findings: [["links[1]", "constraints-dependent", "upper_front, twin", "close"]],
  },
  {
    what: "a link more",
    door: travel,
    spoil: (r) => r.links.push({ name: "extra", inner_mm: [0, 300, 300], outer_mm: [0, 600, 350] }),
    findings: [["links", "constraint-too-many", "6 links", "1 constraint too many", "five links"]],
  },
  {
    what: "a link less",
    door: compliance,
    layout: STRUT,
    spoil: (r) => r.links.splice(0, 1),
    findings: [["links", "constraint-too-few", "2 links and a strut line (2)", "1 constraint too few", "three links"]],
  },
  {
    what: "a spherical bush with three laterals",
    door: band,
    layout: THREE_LATERALS,
    spoil: (r) => {
      r.trailing_arm.free_axis = null;
    },
    findings: [["links", "constraint-too-many", "a trailing-arm bush (3)", "free_axis"]],
  },
  {
    what: "a strut and a trailing arm",
    door: travel,
    layout: STRUT,
    spoil: (r) => {
      r.trailing_arm = { bush_mm: [-500, 600, 200] };
    },
    findings: [["links", "constraint-too-many", "8 constraints", "not both"]],
  },
  {
    what: "both ends of a link in one place",
    door: travel,
    spoil: (r) => {
      r.links[0].outer_mm = r.links[0].inner_mm;
    },
    findings: [["links[0].outer_mm", "coincident-points", "[70, 457, 522.7]", "links[0].inner_mm"]],
  },
  {
    what: "a strut whose points coincide",
    door: compliance,
    layout: STRUT,
    spoil: (r) => {
      r.strut.axis_point_mm = [...r.strut.top_mm];
    },
    findings: [["strut.axis_point_mm", "coincident-points", "strut.top_mm"]],
  },
  {
    what: "a strut in one line with all outer joints",
    door: travel,
    layout: STRUT,
    spoil: (r) => {
      const [top, low] = [r.strut.top_mm, r.strut.axis_point_mm];
      const outer = low.map((c: number, i: number) => c + (c - top[i]) / 2);
      for (const link of r.links) link.outer_mm = [...outer];
    },
    findings: [["strut", "constraints-dependent", "strut line", "tie rod"]],
  },
  {
    what: "a link a hair long",
    door: travel,
    spoil: (r) => {
      r.links[0].outer_mm = r.links[0].inner_mm.map((c: number) => c + 1e-4);
    },
    findings: [["links[0].outer_mm", "coincident-points", "links[0].inner_mm"]],
  },
  {
    what: "a spring seat on its top",
    door: travel,
    layout: "rear_trailing_arm_spherical",
    spoil: (r) => {
      r.spring = { on: "lower_spring", fraction: 1, body_mm: r.links[1].outer_mm };
    },
    findings: [["spring.fraction", "coincident-points", "spring.body_mm"]],
  },
  {
    what: "negative and zero stiffness",
    door: compliance,
    spoil: (r) => {
      r.rubber[0].radial_n_per_mm = -1;
      r.rubber[1].axial_n_per_mm = 0;
      r.rubber[1].axis = [1, 0, 0];
      r.members[0].n_per_mm = 0;
      r.spring.rate_n_per_mm = -5;
    },
    findings: [
      ["rubber[0].radial_n_per_mm", "out-of-range", "-1", "at least 0.000001"],
      ["rubber[1].axial_n_per_mm", "out-of-range", "0", "at least 0.000001"],
      ["members[0].n_per_mm", "out-of-range", "0"],
      ["spring.rate_n_per_mm", "out-of-range", "-5"],
    ],
  },
  {
    what: "stiffness as good as zero",
    door: compliance,
    spoil: (r) => {
      r.rubber[0].radial_n_per_mm = 1e-300;
      r.members[0].n_per_mm = 1e-300;
      r.spring.rate_n_per_mm = 1e-300;
    },
    findings: [
      ["rubber[0].radial_n_per_mm", "out-of-range", "1e-300", "at least 0.000001"],
      ["members[0].n_per_mm", "out-of-range", "1e-300"],
      ["spring.rate_n_per_mm", "out-of-range", "1e-300"],
    ],
  },
  {
    what: "the rubber of a trailing arm turned away from the axis it slides along",
    door: compliance,
    layout: "rear_trailing_arm_three_open",
    spoil: (r) => {
      const bush = r.rubber.find((entry: Request) => entry.link === "trailing_arm");
      bush.axis = [1, 0, 0];
      r.rubber = [bush];
      r.faults = [];
      r.members = [];
    },
    findings: [["rubber[0].axis", "axis-apart", "[1, 0, 0]", "trailing_arm.free_axis"]],
  },
  {
    what: "axes of no length",
    door: compliance,
    layout: THREE_LATERALS,
    spoil: (r) => {
      r.trailing_arm.free_axis = [0, 0, 0];
      r.rubber[0].axis = [0, 0, 0];
    },
    findings: [
      ["trailing_arm.free_axis", "zero-axis", "[0, 0, 0]"],
      ["rubber[0].axis", "zero-axis", "[0, 0, 0]"],
    ],
  },
  {
    what: "a unit missing and another one in its place",
    door: compliance,
    spoil: (r) => {
      r.rubber[0].radial_n_per_m = 7_500_000;
      delete r.rubber[0].radial_n_per_mm;
      r.links[0].inner_m = [0.07, 0.457, 0.5227];
      delete r.links[0].inner_mm;
      r.links[1].inner = r.links[1].inner_mm;
      delete r.links[1].inner_mm;
    },
    findings: [
      ["rubber[0].radial_n_per_m", "key-unit", "radial_n_per_mm", "0.001"],
      ["links[0].inner_m", "key-unit", "inner_mm", "1000"],
      ["links[1].inner", "key-unit", "inner_mm"],
      ["links[0].inner_mm", "missing-key", "inner_m stands there"],
      ["links[1].inner_mm", "missing-key", "inner stands there"],
      ["rubber[0].radial_n_per_mm", "missing-key", "radial_n_per_m stands there"],
    ],
  },
  {
    what: "a travel beyond both folds in a band",
    door: band,
    spoil: (r) => {
      r.travels_mm = [0, 500, -500];
    },
    findings: [
      ["travels_mm[1]", "beyond-fold", "500", "290.5508 mm"],
      ["travels_mm[2]", "beyond-fold", "-500", "-213.3686 mm"],
    ],
  },
  {
    what: "NaN, infinity and huge figures",
    door: travel,
    spoil: (r) => {
      r.links[0].inner_mm[1] = Number.NaN;
      r.links[1].inner_mm[1] = Number.POSITIVE_INFINITY;
      r.links[2].inner_mm[1] = 1e300;
      r.wheel.toe_deg = Number.NEGATIVE_INFINITY;
      r.steps[0].wheel_travel_mm = 1e12;
      r.links[3].inner_mm[0] = 150_000;
    },
    findings: [
      ["links[0].inner_mm[1]", "not-a-number", "NaN"],
      ["links[1].inner_mm[1]", "not-a-number", "Infinity"],
      ["links[2].inner_mm[1]", "number-too-large", "1e+300"],
      ["wheel.toe_deg", "not-a-number", "-Infinity"],
      ["steps[0].wheel_travel_mm", "number-too-large", "1000000000000"],
      ["links[3].inner_mm[0]", "out-of-range", "150000", "20000"],
    ],
  },
  {
    what: "misspelt keys and words",
    door: travel,
    spoil: (r) => {
      r.linkz = r.links;
      delete r.links;
      r.wheel.camber_degg = 1;
      r.side = "Left";
    },
    findings: [
      ["linkz", "unknown-key", "the key links"],
      ["links", "missing-key", "linkz stands there"],
      ["wheel.camber_degg", "unknown-key", "camber_deg"],
      ["side", "unknown-word", '"left"'],
    ],
  },
  {
    what: "a left corner called right",
    door: travel,
    spoil: (r) => {
      r.side = "right";
    },
    findings: [["wheel.centre_mm[1]", "wrong-side", "775", "negative y"]],
  },
  {
    what: "links nobody knows",
    door: compliance,
    spoil: (r) => {
      r.spring.on = ["lower_fron", "lower_rear"];
      r.faults[0].link = "upper_fron";
      r.rubber[1].link = "strut_top";
      r.members[0].link = "nobody";
      r.damper = looseSeat("tie_rot", { fraction: 0.5 });
    },
    findings: [
      ["spring.on[0]", "unknown-link", "lower_fron", '"lower_front"'],
      ["faults[0].link", "unknown-link", "upper_fron", '"upper_front"'],
      ["rubber[1].link", "unknown-link", "strut_top"],
      ["members[0].link", "unknown-link", "nobody"],
      ["damper.on", "unknown-link", "tie_rot", '"tie_rod"'],
    ],
  },
  {
    what: "fraction and moving_mm both, and neither",
    door: travel,
    spoil: (r) => {
      r.spring = looseSeat("tie_rod", { fraction: 0.5, moving_mm: [1, 2, 3] });
      r.damper = looseSeat("tie_rod", {});
    },
    findings: [
      ["spring.fraction", "one-of-two", "both"],
      ["damper.moving_mm", "one-of-two", "neither"],
    ],
  },
  {
    what: "seats that do not go with what they sit on",
    door: travel,
    spoil: (r) => {
      r.spring = looseSeat("knuckle", { fraction: 0.5 });
      r.damper = { body_mm: [0, 560, 650], on: ["lower_front", "tie_rod"], moving_mm: [0, 600, 200] };
    },
    findings: [
      ["spring.moving_mm", "missing-key", "knuckle"],
      ["spring.fraction", "key-not-used-here", "moving_mm"],
      ["damper.on", "not-an-arm", "one outer joint"],
    ],
  },
  {
    what: "an axial rate without an axis and the other way round",
    door: compliance,
    spoil: (r) => {
      delete r.rubber[0].axis;
      delete r.rubber[2].axial_n_per_mm;
    },
    findings: [
      ["rubber[0].axis", "missing-key", "together"],
      ["rubber[2].axial_n_per_mm", "missing-key", "together"],
    ],
  },
  {
    what: "rates along a strut line",
    door: compliance,
    layout: STRUT,
    spoil: (r) => {
      r.rubber[0].axial_n_per_mm = 300;
      r.rubber[0].axis = [0, 0, 1];
    },
    findings: [
      ["rubber[0].axial_n_per_mm", "key-not-used-here", "strut line"],
      ["rubber[0].axis", "key-not-used-here", "strut line"],
    ],
  },
  {
    what: "negative play, and play of a mount",
    door: compliance,
    layout: STRUT,
    spoil: (r) => {
      r.faults = [
        { kind: "play", link: "tie_rod", total_mm: -0.1 },
        { kind: "play", link: "strut_top", total_mm: 0.1 },
      ];
    },
    findings: [
      ["faults[0].total_mm", "out-of-range", "-0.1", "at least 0"],
      ["faults[1].link", "unknown-link", "strut_top", "soft"],
    ],
  },
  {
    what: "something torn where nothing gives",
    door: compliance,
    spoil: (r) => {
      r.rubber = r.rubber.filter((e: Json) => e.link !== "tie_rod");
      r.faults = [{ kind: "soft", link: "tie_rod", end: "outer", factor: 0.5 }];
    },
    findings: [["faults[0].end", "nothing-soft", "tie_rod.outer", "rubber"]],
  },
  {
    what: "an axle that disagrees with itself",
    door: travel,
    spoil: (r) => {
      r.axle = "rear";
    },
    findings: [["car.axle", "not-consistent", '"front"', '"rear"']],
  },
  {
    what: "a car without an axle",
    door: travel,
    spoil: (r) => {
      delete r.car.axle;
    },
    findings: [["car.axle", "missing-key", '"front" or "rear"']],
  },
  {
    what: "a rack where nothing is steered, a height where the load is held",
    door: travel,
    layout: THREE_LATERALS,
    spoil: (r) => {
      r.steps[1].rack_mm = 5;
    },
    findings: [["steps[1].rack_mm", "nothing-steered", "5", "steered"]],
  },
  {
    what: "a contact height with the wheel load held",
    door: compliance,
    spoil: (r) => {
      r.hold = "wheel_load";
    },
    findings: [["loads[0].contact_rise_mm", "key-not-used-here", "contact_height"]],
  },
  {
    what: "a spring that the wheel does not move",
    door: compliance,
    spoil: (r) => {
      r.spring = { body_mm: [0, 560, 650], on: "tie_rod", moving_mm: r.links[4].inner_mm, rate_n_per_mm: 30 };
    },
    findings: [["spring", "cannot-carry", "length changes"]],
  },
  {
    what: "names twice, and names that mean something else",
    door: compliance,
    spoil: (r) => {
      r.links[1].name = "upper_front";
      r.links[2].name = "knuckle";
      r.rubber.push({ ...r.rubber[0] });
    },
    findings: [
      ["links[1].name", "repeated-name", "upper_front"],
      ["links[2].name", "reserved-name", "knuckle"],
      ["rubber[10]", "repeated-name", "once"],
    ],
  },
  {
    what: "many slips at once",
    door: compliance,
    spoil: (r) => {
      r.sidee = "left";
      r.links[0].inner_mm = [1, 2];
      r.rubber[0].radial_n_per_mm = "7500";
      r.rubber[2].axis = [0, 0, 0];
      r.wheel.loaded_radius_mm = -3;
      r.spring.on = "nobody";
      r.links.pop();
      r.hold = "both";
    },
    findings: [
      ["sidee", "unknown-key", "side"],
      ["links[0].inner_mm", "wrong-length", "a list of 2"],
      ["rubber[0].radial_n_per_mm", "wrong-type", '"7500"', "without quotes"],
      ["rubber[2].axis", "zero-axis"],
      ["wheel.loaded_radius_mm", "out-of-range", "-3"],
      ["spring.on", "unknown-link", "nobody"],
      ["links", "constraint-too-few", "4 links"],
      ["hold", "unknown-word", '"contact_height"'],
    ],
  },
];
