import { z } from "zod";
import type { AxleName, LoadState, Owner, QuantityName } from "#vehicle";
import { quantityNames } from "../cases/reading-unit.ts";
import { hyphenName, words } from "./figure-schema.ts";
import { lowerKey, upperKey } from "./work-units.ts";

const placeName = z
  .string()
  .max(160)
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*(\/[a-z0-9]+(-[a-z0-9]+)*)*$/, "a place such as lower-arm/ball-joint");
const axle = z
  .enum(["front", "rear"])
  .nullish()
  .meta({ id: "axle_or_both", description: "On which axle. Absent: on both." });
const owner = z
  .enum(["maker", "law", "workshop", "practice", "memory"])
  .meta({ id: "owner", description: "Whose figure it is. Practice and memory raise a finding to plan at most." });
const source = words.meta({ id: "source", description: "Where it stands." });
const label = words.meta({ description: "As it is said in the workshop." });
const id = hyphenName.meta({ description: "Name others refer to: lower-case words joined by hyphens." });
const hours = z.number().min(0).max(100);
const scope = z
  .enum(["corner", "axle", "car"])
  .meta({ description: "How far one doing of it reaches; it is charged once for that." });
const count = z.int().min(1).max(200);
const figure = z.number().min(-1e4).max(1e4);

const limitPlace = placeName.meta({
  id: "limit_place",
  description: "A place without its corner, or a kind of position: disc/thickness, disc.",
});
const lowerEnd = figure.nullish().meta({ id: "lower_end", description: "Least that is within. Absent: no lower end." });
const upperEnd = figure.nullish().meta({ id: "upper_end", description: "Most that is within. Absent: no upper end." });
const loadState = z.enum(["standing", "hanging", "supported", "bench", "driving"]).nullish().meta({
  id: "load_state",
  description: "State of load it was set for; a reading in another is not held against it. Absent: any.",
});
const limitGrade = z
  .enum(["watch", "plan", "repair-first", "do-not-drive"])
  .meta({ id: "limit_grade", description: "What a reading beyond it asks for." });

const limitOf = (quantity: QuantityName) =>
  z.strictObject({
    place: limitPlace,
    axle,
    quantity: z.literal(quantity).meta({ description: "What is read there." }),
    [lowerKey(quantity)]: lowerEnd,
    [upperKey(quantity)]: upperEnd,
    load_state: loadState,
    owner,
    source,
    grade: limitGrade,
  });
type LimitSchema = ReturnType<typeof limitOf>;

/** A limit as a sheet writes it: the keys of its ends carry the unit of its quantity. */
export interface LimitSheet {
  readonly place: string;
  readonly axle?: AxleName | null | undefined;
  readonly quantity: QuantityName;
  readonly load_state?: LoadState | null | undefined;
  readonly owner: Owner;
  readonly source: string;
  readonly grade: "watch" | "plan" | "repair-first" | "do-not-drive";
  readonly [lower: `lower${string}`]: number | null | undefined;
  readonly [upper: `upper${string}`]: number | null | undefined;
}

/** Keys made at run time are lost on the type of the schema, so it is said here. */
export const limitSheet = z
  .discriminatedUnion("quantity", quantityNames.map(limitOf) as [LimitSchema, ...LimitSchema[]])
  .meta({ description: "A limit and whose it is; the unit stands in its keys." }) as unknown as z.ZodType<
  LimitSheet,
  LimitSheet
>;

export const accessSheet = z
  .strictObject({ id, label, hours: hours.meta({ description: "Hours, charged once a visit." }), scope })
  .meta({ id: "access", description: "Work that several operations share." });

export const stageSheet = z.union([
  z.strictObject({ torque_nm: z.number().positive().max(1e5).meta({ description: "Torque of this stage, N·m." }) }),
  z.strictObject({
    angle_deg: z.number().positive().max(3600).meta({ description: "Angle on top of the stage before, degrees." }),
  }),
]);

export const fastenerSheet = z
  .strictObject({
    item: id,
    label,
    count: count.meta({ description: "How many one doing loosens." }),
    policy: z
      .enum(["always-new", "if-seized", "reuse"])
      .meta({ description: "always-new: once only; if-seized: to be at hand; reuse." }),
    locker: z.enum(["none", "pre-applied", "tube"]).optional().meta({ description: "Thread locker. Absent: none." }),
    grease: z.boolean().optional().meta({ description: "Whether it is greased. Absent: not." }),
    stages: z
      .array(stageSheet)
      .min(1)
      .max(8)
      .nullish()
      .meta({ description: "Stages of tightening in order. Absent: not on file, and paper says so." }),
    owner,
    source,
    at_ride_height: z
      .boolean()
      .optional()
      .meta({ description: "Final torque only with the wheel at ride height. Absent: not." }),
  })
  .meta({ id: "fastener", description: "A fastener that an operation loosens." });

