import type { AxleName, Joint, JointKind, LayoutName, Origin, TornShare } from "../family.ts";
import { usualRateDeviation } from "../usual-deviation.ts";

/** [x, y, z] in millimetres; x from the axle line forward, y left from the middle of the car, z up from the ground. */
export type TemplatePoint = readonly [x: number, y: number, z: number];

/** A joint of a template with its rates in N/mm for a car of REFERENCE_MASS; they grow with the mass of the car. */
export interface TemplateJoint {
  readonly kind: JointKind;
  readonly radial: number;
  readonly axial?: number;
  readonly axis?: readonly [number, number, number];
  readonly outerDiameter?: number;
  readonly length?: number;
  readonly label?: string;
}

export interface TemplateLink {
  readonly name: string;
  readonly label: string;
  readonly inner: TemplatePoint;
  readonly outer: TemplatePoint;
  readonly innerJoint: TemplateJoint;
  readonly outerJoint: TemplateJoint;
  readonly member: number;
  readonly section: readonly [width: number, height: number];
  readonly steered?: true;
  readonly arm?: string;
  readonly sheet: "lower" | "upper";
}

export type TemplateSeat =
  | { readonly on: "knuckle"; readonly moving: TemplatePoint }
  | { readonly on: "link"; readonly link: string; readonly fraction: number }
  | { readonly on: "arm"; readonly links: readonly [string, string]; readonly moving: TemplatePoint };

/**
 * A typical axle of one layout, invented, in millimetres and degrees, left side, as people write such numbers.
 * scaleAxle fits it to a car.
 */
export interface AxleTemplate {
  readonly axle: AxleName;
  readonly layout: LayoutName;
  readonly wheelbase: number;
  readonly track: number;
  /** Height of the wheel centre. */
  readonly hubHeight: number;
  readonly camber: number;
  readonly toe: number;
  readonly links: readonly TemplateLink[];
  readonly strut?: { readonly top: TemplatePoint; readonly axisPoint: TemplatePoint; readonly topMount: TemplateJoint };
  readonly trailingArm?: {
    readonly bush: TemplatePoint;
    readonly freeAxis: readonly [number, number, number];
    readonly bushJoint: TemplateJoint;
    readonly section: readonly [width: number, height: number];
  };
  readonly spring: {
    readonly body: TemplatePoint;
    readonly seat: TemplateSeat;
    readonly coilDiameter: number;
    readonly wireDiameter: number;
  };
  /** Spring travel per wheel travel at ride height, computed on this template. */
  readonly springRatio: number;
  /** Ride frequency in Hz its spring is chosen for. */
  readonly rideFrequency: number;
  readonly damper: { readonly body: TemplatePoint; readonly seat: TemplateSeat; readonly tubeDiameter: number };
  readonly bar: {
    readonly diameter: number;
    readonly path: readonly TemplatePoint[];
    readonly bodyBush: TemplatePoint;
    readonly linkUpper: TemplatePoint;
    readonly linkLower: TemplatePoint;
  };
  /** Disc diameter as a share of the rim's; the other lengths in mm. */
  readonly brake: {
    readonly discShareOfRim: number;
    readonly thickness: number;
    readonly vented: boolean;
    readonly hatDepth: number;
    readonly piston: number;
    readonly pad: number;
    readonly caliperAt: "front" | "rear";
  };
  /** Left halves from the front centre line round to the rear one. */
  readonly subframeHalves: readonly (readonly (readonly [x: number, y: number])[])[];
  readonly subframeMounts: readonly TemplatePoint[];
  readonly rackTravel?: number;
  readonly bumpStop: number;
  readonly droopStop: number;
}

/** Mass in kg the rates of the templates belong to. */
export const REFERENCE_MASS = 1500;

/** A rubber bush: rates across and along its axis, its axis, outer diameter and length. */
export function bush(
  radial: number,
  axial: number,
  axis: readonly [number, number, number],
  size: readonly [number, number],
  label?: string,
): TemplateJoint {
  return {
    kind: "bush",
    radial,
    axial,
    axis,
    outerDiameter: size[0],
    length: size[1],
    ...(label !== undefined && { label }),
  };
}

export function hydraulicBush(
  radial: number,
  axial: number,
  axis: readonly [number, number, number],
  size: readonly [number, number],
): TemplateJoint {
  return { ...bush(radial, axial, axis, size), kind: "hydraulic-bush" };
}

export function ballJoint(radial: number): TemplateJoint {
  return { kind: "ball-joint", radial };
}

/** What a torn bush still has of its rates at each grade; invented, as no published figure is known. */
const TEMPLATE_TORN_SHARE: NonNullable<Joint["tornShare"]> = {
  1: tornShare(0.7, 0.95),
  2: tornShare(0.4, 0.7),
  3: tornShare(0.15, 0.4),
};

function tornShare(low: number, high: number): TornShare {
  return { low, high, origin: "invented" };
}

const ORIGIN: Origin = "template";

/** A joint of a template in SI, its rates in proportion to the mass of the car, to three digits. */
export function scaleJoint(template: TemplateJoint, massRatio: number): Joint {
  const rate = (perMm: number): number => Number((perMm * massRatio).toPrecision(3)) * 1000;
  const isBush = template.kind === "bush" || template.kind === "hydraulic-bush";
  return {
    kind: template.kind,
    radial: rate(template.radial),
    ...(template.axial !== undefined && { axial: rate(template.axial) }),
    ...(template.axis && { axis: template.axis }),
    rateSdShare: usualRateDeviation[ORIGIN],
    rateOrigin: ORIGIN,
    ...(isBush && { tornShare: TEMPLATE_TORN_SHARE }),
    ...(template.outerDiameter !== undefined && { outerDiameter: template.outerDiameter / 1000 }),
    ...(template.length !== undefined && { length: template.length / 1000 }),
    ...(template.label !== undefined && { label: template.label }),
  };
}
