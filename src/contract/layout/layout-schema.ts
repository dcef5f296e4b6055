import { z } from "zod";
import { axisSchema, pointMm, wheelSchema } from "../doors/linkage-schema.ts";

const name = z.string().min(1).max(80);
const bodyName = name.meta({ description: 'name of a moving body, or "car-body"' });
const pointName = name.meta({ description: "name of a point of the list" });

const label = z.string().min(1).max(80).optional().meta({ description: "what people call it; absent: its name" });

const end = z.strictObject({ on: bodyName, at: pointName });
const between = z.tuple([bodyName, bodyName]).meta({ description: "the two bodies it joins" });

const ball = z
  .strictObject({
    name: name.meta({ description: "of its own among joints and links" }),
    label,
    kind: z.literal("ball").meta({ description: "one point of both bodies stays one point: holds 3" }),
    between,
    at: pointName,
  })
  .meta({ description: "ball joint" });

const bush = z
  .strictObject({
    name: name.meta({ description: "of its own among joints and links" }),
    label,
    kind: z.literal("bush").meta({
      description: "turns freely, holds its point across its axis and, unless it slides, along it: 3, sliding 2",
    }),
    between,
    at: pointName,
    axis: axisSchema.optional(),
    axis_through: z
      .tuple([pointName, pointName])
      .optional()
      .meta({ description: "two points the axis runs through at design; instead of axis" }),
    slides: z.boolean().default(false).meta({ description: "free along its axis, as one of two bushes of an arm is" }),
  })
  .meta({ description: "bush; its axis is carried by the first of the two bodies" });

const slider = z
  .strictObject({
    name: name.meta({ description: "of its own among joints and links" }),
    label,
    kind: z.literal("slider").meta({ description: "a line of one body keeps passing through a point of another: 2" }),
    line: z
      .strictObject({ on: bodyName, from: pointName, to: pointName })
      .meta({ description: "the line through two points of one body" }),
    through: end.meta({ description: "the point it keeps passing through" }),
  })
  .meta({ description: "slider, such as a strut in its top mount" });

const strut = z.strictObject({ from: end, to: end });

/** A suspension as bodies and joints, as people write it: one wheel, the left one, at ride height, in millimetres. */
export const layoutSheet = z
  .strictObject({
    name: z.string().min(1).max(200).meta({ description: "what people call this layout" }),
    note: z.string().max(2000).optional().meta({ description: "where the figures come from" }),
    bodies: z
      .array(name)
      .min(1)
      .max(12)
      .meta({ description: 'moving bodies; the car body is called "car-body" and is not listed' }),
    points: z
      .array(z.strictObject({ name, at_mm: pointMm }))
      .min(1)
      .max(200)
      .meta({ description: "hard points at ride height; points of equal coordinates are one point" }),
    wheel: z
      .strictObject({ on: name.meta({ description: "the body that carries the wheel" }), ...wheelSchema.shape })
      .meta({ description: "the wheel" }),
    joints: z
      .array(z.discriminatedUnion("kind", [ball, bush, slider]))
      .max(60)
      .default([]),
    links: z
      .array(
        z.strictObject({
          name: name.meta({ description: "of its own among joints and links" }),
          label,
          from: end,
          to: end,
          steered: z.boolean().default(false).meta({ description: "its end on the car body moves with the rack" }),
        }),
      )
      .max(60)
      .default([])
      .meta({ description: "two points of two bodies that keep their distance: holds 1 each" }),
    spring: strut.optional().meta({ description: "its length is the distance of its ends" }),
    damper: strut.optional().meta({ description: "its length is the distance of its ends" }),
  })
  .meta({
    title: "Layout as bodies and joints",
    description:
      "One wheel suspension. Joints and links must hold six times the number of bodies, less one for the travel.",
  });

export type LayoutSheet = z.output<typeof layoutSheet>;

/** The published JSON Schema (draft 2020-12) of a layout; a copy stands in docs/layout.schema.json. */
export function layoutJsonSchema(): Record<string, unknown> {
  return { ...z.toJSONSchema(layoutSheet, { target: "draft-2020-12", io: "input" }) };
}
