import { z } from "zod";
import type { EndRate, LayoutElasticity, LayoutFault, LayoutRubber } from "#engines/linkage";
import { type Finding, subtract, type Vector } from "#numeric";
import { perRadianFromPerDegree, radiansFromDegrees } from "#quantity";
import { type BodyLayout, directionOfClocking } from "#vehicle";
import { findUnused, layoutSheet } from "../layout/index.ts";
import { directionFromWire } from "./linkage-reading.ts";
import { axisSchema, rateNumber } from "./linkage-schema.ts";

const share = rateNumber.max(100);
const width = z.number().min(0).max(100);

/** The rates of one end of a link or of a joint. */
export const rubber = z.strictObject({
  part: z.string().min(1).meta({ description: "name of a link (then with end) or of a joint" }),
  end: z.enum(["from", "to"]).optional().meta({ description: "which end of a link" }),
  radial_n_per_mm: rateNumber.meta({ description: "across the axis; without an axis in every direction" }),
  axial_n_per_mm: rateNumber.optional(),
  axis: axisSchema.optional().meta({ description: "of an end of a link; a joint has its own" }),
  voided_n_per_mm: rateNumber
    .optional()
    .meta({ description: "through the voids; radial_n_per_mm then holds across both" }),
  clocking_deg: z.number().min(-360).max(360).optional().meta({
    description: "as in linkage.compliance; about the line of a slider as its points are given",
  }),
  conical_nm_per_deg: rateNumber
    .optional()
    .meta({ description: "moment against tilting the axis: of an end of a link, a bush or a slider" }),
  torsional_nm_per_deg: rateNumber
    .optional()
    .meta({ description: "moment against turning about the axis: of an end of a link or a bush" }),
  rate_sd_share: z.number().min(0).max(10).default(0).meta({ description: "relative standard deviation, all rates" }),
});

/** A suspension as bodies and joints with what is elastic in it: the keys every question about one shares. */
export const bodiesKeys = {
  layout: layoutSheet,
  spring_n_per_mm: rateNumber,
  wheel_load_n: z.number().positive().max(1e6).meta({ description: "at the patch at ride height, all included" }),
  rubber: z.array(rubber).max(60).default([]),
  members: z
    .array(z.strictObject({ link: z.string().min(1), n_per_mm: rateNumber }))
    .max(40)
    .default([]),
};

const text = z.string();
/** What is doubtful in a layout and computed all the same; left out where nothing is. */
export const doubtsKey = {
  doubts: z
    .array(z.strictObject({ code: text, path: text, got: text, needed: text, hint: text }))
    .optional()
    .meta({ description: "what is doubtful in the layout: points nothing uses, parts called the same" }),
};

/** The same of a layout, to be spread into an answer. */
export function doubtsOf(layout: z.output<typeof layoutSheet>): { readonly doubts?: readonly Finding[] } {
  const doubts = findUnused(layout, "layout");
  return doubts.length === 0 ? {} : { doubts };
}

/** Something wrong with a layout, told as a range where it is not known exactly. */
export const bodiesFault = z.strictObject({
  part: z.string().min(1).meta({ description: "name of a link or of a joint" }),
  kind: z.enum(["soft", "play"]).default("soft"),
  end: z.enum(["from", "to"]).optional().meta({ description: "soft, of a link: which end" }),
  factor: share.optional().meta({ description: "soft: what its rates are multiplied with; firmer above 1" }),
  factor_low: share.optional().meta({ description: "soft: least factor it may be, with factor_high" }),
  factor_high: share.optional(),
  total_mm: width.optional().meta({
    description: "play: from side to side, of a link along it, of a joint in every direction across its axis",
  }),
  total_low_mm: width.optional().meta({ description: "play: least it may be, with total_high_mm" }),
  total_high_mm: width.optional(),
});

export type WireBodiesFault = z.output<typeof bodiesFault>;
type WireRubber = z.output<typeof rubber>;

