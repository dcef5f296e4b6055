import type { z } from "zod";
import { metresFromMm, newtonsPerMetreFromPerMm, perRadianFromPerDegree, radiansFromDegrees } from "#quantity";
import {
  type AntiRollBar,
  type Axle,
  type AxleName,
  type Brake,
  type Damper,
  type Joint,
  type Link,
  type Outline,
  parseTyreSize,
  type Seat,
  type Spring,
  usualRimOffset,
  usualRimWidth,
  type Wheel,
} from "#vehicle";
import type { AxleSheet, WheelSheet } from "./axle-schema.ts";
import { membersOf, strutEnds } from "./body-members.ts";
import type { bar, brake, damper, joint, link, seat, spring } from "./joint-schema.ts";
import { blockOf, readBodies } from "./read-bodies.ts";
import {
  type AxleDefaults,
  readDefaults,
  readFluid,
  readPlace,
  readPoint,
  readRate,
  readTornShare,
} from "./read-points.ts";

/** What is drawn where the file says nothing; drawing only, invented. */
const DRAWN = { section: [30, 30], coilDiameter: 110, wireDiameter: 12, tubeDiameter: 50 } as const;

/** An axle sheet that has been checked, as the program computes with it. */
export function readAxle(name: AxleName, sheet: AxleSheet): Axle {
  const defaults = readDefaults(sheet.defaults);
  const wheel = readWheel(sheet.wheel);
  const block = blockOf(sheet);
  const spring = readSpring(sheet.spring, defaults);
  const damper = readDamper(sheet.damper, defaults);
  return {
    name,
    layout: sheet.layout,
    rung: sheet.rung,
    track: metresFromMm(sheet.track_mm),
    wheel,
    ...(block && { bodies: readBodies(block, wheel, sheet, readJoint) }),
    links: block
      ? membersOf(block).map(({ sheet: one, between }) => ({ ...readLink(one, defaults, wheel), between }))
      : sheet.links.map((one) => readLink(one, defaults, wheel)),
    ...(sheet.strut && {
      strut: {
        top: readPoint(sheet.strut.top_mm, defaults),
        axisPoint: readPoint(sheet.strut.axis_point_mm, defaults),
        topMount: readJoint(sheet.strut.top_mount ?? { kind: "bush" }, defaults),
      },
    }),
    ...(sheet.trailing_arm && {
      trailingArm: {
        bush: readPoint(sheet.trailing_arm.bush_mm, defaults),
        ...(sheet.trailing_arm.free_axis && { freeAxis: sheet.trailing_arm.free_axis }),
        bushJoint: readJoint(sheet.trailing_arm.bush_joint ?? { kind: "bush" }, defaults),
        section: readSection(sheet.trailing_arm.section_mm),
      },
    }),
    spring: block ? { ...spring, seat: seatOnBody(spring.seat, strutEnds(block, "spring").on) } : spring,
    damper: block ? { ...damper, seat: seatOnBody(damper.seat, strutEnds(block, "damper").on) } : damper,
    ...(sheet.bar && { bar: readBar(sheet.bar) }),
    brake: readBrake(sheet.brake),
    subframe: sheet.subframe_mm
      ? readOutlines(sheet.subframe_mm)
      : readOutlines(sheet.subframe_half_mm ?? []).map(mirroredOutline),
    knuckle: readOutlines(sheet.knuckle_mm ?? []),
    subframeMounts: (sheet.subframe_mounts_mm ?? []).map(readPlace),
    ...(sheet.correlation && { correlation: sheet.correlation }),
    ...(sheet.points_confirmed && { pointsConfirmed: true }),
    ...(sheet.rack_travel_mm !== undefined && { rackTravel: metresFromMm(sheet.rack_travel_mm) }),
    driven: sheet.driven,
    levelSensor: sheet.level_sensor ?? false,
    unsprungMass: sheet.unsprung_mass_kg,
    brakeShare: sheet.brake_share,
    driveShare: sheet.drive_share,
    bumpStop: metresFromMm(sheet.bump_stop_mm),
    droopStop: metresFromMm(sheet.droop_stop_mm),
  };
}

