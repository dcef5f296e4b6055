import { z } from "zod";
import type { CornerLoad, ElasticAnswer, LoadRate } from "#engines/linkage";
import type { Finding, Vector } from "#numeric";
import { degreesFromRadians } from "#quantity";
import { pointToWire } from "./linkage-reading.ts";
import { entriesOf, isNumber } from "./loose-corner.ts";

/** Forces of the road on one wheel. */
export const loadSchema = z.strictObject({
  lateral_n: z.number().default(0).meta({ description: "toward +y (left), at the contact point" }),
  braking_n: z.number().default(0).meta({ description: "rearward at the contact point; negative pushes forward" }),
  drive_n: z.number().default(0).meta({ description: "forward at the wheel centre" }),
  aligning_nm: z.number().default(0).meta({ description: "about +z" }),
  contact_rise_mm: z.number().default(0).meta({ description: "only with hold contact_height" }),
});

const point = z.tuple([z.number(), z.number(), z.number()]);
const rateSchema = z.strictObject({
  toe_deg: z.number(),
  camber_deg: z.number(),
  caster_deg: z.number(),
  wheel_centre_mm: point,
  contact_mm: point,
});

/** Exact derivatives by each force at the state under the wheel load alone. */
export const perKnSchema = z
  .strictObject({ lateral: rateSchema, braking: rateSchema, drive: rateSchema, aligning_per_100_nm: rateSchema })
  .nullable();

/** What stands in the place of a state that finds no balance. */
export const unsolvedState = z.strictObject({
  refused: z.strictObject({
    code: z.enum(["no-equilibrium", "endless-equilibria"]).meta({
      description: "endless: loose joints hold nothing, so that balances lie side by side and none is the answer",
    }),
    end: z.string(),
    carried: z
      .strictObject({ leg: z.enum(["faults", "height", "load"]), share: z.number() })
      .optional()
      .meta({
        description:
          "where it buckles: the balance connected with rest goes so far (0 to 1) on the way to this height, then under this load",
      }),
    free_moves: z.number().int().positive().optional().meta({ description: "moves that no joint resists" }),
  }),
});

/** The same of an answer without a balance. */
export function formatUnsolved(
  answer: Extract<ElasticAnswer, { readonly unsolved: unknown }>,
): z.output<typeof unsolvedState> {
  const { unsolved, carried, freeMoves } = answer;
  if (freeMoves !== undefined)
    return { refused: { code: "endless-equilibria", end: unsolved.end, free_moves: freeMoves } };
  return { refused: { code: "no-equilibrium", end: unsolved.end, ...(carried ? { carried } : {}) } };
}

/** A rise of the patch says something only where its height is held. */
export function checkLoads(doc: Record<string, unknown>): Finding[] {
  if (doc.hold === "contact_height") return [];
  return entriesOf(doc.loads).flatMap(([i, l]) =>
    isNumber(l.contact_rise_mm) && l.contact_rise_mm !== 0
      ? [
          {
            code: "key-not-used-here",
            path: `loads[${i}].contact_rise_mm`,
            got: String(l.contact_rise_mm),
            needed: '"hold": "contact_height"',
            hint: "With the wheel load held the patch goes where the load lets it.",
          },
        ]
      : [],
  );
}

/** Load on a left corner: what points left on a right wheel points right on its mirror image. */
export function loadFromWire(l: z.output<typeof loadSchema>, turn: 1 | -1): CornerLoad {
  return {
    lateral: turn * l.lateral_n,
    braking: l.braking_n,
    drive: l.drive_n,
    aligning: turn * l.aligning_nm,
    contactRise: l.contact_rise_mm / 1000,
    rack: 0,
  };
}

/** Rates per newton of a left corner as rates per kilonewton (100 N m) of the asked one. */
export function formatPerKn(
  rates: Readonly<Record<"lateral" | "braking" | "drive" | "aligning", LoadRate>>,
  side: "left" | "right",
): NonNullable<z.output<typeof perKnSchema>> {
  const turn = side === "right" ? -1 : 1;
  const mm = (v: Vector, k: number): [number, number, number] => [...pointToWire([v[0] * k, v[1] * k, v[2] * k], side)];
  const rate = (r: LoadRate, k: number) => ({
    toe_deg: degreesFromRadians(r.toe) * k,
    camber_deg: degreesFromRadians(r.camber) * k,
    caster_deg: degreesFromRadians(r.caster) * k,
    wheel_centre_mm: mm(r.centre, k),
    contact_mm: mm(r.contact, k),
  });
  return {
    lateral: rate(rates.lateral, 1000 * turn),
    braking: rate(rates.braking, 1000),
    drive: rate(rates.drive, 1000),
    aligning_per_100_nm: rate(rates.aligning, 100 * turn),
  };
}
