import { radiansFromDegrees } from "#quantity";
import type { BodyLayout, LayoutAxis, LayoutJoint } from "#vehicle";
import { directionFromWire, pointFromWire } from "../doors/linkage-reading.ts";
import type { LayoutSheet } from "./layout-schema.ts";

type Side = "left" | "right";

/** A layout in SI, as a left corner; a right one is mirrored. The sheet must have been checked (checkLayout). */
export function readLayout(sheet: LayoutSheet, side: Side): BodyLayout {
  return {
    name: sheet.name,
    bodies: sheet.bodies,
    points: Object.fromEntries(sheet.points.map((p) => [p.name, pointFromWire(p.at_mm, side)])),
    wheel: {
      on: sheet.wheel.on,
      centre: pointFromWire(sheet.wheel.centre_mm, side),
      camber: radiansFromDegrees(sheet.wheel.camber_deg),
      toe: radiansFromDegrees(sheet.wheel.toe_deg),
      loadedRadius: sheet.wheel.loaded_radius_mm / 1000,
    },
    joints: sheet.joints.map((joint) => readJoint(joint, side)),
    links: sheet.links,
    ...(sheet.spring ? { spring: sheet.spring } : {}),
    ...(sheet.damper ? { damper: sheet.damper } : {}),
  };
}

function readJoint(joint: LayoutSheet["joints"][number], side: Side): LayoutJoint {
  if (joint.kind !== "bush") return joint;
  const { name, label, kind, between, at, slides } = joint;
  const axis: LayoutAxis = joint.axis_through
    ? { kind: "between", from: joint.axis_through[0], to: joint.axis_through[1] }
    : { kind: "given", vector: directionFromWire(joint.axis ?? [0, 0, 1], side) };
  return { name, label, kind, between, at, axis, slides };
}
