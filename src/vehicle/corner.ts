import type { DirectionIn, Metres, Newtons, NewtonsPerMetre, PointIn, Radians, Share } from "#quantity";
import type { AssumedFigure } from "./assumed.ts";
import type { BodyLayout } from "./body-layout.ts";
import type { AxleLayout, AxleName, Corner, FluidFill, JointKind, Origin, Rung, Side, TornShare } from "./family.ts";
import type { CorrelationMatrix } from "./point-correlation.ts";

/**
 * One corner of a family as the linkage needs it: SI, vehicle frame, the left side as entered, the right side mirrored
 * (y changes sign in points and in bush axes). Frozen; made by assembleCorner.
 */
export interface CornerAssembly {
  readonly corner: Corner;
  readonly axle: AxleName;
  readonly side: Side;
  readonly layout: AxleLayout;
  readonly rung: Rung;
  /** Figures of its car line that nobody has entered. */
  readonly assumed: readonly AssumedFigure[];
  readonly wheel: CornerWheel;
  readonly links: readonly CornerLink[];
  readonly strut: CornerStrut | null;
  readonly trailingArm: CornerTrailingArm | null;
  /** A linkage of several bodies, left side whichever corner this is; null: one knuckle on the parts above. */
  readonly bodies: CornerBodies | null;
  readonly spring: CornerSpring;
  readonly damper: CornerDamper;
  /**
   * Every distinct hard point of the linkage once: links (inner, outer) in their order, strut top, strut axis point,
   * trailing-arm bush; of several bodies those of their layout by its names. Points with equal coordinates are one point
   * and move together.
   */
  readonly points: readonly CornerPoint[];
  /** Correlations of the errors of these points, three rows each; null: every coordinate has an error of its own. */
  readonly correlation: CorrelationMatrix | null;
  /** Load at the contact patch of the standing car at kerb mass: kerb mass x axle share x g / 2, unsprung mass included. */
  readonly wheelLoad: Newtons;
  /** Mass that moves with this wheel, contained in wheelLoad. */
  readonly unsprungMass: number;
  /** Wheel-centre travel from ride height to the stops, both positive. */
  readonly bumpStop: Metres;
  readonly droopStop: Metres;
  /** Rack travel to each side; null where nothing is steered. */
  readonly rackTravel: Metres | null;
  readonly car: {
    readonly wheelbase: Metres;
    readonly cgHeight: Metres;
    /** Shares of this axle. */
    readonly brakeShare: Share;
    readonly driveShare: Share;
  };
}

/** A hard point with its standard deviation along x, y and z. */
export interface CornerPoint {
  /** After the first end that uses it: "lower-arm-front.outer", "strut.top", "strut.axis-point", "trailing-arm.bush". */
  readonly name: string;
  readonly at: PointIn<"vehicle">;
  readonly sd: readonly [x: Metres, y: Metres, z: Metres];
  /** Of the entry that is known worse, where several share the place. */
  readonly origin: Origin;
}

/** One end: where it is, and which of the assembly's points that is. */
export interface CornerEnd {
  readonly at: PointIn<"vehicle">;
  /** Index into CornerAssembly.points. */
  readonly point: number;
}

export interface CornerWheel {
  readonly centre: PointIn<"vehicle">;
  /** Positive top outward, on either side. */
  readonly camber: Radians;
  /** Positive in, on either side. */
  readonly toe: Radians;
  /** Unit vector along the spin axis, outboard. */
  readonly spinAxis: DirectionIn<"vehicle">;
  readonly loadedRadius: Metres;
}

/** What sits at one end, in numbers. */
export interface CornerJoint {
  readonly kind: JointKind;
  /** N/m across the axis, or in every direction where there is no axis; null = rigid. */
  readonly radial: NewtonsPerMetre | null;
  /** N/m along the axis; null exactly where axis is null. */
  readonly axial: NewtonsPerMetre | null;
  /** Unit vector fixed in the body, or null (ball joint). */
  readonly axis: DirectionIn<"vehicle"> | null;
  /** Rate through the voids and their direction, a unit vector across the axis; null where there are none. */
  readonly voided: { readonly rate: NewtonsPerMetre; readonly through: DirectionIn<"vehicle"> } | null;
  /** N m per radian against tilting the axis and against turning about it; null: nothing resists. */
  readonly conical: number | null;
  readonly torsional: number | null;
  /** Shore A; null: not on file. */
  readonly hardness: number | null;
  /** Relative standard deviation of all rates together. */
  readonly rateSdShare: Share;
  readonly rateOrigin: Origin;
  readonly tornShare: Readonly<Partial<Record<1 | 2 | 3, TornShare>>>;
  /** The fluid of a hydraulic bush; null where none is on file. */
  readonly fluid: FluidFill | null;
}

export interface CornerLink {
  readonly name: string;
  readonly label: string;
  readonly inner: CornerEnd;
  readonly outer: CornerEnd;
  readonly steered: boolean;
  readonly innerJoint: CornerJoint;
  readonly outerJoint: CornerJoint;
  /** Rate of the bare member along its length; null = rigid. */
  readonly memberRate: NewtonsPerMetre | null;
  /** Name of the rigid arm it is part of, or null. */
  readonly arm: string | null;
}

export interface CornerStrut {
  readonly top: CornerEnd;
  readonly axisPoint: CornerEnd;
  readonly topMount: CornerJoint;
}

export interface CornerTrailingArm {
  readonly bush: CornerEnd;
  /** Unit vector along which the bush lets the arm slide; null: it holds in all three directions. */
  readonly freeAxis: DirectionIn<"vehicle"> | null;
  readonly bushJoint: CornerJoint;
}

/** A linkage of several bodies and joints, left side. */
export interface CornerBodies {
  readonly layout: BodyLayout;
  /** Every end of every link, and every joint. */
  readonly places: readonly CornerBodyPlace[];
  readonly members: readonly { readonly link: string; readonly rate: NewtonsPerMetre }[];
}

/** An end of a link, or (end null) a joint. */
export interface CornerBodyPlace {
  readonly part: string;
  readonly end: "from" | "to" | null;
  readonly joint: CornerJoint;
}

/** Where the moving end sits; links are indices into CornerAssembly.links. */
export type CornerSeat =
  | { readonly on: "knuckle"; readonly moving: PointIn<"vehicle"> }
  | { readonly on: "link"; readonly link: number; readonly fraction: Share }
  | { readonly on: "arm"; readonly links: readonly [number, number]; readonly moving: PointIn<"vehicle"> };

export interface CornerSpring {
  readonly body: PointIn<"vehicle">;
  readonly seat: CornerSeat;
  /** Moving end at ride height. */
  readonly seatAt: PointIn<"vehicle">;
  readonly rate: NewtonsPerMetre;
}

export interface CornerDamper {
  readonly body: PointIn<"vehicle">;
  readonly seat: CornerSeat;
  readonly seatAt: PointIn<"vehicle">;
}