/** Without a loaded radius of its own the tyre touches z = 0: radius = height of the wheel centre / cos camber. */
function readWheel(sheet: WheelSheet): Wheel {
  const size = parseTyreSize(sheet.tyre_size);
  const centre = readPlace(sheet.centre_mm);
  const camber = radiansFromDegrees(sheet.camber_deg);
  const tyreWidth = sheet.tyre_width_mm !== undefined ? metresFromMm(sheet.tyre_width_mm) : required(size).width;
  return {
    centre,
    camber,
    toe: radiansFromDegrees(sheet.toe_deg),
    loadedRadius: metresFromMm(sheet.loaded_radius_mm ?? sheet.centre_mm[2] / Math.cos(camber)),
    tyreSize: sheet.tyre_size,
    tyreWidth,
    freeRadius: sheet.free_radius_mm !== undefined ? metresFromMm(sheet.free_radius_mm) : required(size).freeRadius,
    rimDiameter: sheet.rim_diameter_mm !== undefined ? metresFromMm(sheet.rim_diameter_mm) : required(size).rimDiameter,
    rimWidth: sheet.rim_width_mm !== undefined ? metresFromMm(sheet.rim_width_mm) : usualRimWidth(tyreWidth),
    rimOffset: sheet.rim_offset_mm !== undefined ? metresFromMm(sheet.rim_offset_mm) : usualRimOffset,
  };
}

function required<T>(value: T | null): T {
  if (value === null) throw new Error("a tyre size nobody can read passed the check of the family");
  return value;
}

function readLink(sheet: z.infer<typeof link>, defaults: AxleDefaults, wheel: Wheel): Link {
  const outer = readPoint(sheet.outer_mm, defaults);
  return {
    name: sheet.name,
    label: sheet.label ?? inWords(sheet.name),
    inner: readPoint(sheet.inner_mm, defaults),
    outer,
    steered: sheet.steered ?? false,
    innerJoint: readJoint(sheet.inner_joint ?? { kind: "bush" }, defaults),
    outerJoint: readJoint(sheet.outer_joint ?? { kind: "ball-joint" }, defaults),
    ...(sheet.member_n_per_mm !== undefined && { memberRate: newtonsPerMetreFromPerMm(sheet.member_n_per_mm) }),
    section: readSection(sheet.section_mm),
    ...(sheet.arm !== undefined && { arm: sheet.arm }),
    sheet: sheet.sheet ?? (outer.at[2] < wheel.centre[2] ? "lower" : "upper"),
  };
}

