import { z } from "zod";
import { findDependentConstraints, findTravelBlock, LayoutSweep, type WheelGradient } from "#engines/linkage";
import type { Finding } from "#numeric";
import { degreesFromRadians } from "#quantity";
import type { Door } from "../door.ts";
import { checkLayout, layoutSheet, readLayout } from "../layout/index.ts";
import { doubtsKey, doubtsOf } from "./bodies-schema.ts";
import { sideways } from "./linkage-reading.ts";
import { isObject } from "./loose-corner.ts";
import {
  branchEnd,
  formatEnd,
  formatPosition,
  formatRefused,
  positionKeys,
  refusedPosition,
} from "./travel-position.ts";

/** A suspension on sliders need not end: a travel is bounded as coordinates are (invented bound). */
const farthest = z.number().min(-2000).max(2000);

const input = z.strictObject({
  side: z.enum(["left", "right"]).default("left"),
  layout: layoutSheet,
  steps: z
    .array(z.strictObject({ wheel_travel_mm: farthest, rack_mm: farthest.default(0) }))
    .min(1)
    .max(10_000),
  gradients: z.boolean().default(false).meta({ description: "derivatives by travel, rack, coordinates and lengths" }),
});

const three = z.tuple([z.number(), z.number(), z.number()]);

const gradient = z.strictObject({
  by: z.string().meta({ description: '"travel", "rack", "<point>.x", "<link>.length"; per mm of it' }),
  camber_deg_per_mm: z.number(),
  toe_deg_per_mm: z.number(),
  spin_deg_per_mm: z.number(),
  wheel_centre_mm_per_mm: three,
  contact_mm_per_mm: three,
});

const position = z.strictObject({ ...positionKeys, gradients: z.array(gradient).optional() });
const output = z.strictObject({
  freedoms: z.number(),
  positions: z.array(z.union([position, refusedPosition])),
  report: z.strictObject({
    end: z.enum(["converged", "binds"]),
    binds: z.strictObject({ low: branchEnd, high: branchEnd }),
  }),
  ...doubtsKey,
});

type Input = z.output<typeof input>;

/** Looked at for binding either side of ride height, metres. */
const REACH = 0.2;

const nameOf = ({ by }: WheelGradient): string =>
  by.kind === "coordinate" ? `${by.point}.${"xyz"[by.axis]}` : by.kind === "length" ? `${by.link}.length` : by.kind;

/** A derivative per millimetre, on the side asked for: on the right, what y does turns its sign. */
function formatGradient(g: WheelGradient, side: "left" | "right"): z.output<typeof gradient> {
  const alongY = g.by.kind === "rack" || (g.by.kind === "coordinate" && g.by.axis === 1);
  const per = (x: number): number => (alongY ? sideways(x, side) : x);
  const place = (v: readonly [number, number, number]): [number, number, number] => [
    per(v[0]),
    per(sideways(v[1], side)),
    per(v[2]),
  ];
  return {
    by: nameOf(g),
    camber_deg_per_mm: per(degreesFromRadians(g.camber) / 1000),
    toe_deg_per_mm: per(degreesFromRadians(g.toe) / 1000),
    spin_deg_per_mm: per(degreesFromRadians(g.spin) / 1000),
    wheel_centre_mm_per_mm: place(g.centre),
    contact_mm_per_mm: place(g.contact),
  };
}

/** What is wrong with a layout whose count is right: things held twice, or a wheel that cannot rise. */
export function findLayoutDependence({ linkage }: Pick<LayoutSweep, "linkage">): Finding | null {
  const { mechanism } = linkage;
  const twice = findDependentConstraints(mechanism);
  const group = twice ?? findTravelBlock(mechanism);
  if (!group) return null;
  return {
    code: "constraints-dependent",
    path: "layout.joints",
    got: `${group.join(", ")}: together they ${twice ? "hold one thing twice" : "keep the wheel centre from rising"}`,
    needed: "constraints that each hold something of their own, and leave one motion that lifts the wheel",
    hint: "Points in one line or plane, a body that can turn about its own two joints, or two bushes that both hold along one axis do this.",
  };
}

function checkSteps(doc: Record<string, unknown>): Finding[] {
  const layout = isObject(doc.layout) ? doc.layout : {};
  if (!Array.isArray(layout.links) || layout.links.some((l) => isObject(l) && l.steered === true)) return [];
  const steps = Array.isArray(doc.steps) ? doc.steps : [];
  return steps.flatMap((s, i) =>
    isObject(s) && typeof s.rack_mm === "number" && s.rack_mm !== 0
      ? [
          {
            code: "nothing-steered",
            path: `steps[${i}].rack_mm`,
            got: String(s.rack_mm),
            needed: "0, as no link is steered",
            hint: 'Mark the tie rod with "steered": true.',
          },
        ]
      : [],
  );
}

export const linkageBodies: Door<Input> = {
  id: "linkage.bodies",
  summary: "Any wheel suspension given as bodies and joints, over wheel travel and rack, with exact derivatives",
  input: input as unknown as z.ZodType<Input>,
  output,
  relation: "Newton on the joint constraints of all bodies; derivatives and binding forces from the same Jacobian",
  source: "own derivation; definitions in docs/method/linkage-bodies.md",
  accuracy: "closure below 1e-9 mm; 1e-9 deg against a closed form and a second continuation (docs/verification.md)",
  check(document) {
    if (!isObject(document)) return [];
    const side = document.side === "right" ? "right" : "left";
    return [...checkLayout(document.layout, "layout", side), ...checkSteps(document)];
  },
  compute(wire) {
    const { side } = wire;
    const sweep = new LayoutSweep(readLayout(wire.layout, side));
    const dependent = findLayoutDependence(sweep);
    if (dependent) return { findings: [dependent] };
    let refusals = 0;
    const positions = wire.steps.map((step) => {
      const rack = sideways(step.rack_mm, side) / 1000;
      const answer = sweep.solve({ travel: step.wheel_travel_mm / 1000, rack });
      if ("foldAt" in answer) {
        refusals++;
        return formatRefused(answer, side);
      }
      const gradients = wire.gradients ? sweep.gradientsAt(answer.pose, rack) : null;
      return {
        ...formatPosition(answer, { side }),
        ...(gradients ? { gradients: gradients.map((g) => formatGradient(g, side)) } : {}),
      };
    });
    const { low, high } = sweep.findEnds(REACH);
    return {
      output: {
        freedoms: 1,
        positions,
        report: {
          end: refusals > 0 ? "binds" : "converged",
          binds: { low: formatEnd(low), high: formatEnd(high) },
        },
        ...doubtsOf(wire.layout),
      },
    };
  },
};
