import { z } from "zod";
import type { HandQuestion, HandWay, SheetQuestion } from "#casework";
import { metresFromMm, mmFromMetres } from "#quantity";
import type { Family } from "#vehicle";
import { cornerSchema, gradeSchema } from "./place-schema.ts";

const held = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("ride") }),
  z.strictObject({ kind: z.literal("hanging") }),
  z.strictObject({ kind: z.literal("under"), part: z.string() }),
]);

const hand = z.strictObject({
  position: z.string(),
  fault: z.discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("torn"), grade: gradeSchema }),
    z.strictObject({ kind: z.literal("loose"), play_mm: z.number().positive(), assumed: z.literal(true).optional() }),
  ]),
  way: z.discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("rock"), at: z.enum(["12-6", "3-9"]), moment_nm: z.number().positive() }),
    z.strictObject({
      kind: z.literal("push"),
      at: z.enum(["top", "bottom", "front", "rear"]),
      force_n: z.number().positive(),
    }),
    z.strictObject({ kind: z.literal("bar"), force_n: z.number().positive() }),
  ]),
});

/** What the sheet of how a corner is held is asked with, as it stands in JSON: keys with units. */
export const holdWire = z.strictObject({
  sheet: z.literal("hold"),
  family: z.string(),
  corner: cornerSchema,
  held,
  hand: hand.optional(),
});

type HandWire = z.infer<typeof hand>;
type HoldQuestion = Extract<SheetQuestion, { kind: "hold" }>;

const readWay = (way: HandWire["way"]): HandWay => {
  if (way.kind === "rock") return { kind: "rock", at: way.at, moment: way.moment_nm };
  if (way.kind === "push") return { kind: "push", at: way.at, force: way.force_n };
  return { kind: "bar", force: way.force_n };
};

const readFault = (fault: HandWire["fault"]): HandQuestion["fault"] =>
  fault.kind === "torn"
    ? fault
    : { kind: "loose", play: metresFromMm(fault.play_mm), ...(fault.assumed ? { assumed: true } : {}) };

/** The question of a sheet of load states, its family found. */
export const readHold = (
  { corner, held: way, hand: asked }: z.infer<typeof holdWire>,
  family: Family,
): HoldQuestion => ({
  kind: "hold",
  family,
  corner,
  held: way,
  test:
    asked === undefined
      ? null
      : { corner, held: way, position: asked.position, fault: readFault(asked.fault), way: readWay(asked.way) },
});

const formatWay = (way: HandWay): HandWire["way"] => {
  if (way.kind === "rock") return { kind: "rock", at: way.at, moment_nm: way.moment };
  if (way.kind === "push") return { kind: "push", at: way.at, force_n: way.force };
  return { kind: "bar", force_n: way.force };
};

/** The same as it is sent. */
export const formatHold = ({ family, corner, held: way, test }: HoldQuestion): z.input<typeof holdWire> => ({
  sheet: "hold",
  family: family.id,
  corner,
  held: way,
  ...(test === null
    ? {}
    : {
        hand: {
          position: test.position,
          fault:
            test.fault.kind === "torn"
              ? test.fault
              : {
                  kind: "loose",
                  play_mm: mmFromMetres(test.fault.play),
                  ...(test.fault.assumed ? { assumed: true } : {}),
                },
          way: formatWay(test.way),
        },
      }),
});