function inWords(name: string): string {
  const words = name.replaceAll("-", " ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function readSection(mm: readonly [number, number] = DRAWN.section) {
  return { width: metresFromMm(mm[0]), height: metresFromMm(mm[1]) };
}

/** Only bushes take the axle's torn share; a ball joint wears by play. */
function readJoint(sheet: z.infer<typeof joint>, defaults: AxleDefaults): Joint {
  const rate = readRate(sheet, defaults);
  const isBush = sheet.kind === "bush" || sheet.kind === "hydraulic-bush";
  const torn = sheet.torn_share ? readTornShare(sheet.torn_share, rate.rateOrigin) : isBush ? defaults.tornShare : {};
  return {
    kind: sheet.kind,
    ...(sheet.radial_n_per_mm !== undefined && { radial: newtonsPerMetreFromPerMm(sheet.radial_n_per_mm) }),
    ...(sheet.axial_n_per_mm !== undefined && { axial: newtonsPerMetreFromPerMm(sheet.axial_n_per_mm) }),
    ...(sheet.axis && { axis: sheet.axis }),
    ...(sheet.voided_n_per_mm !== undefined &&
      sheet.clocking_deg !== undefined && {
        voided: {
          rate: newtonsPerMetreFromPerMm(sheet.voided_n_per_mm),
          clocking: radiansFromDegrees(sheet.clocking_deg),
        },
      }),
    ...(sheet.conical_nm_per_deg !== undefined && { conical: perRadianFromPerDegree(sheet.conical_nm_per_deg) }),
    ...(sheet.torsional_nm_per_deg !== undefined && { torsional: perRadianFromPerDegree(sheet.torsional_nm_per_deg) }),
    ...(sheet.hardness_shore_a !== undefined && { hardness: sheet.hardness_shore_a }),
    ...rate,
    ...(Object.keys(torn).length > 0 && { tornShare: torn }),
    ...(sheet.fluid && { fluid: readFluid(sheet.fluid, rate.rateOrigin) }),
    ...(sheet.outer_diameter_mm !== undefined && { outerDiameter: metresFromMm(sheet.outer_diameter_mm) }),
    ...(sheet.length_mm !== undefined && { length: metresFromMm(sheet.length_mm) }),
    ...(sheet.label !== undefined && { label: sheet.label }),
  };
}

function readSeat(sheet: z.infer<typeof seat>, defaults: AxleDefaults): Seat {
  switch (sheet.on) {
    case "knuckle":
      return { on: "knuckle", moving: readPoint(sheet.moving_mm, defaults) };
    case "link":
      return { on: "link", link: sheet.link, fraction: sheet.fraction };
    case "arm":
      return { on: "arm", links: sheet.links, moving: readPoint(sheet.moving_mm, defaults) };
  }
}

/** A seat of an axle with bodies, which is read as one on the knuckle, on the body that carries it. */
const seatOnBody = (seat: Seat, body: string): Seat =>
  seat.on === "knuckle" ? { on: "body", body, moving: seat.moving } : seat;

function readSpring(sheet: z.infer<typeof spring>, defaults: AxleDefaults): Spring {
  return {
    body: readPoint(sheet.body_mm, defaults),
    seat: readSeat(sheet.seat, defaults),
    rate: newtonsPerMetreFromPerMm(sheet.rate_n_per_mm),
    coilDiameter: metresFromMm(sheet.coil_diameter_mm ?? DRAWN.coilDiameter),
    wireDiameter: metresFromMm(sheet.wire_diameter_mm ?? DRAWN.wireDiameter),
  };
}

function readDamper(sheet: z.infer<typeof damper>, defaults: AxleDefaults): Damper {
  return {
    body: readPoint(sheet.body_mm, defaults),
    seat: readSeat(sheet.seat, defaults),
    tubeDiameter: metresFromMm(sheet.tube_diameter_mm ?? DRAWN.tubeDiameter),
    kind: sheet.kind ?? "passive",
  };
}

function readBar(sheet: z.infer<typeof bar>): AntiRollBar {
  return {
    diameter: metresFromMm(sheet.diameter_mm),
    path: sheet.path_mm.map(readPlace),
    bodyBush: readPlace(sheet.body_bush_mm),
    linkUpper: readPlace(sheet.link_upper_mm),
    linkLower: readPlace(sheet.link_lower_mm),
  };
}

function readBrake(sheet: z.infer<typeof brake>): Brake {
  return {
    discDiameter: metresFromMm(sheet.disc_diameter_mm),
    discThickness: metresFromMm(sheet.disc_thickness_mm),
    vented: sheet.vented,
    hatDepth: metresFromMm(sheet.hat_depth_mm),
    pistonDiameter: metresFromMm(sheet.piston_diameter_mm),
    padThickness: metresFromMm(sheet.pad_thickness_mm),
    caliperAt: sheet.caliper_at,
    parking: sheet.parking,
  };
}

function readOutlines(outlines: readonly (readonly (readonly [number, number])[])[]): Outline[] {
  return outlines.map((outline) => outline.map(([x, y]) => [metresFromMm(x), metresFromMm(y)] as const));
}

/** The whole outline from its left half: the half as it stands, then its mirror image backward; points on the centre line once. */
function mirroredOutline(half: Outline): Outline {
  const mirrored = [...half]
    .reverse()
    .filter(([, y]) => y !== 0)
    .map(([x, y]) => [x, -y] as const);
  return [...half, ...mirrored];
}