export const operationSheet = z
  .strictObject({
    id,
    label,
    hours: hours.meta({ description: "Own hours, shared access not counted." }),
    scope,
    phase: z
      .enum(["chassis", "brakes", "alignment", "electrics"])
      .meta({ description: "Where in the order of a job it stands." }),
    access: z.array(hyphenName).max(30).optional().meta({ description: "Access it needs, by id." }),
    fasteners: z.array(fastenerSheet).max(40).optional().meta({ description: "What it loosens." }),
    support: z.string().max(400).optional().meta({ description: "What must be held meanwhile." }),
    cautions: z.array(z.int().min(1).max(22)).max(22).optional().meta({ description: "Cautions shown, by number." }),
    loosens: z
      .array(z.enum(["front-toe", "rear-toe", "sensor-link", "height", "subframe", "rack", "wheel"]))
      .max(7)
      .optional()
      .meta({ description: "What it upsets, for what must be taught or aimed again." }),
    needs_alignment: z.boolean().optional().meta({ description: "Whether the car is aligned after it. Absent: not." }),
    source,
  })
  .meta({ id: "operation", description: "A piece of work." });

const counted = z.strictObject({
  part: hyphenName.meta({ description: "Id of a part." }),
  count: count.meta({ description: "How many." }),
});

export const remedySheet = z
  .strictObject({
    id,
    label,
    axle,
    cures: z
      .array(placeName)
      .min(1)
      .max(60)
      .meta({ description: "Places without their corner, or kinds of position, that it cures." }),
    operations: z.array(hyphenName).min(1).max(30).meta({ description: "Operations by id." }),
    parts: z.array(counted).max(40).optional().meta({ description: "Parts for one side." }),
    pair: z.boolean().optional().meta({ description: "Always done on both sides. Absent: not." }),
  })
  .meta({ id: "remedy", description: "What cures findings; the owner agrees to the whole of it." });

export const partSheet = z
  .strictObject({
    id,
    label,
    price_cents: z
      .int()
      .min(0)
      .max(100_000_000)
      .nullish()
      .meta({ description: "Price without tax, in hundredths. Absent: not on file." }),
    kind: z.enum(["part", "set", "hardware", "consumable"]).meta({ description: "What it is." }),
    contents: z.array(counted).max(60).optional().meta({ description: "What is in a set." }),
  })
  .meta({ id: "part", description: "What can be fitted." });

export const knownFaultSheet = z
  .strictObject({
    id,
    position: placeName.meta({ description: "A position without its side: front/lower-arm/rear-bush." }),
    scope: words.meta({ description: "Which cars: variant, build weeks." }),
    sign: words.meta({ description: "What is seen." }),
    face: z.enum(["front", "rear", "inner", "outer", "lower", "upper"]).meta({ description: "On which face it sits." }),
    how_to_see: words.meta({ description: "How it is seen with the part fitted." }),
    told: z.enum(["seen-here", "told", "bulletin"]).meta({ description: "Kind of source." }),
    confirmed: z.int().min(0).max(1e6).meta({ description: "How often it was found here." }),
    denied: z.int().min(0).max(1e6).meta({ description: "How often it was looked for and not found." }),
    prior_factor: z.number().positive().max(100).meta({ description: "Factor on the chance of this cause in scope." }),
  })
  .meta({ id: "known_fault", description: "A weak point of the family." });

const rangeDeg = z.tuple([z.number().min(-45).max(45), z.number().min(-45).max(45)]).nullish();
const apartMm = z.number().positive().max(200).nullish();
const apartDeg = z.number().positive().max(10).nullish();
export const targetSheet = z
  .strictObject({
    axle: z.enum(["front", "rear"]).meta({ description: "Which axle." }),
    camber_deg: rangeDeg.meta({
      description: "Camber from and to, degrees, positive top outward. Absent: not on file.",
    }),
    toe_deg: rangeDeg.meta({ description: "Toe of one wheel from and to, degrees, positive in. Absent: not on file." }),
    caster_deg: rangeDeg.meta({
      description: "Caster from and to, degrees, positive rearward at its top. Absent: not on file.",
    }),
    hub_to_arch_mm: z
      .number()
      .min(50)
      .max(2000)
      .nullish()
      .meta({ description: "Hub centre to arch, mm: the height the angles belong to. Absent: not on file." }),
    height_tolerance_mm: apartMm.meta({
      description:
        "How far a height may be from hub_to_arch_mm, mm up or down. Absent: heights are not held against it.",
    }),
    height_apart_mm: apartMm.meta({
      description: "How far heights left and right may differ, mm. Absent: not on file.",
    }),
    camber_apart_deg: apartDeg.meta({
      description: "How far camber left and right may differ, degrees. Absent: not on file.",
    }),
    caster_apart_deg: apartDeg.meta({
      description: "How far caster left and right may differ, degrees. Absent: not on file.",
    }),
    thrust_deg: apartDeg.meta({
      description: "How far the axle may point to one side, degrees. Absent: not on file.",
    }),
    owner,
    source,
  })
  .meta({ id: "alignment_target", description: "Target of alignment at ride height." });

const listOf = <T extends z.ZodType>(entry: T, description: string) =>
  z.array(entry).max(1000).optional().meta({ description });

/** What a sheet says of the work on its family; every list may be left out. */
export const workSheet = z
  .strictObject({
    limits: listOf(limitSheet, "Limits and whose they are."),
    access: listOf(accessSheet, "Work that several operations share."),
    operations: listOf(operationSheet, "Pieces of work."),
    remedies: listOf(remedySheet, "What cures findings. Absent: the usual ones of the layouts."),
    parts: listOf(partSheet, "What can be fitted, with its price."),
    known_faults: listOf(knownFaultSheet, "Weak points of the family."),
    alignment: listOf(targetSheet, "Targets of alignment."),
  })
  .meta({ id: "work", description: "What is on file about the work on this family." });

export type WorkSheet = z.infer<typeof workSheet>;
