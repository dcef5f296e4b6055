import type { Edit } from "./edit-sheet.ts";

/** One slip of a person in a demo sheet (the Ouzel saloon unless another is named): what must be said, and where. */
export interface Slip {
  readonly code: string;
  readonly path: string;
  readonly edits: readonly Edit[];
  readonly sheet?: "siskin-coupe" | "dunlin-hatch";
  readonly needed?: RegExp;
  readonly got?: RegExp;
  readonly hint?: RegExp;
}

const slip = (code: string, path: string, ...edits: Edit[]): Slip => ({ code, path, edits });
/** A slip in which the place said is also the place that was changed. */
const wrong = (code: string, path: string, to: unknown): Slip => slip(code, path, { set: path, to });
const copied = (code: string, path: string, copyOf: string): Slip => slip(code, path, { set: path, copyOf });
const removed = (code: string, path: string): Slip => slip(code, path, { remove: path });
const on = (sheet: NonNullable<Slip["sheet"]>, one: Slip): Slip => ({ ...one, sheet });

const sixthLink = { name: "sixth-link", inner_mm: [-2700, 300, 400], outer_mm: [-2750, 700, 420] };
const strayStrut = { top_mm: [-2700, 500, 800], axis_point_mm: [-2700, 600, 400] };

export const slips: readonly Slip[] = [
  { ...wrong("points-out-of-order", "front.links[3].inner_mm", [-216, 39.8, 212.9]), hint: /y 398 / },
  { ...wrong("wheel-runs-off", "rear.links[4].inner_mm", [-2608, 273.9, 413.3]), hint: /y and z exchanged/ },
  {
    ...slip("correlation-of-unknown-point", "rear.correlation.points[1]", {
      set: "rear.correlation",
      to: { points: ["toe-link.inner", "toe-lnk.outer"], lower: [] },
    }),
    needed: /toe-link\.outer/,
  },
  slip("correlation-row-length", "rear.correlation.lower[1]", {
    set: "rear.correlation",
    to: { points: ["toe-link.inner"], lower: [[0.5], [0.5]] },
  }),
  slip("correlation-row-length", "rear.correlation.lower", {
    set: "rear.correlation",
    to: { points: ["toe-link.inner"], lower: [[0.5]] },
  }),
  slip("correlation-impossible", "rear.correlation.lower", {
    set: "rear.correlation",
    to: { points: ["toe-link.inner"], lower: [[0.9], [0.9, -0.9]] },
  }),
  {
    ...slip("bar-twists-too-far", "rear.bar.path_mm", { set: "rear.bar.path_mm[4][0]", to: -2960 }),
    got: /^levers that turn \d+\.\d° against each other per degree/,
  },
  {
    ...slip(
      "bar-twists-too-far",
      "rear.bar.path_mm",
      { set: "rear.bar.path_mm[4][0]", to: -3036 },
      { set: "rear.bar.path_mm[4][2]", to: 264 },
    ),
    got: /^no lever/,
  },
  copied("zero-length-link", "front.links[4].outer_mm", "front.links[4].inner_mm"),
  {
    ...copied("coincident-points", "rear.links[4].inner_mm", "rear.links[2].inner_mm"),
    needed: /rear\.links\[2\]\.inner_mm/,
  },
  copied("coincident-points", "rear.links[1].outer_mm", "rear.links[0].outer_mm"),
  slip(
    "coincident-links",
    "rear.links[1]",
    { set: "rear.links[1]", copyOf: "rear.links[0]" },
    { set: "rear.links[1].name", to: "twin" },
  ),
  on("dunlin-hatch", copied("coincident-strut-points", "front.strut.axis_point_mm", "front.strut.top_mm")),
  copied("zero-length-spring", "rear.damper.body_mm", "rear.damper.seat.moving_mm"),
  wrong("zero-length-axis", "front.links[0].inner_joint.axis", [0, 0, 0]),
  on("dunlin-hatch", wrong("zero-length-axis", "rear.trailing_arm.free_axis", [0, 0, 0])),
  removed("axial-without-axis", "front.links[2].inner_joint.axis"),
  removed("axis-without-axial", "front.links[2].inner_joint.axial_n_per_mm"),
  removed("axial-without-radial", "front.links[2].inner_joint.radial_n_per_mm"),
  slip("voids-without-clocking", "front.links[2].inner_joint.voided_n_per_mm", {
    set: "front.links[2].inner_joint.clocking_deg",
    to: 20,
  }),
  slip("voids-without-clocking", "front.links[2].inner_joint.clocking_deg", {
    set: "front.links[2].inner_joint.voided_n_per_mm",
    to: 2000,
  }),
  slip("voids-without-axis", "front.links[4].outer_joint.axis", {
    set: "front.links[4].outer_joint.conical_nm_per_deg",
    to: 3,
  }),
  wrong("turn-not-resisted", "front.links[2].outer_joint.conical_nm_per_deg", 3),
  on("dunlin-hatch", wrong("turn-not-resisted", "front.strut.top_mount.torsional_nm_per_deg", 3)),
  wrong("looks-like-newtons-per-metre", "front.links[2].inner_joint.voided_n_per_mm", 8_000_000),
  wrong("torn-share-reversed", "front.defaults.torn_share.plan", [0.7, 0.4]),
  slip("torn-share-not-falling", "rear.links[3].inner_joint.torn_share.repair_first", {
    set: "rear.links[3].inner_joint.torn_share",
    to: { plan: [0.2, 0.4], repair_first: [0.3, 0.5] },
  }),
  wrong("torn-share-without-rubber", "front.links[4].outer_joint.torn_share", { plan: [0.2, 0.4] }),
  slip("fluid-without-hydraulic-bush", "front.links[3].inner_joint.fluid", {
    set: "front.links[3].inner_joint.kind",
    to: "bush",
  }),
  slip(
    "fluid-without-rate",
    "front.links[3].inner_joint.radial_n_per_mm",
    { remove: "front.links[3].inner_joint.radial_n_per_mm" },
    { remove: "front.links[3].inner_joint.axial_n_per_mm" },
    { remove: "front.links[3].inner_joint.axis" },
  ),
  wrong("duplicate-link-name", "rear.links[4].name", "upper-rear-link"),
  wrong("duplicate-link-name", "front.links[4].name", "lower-arm"),
  wrong("reserved-link-name", "rear.links[3].name", "trailing-arm"),
  {
    ...slip("too-many-constraints", "rear.links", { append: "rear.links", entry: sixthLink }),
    got: /^6 constraints: 6 links, one too many$/,
  },
  {
    ...slip("too-few-constraints", "rear.links", { remove: "rear.links[4]" }),
    got: /^4 constraints: 4 links, one too few$/,
  },
  {
    ...on("dunlin-hatch", slip("too-many-constraints", "rear.links", { remove: "rear.trailing_arm.free_axis" })),
    got: /3 links and a trailing arm held in all three directions \(3\), one too many/,
  },
  {
    ...on("dunlin-hatch", slip("too-few-constraints", "rear.links", { remove: "rear.links[2]" })),
    got: /2 links and a trailing arm with a free axis \(2\), one too few/,
  },
  {
    ...on("dunlin-hatch", slip("too-few-constraints", "front.links", { remove: "front.links[0]" })),
    got: /2 links and a strut \(2\), one too few/,
  },
  slip(
    "links-not-independent",
    "rear.links",
    { set: "rear.links[3].inner_mm", to: [-2610, 440, 270] },
    { set: "rear.links[3].outer_mm", to: [-2660, 690, 260] },
    { set: "rear.links[4].inner_mm", to: [-2600, 390, 272] },
    { set: "rear.links[4].outer_mm", to: [-2665, 715, 259] },
  ),
  {
    ...on(
      "dunlin-hatch",
      slip(
        "links-not-independent",
        "front.strut",
        { set: "front.links[0].outer_mm", to: [6.5, 627.1, 186.4] },
        { set: "front.links[1].outer_mm", to: [6.5, 627.1, 186.4] },
        { set: "front.links[2].outer_mm", to: [-17.2, 583.8, 291.9] },
      ),
    ),
    needed: /^a tie rod whose line passes the strut line at a distance$/,
  },
  on("dunlin-hatch", wrong("layout-not-for-axle", "front.layout", "trailing-arm")),
  wrong("part-not-in-layout", "rear.strut", strayStrut),
  on("dunlin-hatch", removed("part-missing-in-layout", "front.strut")),
  wrong("arm-of-one-link", "rear.links[0].arm", "upper-arm"),
  wrong("arm-outer-points-apart", "front.links[3].outer_mm", [8, 741, 191]),
  on("siskin-coupe", slip("layout-without-arm", "front.links", { set: "front.layout", to: "double-wishbone" })),
  slip("no-steered-link", "front.links", { remove: "front.links[4].steered" }),
  wrong("seat-on-unknown-link", "rear.spring.seat.link", "spring-lnk"),
  slip("seat-on-unknown-link", "front.damper.seat.links[1]", {
    set: "front.damper.seat.links[1]",
    to: "lower-arm-back",
  }),
  slip("seat-not-on-one-arm", "front.spring.seat.links", { set: "front.spring.seat.links[1]", to: "tie-rod" }),
  slip("wheel-on-wrong-side", "front.wheel.centre_mm", { set: "front.wheel.centre_mm[1]", to: -787 }),
  slip("point-on-wrong-side", "rear.links[1].outer_mm", { set: "rear.links[1].outer_mm[1]", to: -702 }),
  wrong("track-against-wheel-centre", "rear.track_mm", 1546),
  {
    ...wrong("wheelbase-against-wheel-centre", "wheelbase_mm", 279.5),
    needed: /2795 mm, where the rear wheel centre stands/,
    hint: /^Was it typed in centimetres\? In millimetres it would be 2795\.$/,
  },
  {
    ...wrong("stop-beyond-fold", "rear.droop_stop_mm", 390),
    needed: /^at most \d{3}, in millimetres: there this linkage folds as the wheel falls$/,
    hint: /^It locks in .*link/,
  },
  slip("wheel-centre-against-wheelbase", "rear.wheel.centre_mm[0]", { set: "wheelbase_mm", to: 2845 }),
  wrong("wheel-not-on-ground", "front.wheel.loaded_radius_mm", 297),
  {
    ...slip("tyre-size-apart", "front.wheel.rim_diameter_mm", { set: "front.wheel.rim_diameter_mm", to: 457.2 }),
    needed: /about 431\.8 mm, as tyre_size 225\/50 R17 says/,
  },
  {
    ...slip(
      "tyre-size-apart",
      "rear.wheel.tyre_size",
      { set: "rear.wheel.tyre_size", to: "245/40 R18" },
      { set: "rear.wheel.tyre_width_mm", to: 225 },
      { set: "rear.wheel.free_radius_mm", to: 328.4 },
      { set: "rear.wheel.rim_diameter_mm", to: 431.8 },
    ),
    needed: /tyre_width_mm 225 \(the size says 245\), rim_diameter_mm 431\.8 \(the size says 457\.2\)/,
    hint: /leave the figures out/,
  },
  slip("loaded-radius-too-large", "front.wheel.centre_mm[2]", { set: "front.wheel.tyre_size", to: "195/50 R15" }),
  slip("loaded-radius-too-small", "rear.wheel.centre_mm[2]", { set: "rear.wheel.tyre_size", to: "265/70 R17" }),
  wrong("tyre-size-unreadable", "rear.wheel.tyre_size", "225-50-17"),
  {
    ...slip("point-below-ground", "rear.links[3].outer_mm", { set: "rear.links[3].outer_mm[2]", to: -197 }),
    needed: /^z of 0 or more/,
    hint: /^Is it the sign\? z 197 in place of -197 would do\.$/,
  },
  {
    ...slip("point-out-of-reach", "rear.links[3].outer_mm", { set: "rear.links[3].outer_mm[2]", to: 1197 }),
    needed: /^a place at most \d+ mm from the wheel centre \[.*; this one is \d+ mm away$/,
    hint: /^Is it a metre too much\? z 197 in place of 1197 would do\. If the car is so/,
  },
  {
    ...slip("point-out-of-reach", "front.links[0].inner_mm", { set: "front.links[0].inner_mm[2]", to: 1080 }),
    needed: /^z of at most \d+ mm/,
    hint: /^Is it a metre too much\? z 80 in place of 1080 would do\. If the car is so/,
  },
  {
    ...slip("point-out-of-reach", "rear.links[0].inner_mm", { set: "rear.links[0].inner_mm[0]", to: 0 }),
    needed: /^x within \d+ mm of the wheel centre/,
    hint: /^Check the numbers/,
  },
  {
    ...slip("point-out-of-reach", "rear.links[0].inner_mm", { set: "rear.links[0].inner_mm[1]", to: -400 }),
    needed: /^y of -\d+ mm to \d+ mm/,
    hint: /^Is it the sign\?/,
  },
  on("dunlin-hatch", slip("point-out-of-reach", "front.strut.top_mm", { set: "front.strut.top_mm[2]", to: 1810 })),
  on(
    "dunlin-hatch",
    slip("point-out-of-reach", "front.strut.axis_point_mm", { set: "front.strut.axis_point_mm[2]", to: 1400 }),
  ),
  on(
    "dunlin-hatch",
    slip("point-out-of-reach", "rear.trailing_arm.bush_mm", { set: "rear.trailing_arm.bush_mm[2]", to: 1276 }),
  ),
  slip("point-out-of-reach", "rear.spring.body_mm", { set: "rear.spring.body_mm[2]", to: 1440 }),
  slip("point-out-of-reach", "rear.damper.seat.moving_mm", { set: "rear.damper.seat.moving_mm[2]", to: 1240 }),
  slip("point-below-ground", "front.bar.link_lower_mm", { set: "front.bar.link_lower_mm[2]", to: -20 }),
  wrong("looks-like-metres", "rear.links[2].outer_mm", [-2.842, 0.728, 0.197]),
  slip("looks-like-metres", "rear.links[2]", { set: "rear.links[2].inner_mm", to: [-2842, 727.7, 197] }),
  wrong("looks-like-metres", "front.brake.disc_diameter_mm", 0.32),
  wrong("looks-like-metres", "wheelbase_mm", 2.795),
  wrong("looks-like-newtons-per-metre", "front.links[3].inner_joint.radial_n_per_mm", 2_500_000),
  wrong("looks-like-newtons-per-metre", "rear.spring.rate_n_per_mm", 76_000),
  wrong("looks-like-kilonewtons-per-millimetre", "rear.links[0].inner_joint.radial_n_per_mm", 6.4),
  wrong("looks-like-tonnes", "kerb_mass_kg", 1.56),
  slip("two-forms-of-subframe", "front.subframe_half_mm", {
    set: "front.subframe_mm",
    copyOf: "front.subframe_half_mm",
  }),
  { ...wrong("shares-not-one", "rear.brake_share", 0.3), needed: /^0\.32,/ },
  wrong("drive-share-against-driven", "front.driven", true),
  wrong("years-reversed", "to_year", 2008),
  slip("life-band-not-rising", "life[2].middle_km", { set: "life[2].low_km", to: 128_000 }),
  slip("life-band-not-rising", "life[2].high_km", { set: "life[2].high_km", to: 120_000 }),
  wrong("unknown-position", "life[0].position", "front/lower-arm/rear-bsh"),
  copied("duplicate-life", "life[3].position", "life[1].position"),
];
