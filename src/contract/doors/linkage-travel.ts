import { z } from "zod";
import { type CornerGeometry, TravelSweep } from "#engines/linkage";
import type { Finding } from "#numeric";
import type { Door } from "../door.ts";
import { checkCorner, checkSeat } from "./linkage-check.ts";
import { findDependence } from "./linkage-dependence.ts";
import { geometryFromWire } from "./linkage-reading.ts";
import { axleName, carSchema, cornerKeys, seatSchema } from "./linkage-schema.ts";
import { entriesOf, isNumber, isObject } from "./loose-corner.ts";
import { formatPosition, formatRefusedTravel, positionKeys, refusedTravel } from "./travel-position.ts";

const input = z.strictObject({
  ...cornerKeys,
  axle: axleName.optional(),
  spring: seatSchema.optional(),
  damper: seatSchema.optional(),
  car: carSchema.optional(),
  steps: z
    .array(z.strictObject({ wheel_travel_mm: z.number(), rack_mm: z.number().default(0) }))
    .min(1)
    .max(100_000),
});

const output = z.strictObject({
  positions: z.array(z.union([z.strictObject(positionKeys), refusedTravel])),
  report: z.strictObject({
    end: z.enum(["converged", "binds"]),
    binds_at_mm: z
      .tuple([z.number().nullable(), z.number().nullable()])
      .meta({ description: "within 200 mm either side; what locks there says linkage.joints" }),
  }),
});

type Input = z.output<typeof input>;

/** Looked at for binding either side of ride height, metres (the contract's 200 mm). */
const REACH = 0.2;

function checkRack(doc: Record<string, unknown>): Finding[] {
  if (!Array.isArray(doc.links) || entriesOf(doc.links).some(([, l]) => l.steered === true)) return [];
  return entriesOf(doc.steps).flatMap(([i, s]) =>
    isNumber(s.rack_mm) && s.rack_mm !== 0
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

/** `axle` may stand on top or in `car`; both must agree, and a car needs one. */
export function checkAxle(doc: Record<string, unknown>): Finding[] {
  const car = isObject(doc.car) ? doc.car : null;
  if (!car) return [];
  if (doc.axle === undefined && car.axle === undefined)
    return [
      {
        code: "missing-key",
        path: "car.axle",
        got: "nothing",
        needed: '"front" or "rear", here or on top',
        hint: "The sign of the anti figures hangs on it.",
      },
    ];
  if (doc.axle !== undefined && car.axle !== undefined && doc.axle !== car.axle)
    return [
      {
        code: "not-consistent",
        path: "car.axle",
        got: JSON.stringify(car.axle),
        needed: JSON.stringify(doc.axle),
        hint: "axle on top says otherwise: leave one out.",
      },
    ];
  return [];
}

export const linkageTravel: Door<Input> = {
  id: "linkage.travel",
  summary:
    "Rigid linkage of one corner over wheel travel and rack: wheel angles, instant centres, steering axis, ratios",
  input: input as unknown as z.ZodType<Input>,
  output,
  relation:
    "Newton on the joint constraints, rates from the velocity screw of the same Jacobian (docs/method/linkage.md)",
  source: "own derivation; definitions in docs/method/linkage.md",
  accuracy: "1e-9 mm and deg against two independent programs, one in 50 digits (docs/verification.md)",
  check(document) {
    if (!isObject(document)) return [];
    return [
      ...checkCorner(document),
      ...checkAxle(document),
      ...checkSeat(document.spring, "spring", document),
      ...checkSeat(document.damper, "damper", document),
      ...checkRack(document),
    ];
  },
  compute(wire) {
    const geometry: CornerGeometry = geometryFromWire(wire, wire.spring, wire.damper);
    const dependent = findDependence(geometry);
    if (dependent) return { findings: [dependent] };
    const sweep = new TravelSweep(geometry);
    const turn = wire.side === "right" ? -1 : 1;
    let refusals = 0;
    const positions = wire.steps.map((step) => {
      const answer = sweep.solve({ travel: step.wheel_travel_mm / 1000, rack: (turn * step.rack_mm) / 1000 });
      if (!("foldAt" in answer)) return formatPosition(answer, wire);
      refusals++;
      return formatRefusedTravel(answer);
    });
    const ends = sweep.findEnds(REACH);
    const [low, high] = [ends.low, ends.high].map((e) => e && e.at * 1000) as [number | null, number | null];
    const end = refusals > 0 ? ("binds" as const) : ("converged" as const);
    return {
      output: {
        positions,
        report: { end, binds_at_mm: [low, high] },
      },
    };
  },
};
