import type { AntiRollBar, Axle, Brake, Damper, Link, Outline, Seat, Spring, Wheel } from "#vehicle";
import type { AxleSheet } from "./axle-schema.ts";
import { exactDegrees, exactMm, exactPerMm } from "./exact-figure.ts";
import { commonDefaults, formatDefaults } from "./format-defaults.ts";
import { formatJoint, formatPlace, formatPoint } from "./format-points.ts";
import type { AxleDefaults } from "./read-points.ts";

/** An axle as it stands in a file: of several bodies it has no members of one knuckle. */
export type AxleFile = Omit<AxleSheet, "links" | "spring" | "damper"> &
  Partial<Pick<AxleSheet, "links" | "spring" | "damper">>;

/** An axle as it stands in a file; readAxle gives the same axle back, to the double. */
export function formatAxle(axle: Axle): AxleFile {
  const whole = formatOneKnuckle(axle);
  if (!axle.bodies) return whole;
  const { links: _links, spring: _spring, damper: _damper, defaults: _defaults, ...rest } = whole;
  return { ...rest, ...(JSON.parse(axle.bodies.file) as Pick<AxleSheet, "defaults" | "bodies">) };
}

function formatOneKnuckle(axle: Axle): AxleSheet {
  const defaults = commonDefaults(axle);
  return {
    layout: axle.layout,
    rung: axle.rung,
    defaults: formatDefaults(defaults),
    track_mm: exactMm(axle.track),
    wheel: formatWheel(axle.wheel),
    links: axle.links.map((link) => formatLink(link, defaults)),
    ...(axle.strut && {
      strut: {
        top_mm: formatPoint(axle.strut.top, defaults),
        axis_point_mm: formatPoint(axle.strut.axisPoint, defaults),
        top_mount: formatJoint(axle.strut.topMount, defaults),
      },
    }),
    ...(axle.trailingArm && {
      trailing_arm: {
        bush_mm: formatPoint(axle.trailingArm.bush, defaults),
        ...(axle.trailingArm.freeAxis && { free_axis: [...axle.trailingArm.freeAxis] as [number, number, number] }),
        bush_joint: formatJoint(axle.trailingArm.bushJoint, defaults),
        section_mm: formatSection(axle.trailingArm.section),
      },
    }),
    spring: formatSpring(axle.spring, defaults),
    damper: formatDamper(axle.damper, defaults),
    ...(axle.bar && { bar: formatBar(axle.bar) }),
    brake: formatBrake(axle.brake),
    ...(axle.subframe.length > 0 && { subframe_mm: axle.subframe.map(formatOutline) }),
    ...(axle.subframeMounts.length > 0 && { subframe_mounts_mm: axle.subframeMounts.map(formatPlace) }),
    ...(axle.knuckle.length > 0 && { knuckle_mm: axle.knuckle.map(formatOutline) }),
    ...(axle.correlation && {
      correlation: { points: [...axle.correlation.points], lower: axle.correlation.lower.map((row) => [...row]) },
    }),
    ...(axle.pointsConfirmed && { points_confirmed: true }),
    ...(axle.rackTravel !== undefined && { rack_travel_mm: exactMm(axle.rackTravel) }),
    driven: axle.driven,
    level_sensor: axle.levelSensor,
    unsprung_mass_kg: axle.unsprungMass,
    brake_share: axle.brakeShare,
    drive_share: axle.driveShare,
    bump_stop_mm: exactMm(axle.bumpStop),
    droop_stop_mm: exactMm(axle.droopStop),
  };
}

function formatWheel(wheel: Wheel): AxleSheet["wheel"] {
  return {
    centre_mm: formatPlace(wheel.centre),
    camber_deg: exactDegrees(wheel.camber),
    toe_deg: exactDegrees(wheel.toe),
    tyre_size: wheel.tyreSize,
    loaded_radius_mm: exactMm(wheel.loadedRadius),
    tyre_width_mm: exactMm(wheel.tyreWidth),
    free_radius_mm: exactMm(wheel.freeRadius),
    rim_diameter_mm: exactMm(wheel.rimDiameter),
    rim_width_mm: exactMm(wheel.rimWidth),
    rim_offset_mm: exactMm(wheel.rimOffset),
  };
}

function formatLink(link: Link, defaults: AxleDefaults): AxleSheet["links"][number] {
  return {
    name: link.name,
    label: link.label,
    inner_mm: formatPoint(link.inner, defaults),
    outer_mm: formatPoint(link.outer, defaults),
    ...(link.steered && { steered: true }),
    inner_joint: formatJoint(link.innerJoint, defaults),
    outer_joint: formatJoint(link.outerJoint, defaults),
    ...(link.memberRate !== undefined && { member_n_per_mm: exactPerMm(link.memberRate) }),
    section_mm: formatSection(link.section),
    ...(link.arm !== undefined && { arm: link.arm }),
    sheet: link.sheet,
  };
}

function formatSection(section: Link["section"]): [number, number] {
  return [exactMm(section.width), exactMm(section.height)];
}

function formatSeat(seat: Seat, defaults: AxleDefaults): AxleSheet["spring"]["seat"] {
  switch (seat.on) {
    case "knuckle":
      return { on: "knuckle", moving_mm: formatPoint(seat.moving, defaults) };
    case "link":
      return { on: "link", link: seat.link, fraction: seat.fraction };
    case "arm":
      return { on: "arm", links: [...seat.links], moving_mm: formatPoint(seat.moving, defaults) };
    case "body":
      return { on: "knuckle", moving_mm: formatPoint(seat.moving, defaults) };
  }
}

function formatSpring(spring: Spring, defaults: AxleDefaults): AxleSheet["spring"] {
  return {
    body_mm: formatPoint(spring.body, defaults),
    seat: formatSeat(spring.seat, defaults),
    rate_n_per_mm: exactPerMm(spring.rate),
    coil_diameter_mm: exactMm(spring.coilDiameter),
    wire_diameter_mm: exactMm(spring.wireDiameter),
  };
}

function formatDamper(damper: Damper, defaults: AxleDefaults): AxleSheet["damper"] {
  return {
    body_mm: formatPoint(damper.body, defaults),
    seat: formatSeat(damper.seat, defaults),
    tube_diameter_mm: exactMm(damper.tubeDiameter),
    kind: damper.kind,
  };
}

function formatBar(bar: AntiRollBar): NonNullable<AxleSheet["bar"]> {
  return {
    diameter_mm: exactMm(bar.diameter),
    path_mm: bar.path.map(formatPlace),
    body_bush_mm: formatPlace(bar.bodyBush),
    link_upper_mm: formatPlace(bar.linkUpper),
    link_lower_mm: formatPlace(bar.linkLower),
  };
}

function formatBrake(brake: Brake): AxleSheet["brake"] {
  return {
    disc_diameter_mm: exactMm(brake.discDiameter),
    disc_thickness_mm: exactMm(brake.discThickness),
    vented: brake.vented,
    hat_depth_mm: exactMm(brake.hatDepth),
    piston_diameter_mm: exactMm(brake.pistonDiameter),
    pad_thickness_mm: exactMm(brake.padThickness),
    caliper_at: brake.caliperAt,
    parking: brake.parking,
  };
}

function formatOutline(outline: Outline): [number, number][] {
  return outline.map(([x, y]) => [exactMm(x), exactMm(y)]);
}
