import {
  type Metres,
  metresFromMm,
  mmFromMetres,
  newtonsPerMetreFromPerMm,
  type PointIn,
  radiansFromDegrees,
} from "#quantity";
import type { Axle, HardPoint, Link, Outline, Rung, Seat, Wheel } from "../family.ts";
import type { TyreSize } from "../tyre-size.ts";
import { usualPointDeviation } from "../usual-deviation.ts";
import { usualRimOffset, usualRimWidth } from "../usual-wheel.ts";
import {
  type AxleTemplate,
  REFERENCE_MASS,
  scaleJoint,
  type TemplatePoint,
  type TemplateSeat,
} from "./axle-template.ts";

/** What a template is fitted to. */
export interface AxleMeasures {
  readonly rung: Rung & ("layout" | "scaled");
  readonly wheelbase: Metres;
  readonly track: Metres;
  readonly tyre: TyreSize;
  readonly tyreSize: string;
  /** How much higher (negative: lower) the body stands over the wheel centre than it was built. */
  readonly bodyRise: Metres;
  readonly kerbMass: number;
  /** Share of the kerb mass on this axle. */
  readonly weightShare: number;
  readonly brakeShare: number;
  readonly driveShare: number;
}

/** Loaded over free radius of a standing tyre: common practice, no source. */
const LOADED_SHARE_OF_FREE_RADIUS = 0.965;
/**
 * Wheelbases the templates are stretched to, mm (invented). A van longer than that has a longer floor between axles that
 * are no longer, and a shorter car is short between them.
 */
const STRETCHED_WHEELBASE: readonly [shortest: number, longest: number] = [2200, 3400];
/** Mass that moves with one wheel as a share of the kerb mass: common practice, no source. */
const UNSPRUNG_SHARE = 0.027;

/**
 * A template fitted to a car: x stretched with the wheelbase (2200 to 3400 mm of it) about the axle line, y with the track, z with the height of
 * the wheel centre; everything held in the body then raised by bodyRise. Lengths are rounded to 0.1 mm.
 */
export function scaleAxle(template: AxleTemplate, measures: AxleMeasures): Axle {
  const frame = new ScaledFrame(template, measures);
  const massRatio = measures.kerbMass / REFERENCE_MASS;
  const { strut, trailingArm, bar } = template;
  const unsprungMass = round(UNSPRUNG_SHARE * measures.kerbMass, 1);
  return {
    name: template.axle,
    layout: template.layout,
    rung: measures.rung,
    track: measures.track,
    wheel: scaledWheel(template, measures, frame),
    links: template.links.map(
      (link): Link => ({
        name: link.name,
        label: link.label,
        inner: frame.bodyPoint(link.inner),
        outer: frame.wheelPoint(link.outer),
        steered: link.steered ?? false,
        innerJoint: scaleJoint(link.innerJoint, massRatio),
        outerJoint: scaleJoint(link.outerJoint, massRatio),
        memberRate: newtonsPerMetreFromPerMm(Number((link.member * massRatio).toPrecision(3))),
        section: { width: metresFromMm(link.section[0]), height: metresFromMm(link.section[1]) },
        ...(link.arm !== undefined && { arm: link.arm }),
        sheet: link.sheet,
      }),
    ),
    ...(strut && {
      strut: {
        top: frame.bodyPoint(strut.top),
        axisPoint: frame.wheelPoint(strut.axisPoint),
        topMount: scaleJoint(strut.topMount, massRatio),
      },
    }),
    ...(trailingArm && {
      trailingArm: {
        bush: frame.bodyPoint(trailingArm.bush),
        freeAxis: trailingArm.freeAxis,
        bushJoint: scaleJoint(trailingArm.bushJoint, massRatio),
        section: { width: metresFromMm(trailingArm.section[0]), height: metresFromMm(trailingArm.section[1]) },
      },
    }),
    spring: {
      body: frame.bodyPoint(template.spring.body),
      seat: frame.seat(template.spring.seat),
      rate: newtonsPerMetreFromPerMm(springRate(template, measures, unsprungMass)),
      coilDiameter: metresFromMm(template.spring.coilDiameter),
      wireDiameter: metresFromMm(template.spring.wireDiameter),
    },
    damper: {
      body: frame.bodyPoint(template.damper.body),
      seat: frame.seat(template.damper.seat),
      tubeDiameter: metresFromMm(template.damper.tubeDiameter),
      kind: "passive",
    },
    bar: {
      diameter: metresFromMm(bar.diameter),
      path: bar.path.map((point) => frame.place(point, true)),
      bodyBush: frame.place(bar.bodyBush, true),
      linkUpper: frame.place(bar.linkUpper, !strut),
      linkLower: frame.place(bar.linkLower, strut !== undefined),
    },
    brake: {
      discDiameter: metresFromMm(Math.round(template.brake.discShareOfRim * mmFromMetres(measures.tyre.rimDiameter))),
      discThickness: metresFromMm(template.brake.thickness),
      vented: template.brake.vented,
      hatDepth: metresFromMm(template.brake.hatDepth),
      pistonDiameter: metresFromMm(template.brake.piston),
      padThickness: metresFromMm(template.brake.pad),
      caliperAt: template.brake.caliperAt,
      parking: template.axle === "rear",
    },
    subframe: template.subframeHalves.map((half) => frame.wholeOutline(half)),
    knuckle: [],
    subframeMounts: template.subframeMounts.flatMap((mount) => {
      const [x, y, z] = frame.place(mount, true);
      return [[x, y, z] as const, [x, -y, z] as const];
    }),
    ...(template.rackTravel !== undefined && { rackTravel: metresFromMm(template.rackTravel) }),
    driven: measures.driveShare > 0,
    levelSensor: false,
    unsprungMass,
    brakeShare: measures.brakeShare,
    driveShare: measures.driveShare,
    bumpStop: metresFromMm(template.bumpStop),
    droopStop: metresFromMm(template.droopStop),
  };
}