/** The axis of a joint at design (of a slider its line), on the left side; null where it has none. */
function axisOfJoint(layout: BodyLayout, name: string): Vector | null {
  const joint = layout.joints.find((j) => j.name === name);
  if (!joint || joint.kind === "ball") return null;
  const axis = joint.kind === "slider" ? { kind: "between" as const, ...joint.line } : joint.axis;
  if (axis.kind === "given") return axis.vector;
  const [from, to] = [layout.points[axis.from], layout.points[axis.to]];
  return from && to ? subtract(to, from) : null;
}

/** One rubber of a layout, SI. */
function readRubber(r: WireRubber, layout: BodyLayout, side: "left" | "right"): LayoutRubber {
  const own = r.axis && directionFromWire(r.axis, side);
  const axis = own ?? axisOfJoint(layout, r.part);
  const turn = side === "right" ? -1 : 1;
  const rate: EndRate = {
    radial: r.radial_n_per_mm * 1000,
    ...(r.axial_n_per_mm === undefined ? {} : { axial: r.axial_n_per_mm * 1000 }),
    ...(own ? { axis: own } : {}),
    ...(r.voided_n_per_mm !== undefined && r.clocking_deg !== undefined && axis
      ? {
          voided: {
            rate: r.voided_n_per_mm * 1000,
            through: directionOfClocking(axis, turn * radiansFromDegrees(r.clocking_deg)),
          },
        }
      : {}),
    ...(r.conical_nm_per_deg === undefined ? {} : { conical: perRadianFromPerDegree(r.conical_nm_per_deg) }),
    ...(r.torsional_nm_per_deg === undefined ? {} : { torsional: perRadianFromPerDegree(r.torsional_nm_per_deg) }),
  };
  return { part: r.part, end: r.end ?? null, rate };
}

interface WireElasticity {
  readonly spring_n_per_mm: number;
  readonly wheel_load_n: number;
  readonly rubber: readonly WireRubber[];
  readonly members: readonly { readonly link: string; readonly n_per_mm: number }[];
}

/** What is elastic in a layout, SI, as a left corner; the rubber must have been checked (checkBodiesRubber). */
export const readLayoutElasticity = (
  wire: WireElasticity,
  layout: BodyLayout,
  side: "left" | "right",
): LayoutElasticity => ({
  springRate: wire.spring_n_per_mm * 1000,
  wheelLoad: wire.wheel_load_n,
  rubber: wire.rubber.map((r) => readRubber(r, layout, side)),
  members: wire.members.map(({ link, n_per_mm }) => ({ link, rate: n_per_mm * 1000 })),
});

/** Faults as said, and with every range at its low and its high end, each combination once; no ends where there is no range. */
export interface RangedFaults {
  readonly middle: readonly LayoutFault[];
  readonly ends: readonly (readonly LayoutFault[])[];
}

/** Faults of a layout, SI; they must have been checked (checkBodiesRubber). */
export function readLayoutFaults(faults: readonly WireBodiesFault[]): RangedFaults {
  const read = (f: WireBodiesFault, end: "low" | "high" | null): LayoutFault => {
    const of = <T>(middle: T, low: T, high: T): T => (end === null ? middle : end === "low" ? low : high);
    const total = of(f.total_mm, f.total_low_mm, f.total_high_mm) ?? f.total_mm ?? 0;
    const factor = of(f.factor, f.factor_low, f.factor_high) ?? f.factor ?? 1;
    return f.kind === "play"
      ? { kind: "play", part: f.part, total: total / 1000 }
      : { kind: "soft", part: f.part, end: f.end ?? null, factor };
  };
  const isRanged = (f: WireBodiesFault): boolean => f.factor_low !== undefined || f.total_low_mm !== undefined;
  const ends = faults.reduce<LayoutFault[][]>(
    (all, f) =>
      all.flatMap((before) =>
        isRanged(f)
          ? [
              [...before, read(f, "low")],
              [...before, read(f, "high")],
            ]
          : [[...before, read(f, null)]],
      ),
    [[]],
  );
  return { middle: faults.map((f) => read(f, null)), ends: faults.some(isRanged) ? ends : [] };
}
