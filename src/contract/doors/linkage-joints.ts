import { z } from "zod";
import {
  computeDriveShaft,
  computeJointAngles,
  type JointAngle,
  type JointPlace,
  type TravelPosition,
  TravelSweep,
} from "#engines/linkage";
import type { Finding, Vector } from "#numeric";
import { degreesFromRadians } from "#quantity";
import type { Door } from "../door.ts";
import { checkAxis, checkCorner, linkNamesOf } from "./linkage-check.ts";
import { findDependence } from "./linkage-dependence.ts";
import { directionFromWire, geometryFromWire, pointFromWire, sideways } from "./linkage-reading.ts";
import { axisSchema, cornerKeys, pointMm } from "./linkage-schema.ts";
import { entriesOf, isObject } from "./loose-corner.ts";
import { checkNamed, checkRepeated, namesOf } from "./named-entries.ts";
import { branchEnd, formatEnd, formatRefused, refusedPosition } from "./travel-position.ts";

/** Mounts by the name of their bush, and the key that gives the corner one. */
const MOUNTS = [
  { name: "strut_top", key: "strut" },
  { name: "trailing_arm", key: "trailing_arm" },
];

const input = z.strictObject({
  ...cornerKeys,
  bushes: z
    .array(z.strictObject({ link: z.string().min(1), end: z.enum(["inner", "outer"]), axis: axisSchema }))
    .max(60)
    .default([])
    .meta({ description: "axes of bushes; an end not listed is a ball" }),
  drive_shaft: z
    .strictObject({ inner_mm: pointMm, outer_mm: pointMm, inner_axis: axisSchema.default([0, 1, 0]) })
    .optional(),
  tightened_at_mm: z
    .number()
    .min(-2000)
    .max(2000)
    .optional()
    .meta({ description: "wheel travel at which the bushes were tightened" }),
  steps: z
    .array(z.strictObject({ wheel_travel_mm: z.number(), rack_mm: z.number().default(0) }))
    .min(1)
    .max(100_000),
});
type Input = z.output<typeof input>;

const joint = z.strictObject({
  link: z.string(),
  end: z.enum(["inner", "outer"]),
  swing_deg: z.number().meta({ description: "whole turn from ride height, 0 or more" }),
  twist_deg: z.number().optional().meta({ description: "about the bush's axis" }),
  tilt_deg: z.number().optional().meta({ description: "across it" }),
  twist_from_tightened_deg: z.number().optional(),
});
const position = z.strictObject({
  joints: z.array(joint),
  drive_shaft: z
    .strictObject({ inner_angle_deg: z.number(), outer_angle_deg: z.number(), plunge_mm: z.number() })
    .optional(),
});
const output = z.strictObject({
  positions: z.array(z.union([position, refusedPosition])),
  binds: z
    .strictObject({ low: branchEnd, high: branchEnd })
    .meta({ description: "where the branch ends within 200 mm of ride height, and what locks there" }),
});

/** Looked at for binding either side of ride height, metres. */
const REACH = 0.2;

function checkShaft({ drive_shaft: shaft, bushes, ...doc }: Record<string, unknown>): Finding[] {
  const found = entriesOf(bushes).flatMap(([i, b]) => checkAxis(b.axis, `bushes[${i}].axis`));
  const named = entriesOf(bushes).flatMap(([i, b]) =>
    typeof b.link === "string" ? [{ name: b.link, path: `bushes[${i}].link`, end: b.end }] : [],
  );
  if (linkNamesOf(doc)) {
    const mounts = MOUNTS.flatMap(({ name, key }) => (isObject(doc[key]) ? [{ name, path: "" }] : []));
    found.push(...checkNamed(named, [...namesOf(doc.links, "links", "name"), ...mounts], "link"));
  }
  found.push(
    ...checkRepeated(
      entriesOf(bushes).flatMap(([i, b]) =>
        typeof b.link === "string" && typeof b.end === "string"
          ? [{ name: `${b.link}.${b.end}`, path: `bushes[${i}]` }]
          : [],
      ),
    ),
    ...named
      .filter(({ name, end }) => end === "outer" && MOUNTS.some((m) => m.name === name))
      .map(({ path }) => ({
        code: "not-consistent",
        path: path.replace(/link$/, "end"),
        got: '"outer"',
        needed: '"inner", as the mount has one bush, in the body',
        hint: "What turns there is the knuckle against the body.",
      })),
  );
  if (!isObject(shaft)) return found;
  found.push(...checkAxis(shaft.inner_axis, "drive_shaft.inner_axis"));
  if (Array.isArray(shaft.inner_mm) && Array.isArray(shaft.outer_mm) && shaft.inner_mm.join() === shaft.outer_mm.join())
    found.push({
      code: "coincident-points",
      path: "drive_shaft.outer_mm",
      got: `[${shaft.outer_mm.join(", ")}]`,
      needed: "a point away from drive_shaft.inner_mm",
      hint: "These are the centres of the two joints of the shaft.",
    });
  return found;
}

