import type { z } from "zod";
import type { AxleName } from "#vehicle";
import { axleShape } from "./axle-schema.ts";
import { damper, hardPoint, joint, link, spring } from "./joint-schema.ts";

type Triple = readonly [number, number, number];
type JointSheet = z.infer<typeof joint>;

/**
 * What can be understood of an axle sheet, part by part, whatever is wrong with the rest.
 * A part that is absent or not understood is undefined; the schema says what is wrong with it.
 */
export interface LooseAxle {
  readonly name: AxleName;
  readonly layout: z.infer<typeof axleShape.layout> | undefined;
  readonly trackMm: number | undefined;
  readonly wheel: z.infer<typeof axleShape.wheel> | undefined;
  readonly links: readonly LooseLink[];
  /** Whether the key stands there at all, understood or not. */
  readonly hasLinks: boolean;
  readonly hasStrut: boolean;
  readonly hasTrailingArm: boolean;
  readonly strut:
    | { readonly top: Triple | undefined; readonly axisPoint: Triple | undefined; readonly topMount: unknown }
    | undefined;
  readonly trailingArm:
    | {
        readonly bush: Triple | undefined;
        readonly freeAxis: Triple | undefined;
        readonly hasFreeAxis: boolean;
        readonly bushJoint: unknown;
      }
    | undefined;
  readonly spring: LoosePart<z.infer<typeof spring>["seat"]>;
  readonly damper: LoosePart<z.infer<typeof damper>["seat"]>;
  /** Whether an unusual order or motion of its points has been looked at again and is so. */
  readonly pointsConfirmed: boolean;
  readonly raw: Readonly<Record<string, unknown>>;
  /** Keys that stand in the sheet; `raw` has drawn ones beside them where the linkage is one of several bodies. */
  readonly given: Readonly<Record<string, unknown>>;
}

export interface LooseLink {
  readonly name: string | undefined;
  readonly inner: Triple | undefined;
  readonly outer: Triple | undefined;
  readonly steered: boolean;
  readonly arm: string | undefined;
  readonly raw: Readonly<Record<string, unknown>>;
}

export interface LoosePart<Seat> {
  readonly body: Triple | undefined;
  readonly seat: Seat | undefined;
  readonly raw: Readonly<Record<string, unknown>>;
}

/** The object itself, or an empty one where something else stands. */
export function asObject(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Record<string, unknown>) : {};
}

/** What a schema makes of a part, or undefined where it does not accept it. */
export function understood<T>(schema: z.ZodType<T>, value: unknown): T | undefined {
  if (value === undefined) return undefined;
  const parsed = schema.safeParse(value);
  return parsed.success ? parsed.data : undefined;
}

/** [x, y, z] in mm of a hard point in either form. */
export function placeOf(value: unknown): Triple | undefined {
  const point = understood(hardPoint, value);
  return point === undefined || Array.isArray(point) ? point : point.at_mm;
}

export function jointOf(value: unknown): JointSheet | undefined {
  return understood(joint, value);
}

export function looseAxle(name: AxleName, sheet: unknown, given: unknown = sheet): LooseAxle {
  const raw = asObject(sheet);
  const links: unknown[] = Array.isArray(raw.links) ? raw.links : [];
  const strut = asObject(raw.strut);
  const arm = asObject(raw.trailing_arm);
  return {
    name,
    raw,
    given: asObject(given),
    layout: understood(axleShape.layout, raw.layout),
    trackMm: understood(axleShape.track_mm, raw.track_mm),
    wheel: understood(axleShape.wheel, raw.wheel),
    hasLinks: Array.isArray(raw.links),
    hasStrut: raw.strut !== undefined,
    hasTrailingArm: raw.trailing_arm !== undefined,
    links: links.map(looseLink),
    strut:
      raw.strut === undefined
        ? undefined
        : { top: placeOf(strut.top_mm), axisPoint: placeOf(strut.axis_point_mm), topMount: strut.top_mount },
    trailingArm:
      raw.trailing_arm === undefined
        ? undefined
        : {
            bush: placeOf(arm.bush_mm),
            freeAxis: understood(axleShape.trailing_arm.unwrap().shape.free_axis.unwrap(), arm.free_axis),
            hasFreeAxis: arm.free_axis !== undefined,
            bushJoint: arm.bush_joint,
          },
    pointsConfirmed: raw.points_confirmed === true,
    spring: loosePart(raw.spring, spring.shape.seat),
    damper: loosePart(raw.damper, damper.shape.seat),
  };
}

function looseLink(sheet: unknown): LooseLink {
  const raw = asObject(sheet);
  return {
    raw,
    name: understood(link.shape.name, raw.name),
    inner: placeOf(raw.inner_mm),
    outer: placeOf(raw.outer_mm),
    steered: raw.steered === true,
    arm: typeof raw.arm === "string" ? raw.arm : undefined,
  };
}

function loosePart<Seat>(sheet: unknown, seat: z.ZodType<Seat>): LoosePart<Seat> {
  const raw = asObject(sheet);
  return { raw, body: placeOf(raw.body_mm), seat: understood(seat, raw.seat) };
}