/** Height of the wheel centre over the ground in mm, to 0.1 mm. */
function hubHeight(measures: AxleMeasures): number {
  return round(LOADED_SHARE_OF_FREE_RADIUS * mmFromMetres(measures.tyre.freeRadius), 1);
}

class ScaledFrame {
  readonly #axleX: number;
  readonly #stretch: TemplatePoint;
  readonly #rise: number;

  constructor(template: AxleTemplate, measures: AxleMeasures) {
    const wheelbase = mmFromMetres(measures.wheelbase);
    this.#axleX = template.axle === "front" ? 0 : -wheelbase;
    const [shortest, longest] = STRETCHED_WHEELBASE;
    this.#stretch = [
      Math.min(longest, Math.max(shortest, wheelbase)) / template.wheelbase,
      mmFromMetres(measures.track) / template.track,
      hubHeight(measures) / template.hubHeight,
    ];
    this.#rise = mmFromMetres(measures.bodyRise);
  }

  place(point: TemplatePoint, inBody: boolean): PointIn<"vehicle"> {
    const [x, y, z] = point;
    const [sx, sy, sz] = this.#stretch;
    return [
      metresFromMm(round(this.#axleX + x * sx, 1)),
      metresFromMm(round(y * sy, 1)),
      metresFromMm(round(z * sz + (inBody ? this.#rise : 0), 1)),
    ];
  }

  bodyPoint(point: TemplatePoint): HardPoint {
    return { at: this.place(point, true), sd: usualPointDeviation.template, origin: "template" };
  }

  wheelPoint(point: TemplatePoint): HardPoint {
    return { at: this.place(point, false), sd: usualPointDeviation.template, origin: "template" };
  }

  seat(seat: TemplateSeat): Seat {
    return seat.on === "link" ? seat : { ...seat, moving: this.wheelPoint(seat.moving) };
  }

  wholeOutline(half: readonly (readonly [number, number])[]): Outline {
    const left = half.map(([x, y]) => {
      const [placedX, placedY] = this.place([x, y, 0], false);
      return [placedX, placedY] as const;
    });
    const right = left
      .toReversed()
      .filter(([, y]) => y !== 0)
      .map(([x, y]) => [x, -y] as const);
    return [...left, ...right];
  }
}

function scaledWheel(template: AxleTemplate, measures: AxleMeasures, frame: ScaledFrame): Wheel {
  const camber = radiansFromDegrees(template.camber);
  const height = hubHeight(measures);
  const [x] = frame.place([0, 0, 0], false);
  return {
    centre: [x, metresFromMm(mmFromMetres(measures.track) / 2), metresFromMm(height)],
    camber,
    toe: radiansFromDegrees(template.toe),
    loadedRadius: metresFromMm(height / Math.cos(camber)),
    tyreSize: measures.tyreSize,
    tyreWidth: measures.tyre.width,
    freeRadius: measures.tyre.freeRadius,
    rimDiameter: measures.tyre.rimDiameter,
    rimWidth: usualRimWidth(measures.tyre.width),
    rimOffset: usualRimOffset,
  };
}

/** N/mm that gives the ride frequency of the template: (2 pi f)^2 m / ratio^2, to 0.1 N/mm. */
function springRate(template: AxleTemplate, measures: AxleMeasures, unsprungMass: number): number {
  const sprung = (measures.kerbMass * measures.weightShare) / 2 - unsprungMass;
  const wheelRate = (2 * Math.PI * template.rideFrequency) ** 2 * sprung;
  return round(wheelRate / template.springRatio ** 2 / 1000, 1);
}

function round(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}