function formatJoint(
  j: JointAngle,
  tightened: readonly JointAngle[] | null,
  mirrored: boolean,
): z.output<typeof joint> {
  const { link, end } = j;
  const at = tightened?.find((t) => t.link === link && t.end === end)?.twist ?? null;
  // A turn about an axis given on the right side is the other way round from its mirror image.
  const twist = (x: number): number => degreesFromRadians(mirrored && x !== 0 ? -x : x);
  return {
    link,
    end,
    swing_deg: degreesFromRadians(j.swing),
    ...(j.twist !== null && j.tilt !== null ? { twist_deg: twist(j.twist), tilt_deg: degreesFromRadians(j.tilt) } : {}),
    ...(j.twist !== null && at !== null ? { twist_from_tightened_deg: twist(j.twist - at) } : {}),
  };
}

export const linkageJoints: Door<Input> = {
  id: "linkage.joints",
  summary:
    "Angles of every joint, twist of bushes from where they were tightened, drive-shaft angles and plunge, what locks",
  input: input as unknown as z.ZodType<Input>,
  output,
  relation: "Turns of links, arms and knuckle at the solved pose of the rigid linkage",
  source: "own derivation; definitions in docs/method/linkage.md, section 14",
  accuracy: "1e-12 rad against the same arms solved as bodies (tests)",
  check(document) {
    return isObject(document) ? [...checkCorner(document), ...checkShaft(document)] : [];
  },
  compute(wire) {
    const { side } = wire;
    const geometry = geometryFromWire(wire);
    const dependent = findDependence(geometry);
    if (dependent) return { findings: [dependent] };
    const sweep = new TravelSweep(geometry);
    const axisOf = ({ link, end }: JointPlace): Vector | null => {
      const bush = wire.bushes.find((b) => b.link === link && b.end === end);
      return bush ? directionFromWire(bush.axis, side) : null;
    };
    const anglesAt = (p: TravelPosition, rack: number) => computeJointAngles(geometry, p.pose, rack, axisOf);
    let tightened: readonly JointAngle[] | null = null;
    if (wire.tightened_at_mm !== undefined) {
      const at = sweep.solve({ travel: wire.tightened_at_mm / 1000, rack: 0 });
      if ("foldAt" in at) return { findings: [beyond(wire.tightened_at_mm, at.foldAt)] };
      tightened = anglesAt(at, 0);
    }
    const shaft = wire.drive_shaft && {
      inner: pointFromWire(wire.drive_shaft.inner_mm, side),
      outer: pointFromWire(wire.drive_shaft.outer_mm, side),
      innerAxis: directionFromWire(wire.drive_shaft.inner_axis, side),
    };
    const positions = wire.steps.map((step) => {
      const rack = sideways(step.rack_mm, side) / 1000;
      const p = sweep.solve({ travel: step.wheel_travel_mm / 1000, rack });
      if ("foldAt" in p) return formatRefused(p, side);
      const drive = shaft && computeDriveShaft(geometry, shaft, p.pose, p.attitude.axis);
      return {
        joints: anglesAt(p, rack).map((j) => formatJoint(j, tightened, side === "right")),
        ...(drive
          ? {
              drive_shaft: {
                inner_angle_deg: degreesFromRadians(drive.innerAngle),
                outer_angle_deg: degreesFromRadians(drive.outerAngle),
                plunge_mm: drive.plunge * 1000,
              },
            }
          : {}),
      };
    });
    const ends = sweep.findEnds(REACH);
    return { output: { positions, binds: { low: formatEnd(ends.low), high: formatEnd(ends.high) } } };
  },
};

const beyond = (got: number, foldAt: number): Finding => ({
  code: "beyond-fold",
  path: "tightened_at_mm",
  got: String(got),
  needed: `a travel the corner reaches: it ends at ${foldAt * 1000} mm`,
  hint: "Travel is the rise of the wheel centre from ride height, bump positive.",
});
