import type {
  DirectionIn,
  Kilograms,
  Metres,
  NewtonSecondsPerMetre,
  NewtonsPerMetre,
  PointIn,
  Radians,
  Share,
} from "#quantity";
import type { AssumedFigure } from "./assumed.ts";
import type { BodyLayout } from "./body-layout.ts";
import type { AxleName } from "./corners.ts";
import type { FamilyWork } from "./family-work.ts";
import type { PointCorrelation } from "./point-correlation.ts";

export type { AxleName, Corner, Side } from "./corners.ts";

/** How well a geometry is known (docs/method/rungs.md). */
export type Rung = "layout" | "scaled" | "measured" | "matched";
/** The silhouettes a person can choose from; each is a linkage of its own. */
export type LayoutName = "five-link" | "double-wishbone" | "strut" | "trailing-arm";
/** The linkage of an axle: one of those, or one that its sheet gives as bodies and joints. */
export type AxleLayout = LayoutName | "bodies";

/** Where a coordinate or a rate comes from; decides its default standard deviation and what a page says of it. */
export type Origin =
  | "template"
  | "invented"
  | "drawing"
  | "level-plane"
  | "tape"
  | "bench"
  | "maker"
  | "practice"
  | "guess";

/** A hard point of the left side (the right is its mirror image), with its standard deviation along x, y and z. */
export interface HardPoint {
  readonly at: PointIn<"vehicle">;
  readonly sd: readonly [x: Metres, y: Metres, z: Metres];
  readonly origin: Origin;
}

export type JointKind = "bush" | "hydraulic-bush" | "ball-joint" | "rigid";
/** Grades of a finding, worst last; the words on screen stand in gradeWords. */
export type Grade = 0 | 1 | 2 | 3 | 4;

/** What share of its sound rate a torn bush still has, as a range: it is never known as one number. */
export interface TornShare {
  readonly low: Share;
  readonly high: Share;
  readonly origin: Origin;
}

/** The fluid in a hydraulic bush, referred to its movement across the axis (docs/method/rubber.md). */
export interface FluidFill {
  /** Rate with which the chambers push the fluid. */
  readonly volume: NewtonsPerMetre;
  readonly inertia: Kilograms;
  readonly damping: NewtonSecondsPerMetre;
  /** Of the rubber: tangent of its own loss angle. */
  readonly lossFactor: number;
  /** Relative standard deviation of each of the four, and where they come from. */
  readonly sdShare: Share;
  readonly origin: Origin;
}

/** One end of a link or one mount: what sits there and how stiff it is. */
export interface Joint {
  readonly kind: JointKind;
  /** N/m across the axis (a ball joint: in every direction); absent = rigid. */
  readonly radial?: NewtonsPerMetre;
  /** N/m along the axis; together with axis. */
  readonly axial?: NewtonsPerMetre;
  readonly axis?: DirectionIn<"vehicle">;
  /** Rate across the axis through the voids, and how those are turned about it (clocking.ts); radial then holds across both. */
  readonly voided?: { readonly rate: NewtonsPerMetre; readonly clocking: Radians };
  /** N m per radian against tilting the axis and against turning about it. */
  readonly conical?: number;
  readonly torsional?: number;
  /** Shore A; says nothing about the rates given, only what a harder one makes of them. Absent: not on file. */
  readonly hardness?: number;
  /** Relative standard deviation of all its rates. */
  readonly rateSdShare: Share;
  readonly rateOrigin: Origin;
  /** By grade 1 to 3; grade 4 is a separated joint and is not computed. */
  readonly tornShare?: Readonly<Partial<Record<1 | 2 | 3, TornShare>>>;
  /** Only of a hydraulic bush with a rate; absent: not on file. */
  readonly fluid?: FluidFill;
  /** Outer diameter and length, for the drawing. */
  readonly outerDiameter?: Metres;
  readonly length?: Metres;
  /** How this joint is called where the plain words for its kind are not enough ("front bush"). */
  readonly label?: string;
}

/** A link from the body (inner) to the knuckle (outer). Names are lower-case words joined by hyphens. */
export interface Link {
  readonly name: string;
  /** As the trade says it, sentence case: "Lower rear link". */
  readonly label: string;
  readonly inner: HardPoint;
  readonly outer: HardPoint;
  readonly steered: boolean;
  readonly innerJoint: Joint;
  readonly outerJoint: Joint;
  /** Rate of the bare member along its length; absent = rigid. */
  readonly memberRate?: NewtonsPerMetre;
  /** Width as seen from below and height, for the drawing. */
  readonly section: { readonly width: Metres; readonly height: Metres };
  /** Links that are one rigid arm share an arm name ("lower-arm"); their outer points coincide. */
  readonly arm?: string;
  /** On which of the two corner sheets it is drawn. */
  readonly sheet: "lower" | "upper";
  /** Of an axle with bodies: what its ends are on, the car body by its own word. */
  readonly between?: readonly [inner: string, outer: string];
}

export interface Strut {
  /** Fixed in the body. */
  readonly top: HardPoint;
  /** Fixed in the knuckle; the line through both keeps passing through the top. */
  readonly axisPoint: HardPoint;
  readonly topMount: Joint;
}

export interface TrailingArm {
  readonly bush: HardPoint;
  /** Absent: the bush holds the arm in all three directions. */
  readonly freeAxis?: DirectionIn<"vehicle">;
  readonly bushJoint: Joint;
  readonly section: { readonly width: Metres; readonly height: Metres };
}

/** Where the moving end of a spring or damper sits. */
export type Seat =
  | { readonly on: "knuckle"; readonly moving: HardPoint }
  | { readonly on: "link"; readonly link: string; readonly fraction: Share }
  | { readonly on: "arm"; readonly links: readonly [string, string]; readonly moving: HardPoint }
  /** Of an axle with bodies: on this one of them. */
  | { readonly on: "body"; readonly body: string; readonly moving: HardPoint };

export interface Spring {
  readonly body: HardPoint;
  readonly seat: Seat;
  readonly rate: NewtonsPerMetre;
  readonly coilDiameter: Metres;
  readonly wireDiameter: Metres;
}

export interface Damper {
  readonly body: HardPoint;
  readonly seat: Seat;
  readonly tubeDiameter: Metres;
  readonly kind: "passive" | "adaptive";
}

export interface AntiRollBar {
  readonly diameter: Metres;
  /** From the middle of the car to the left end, at ride height. */
  readonly path: readonly PointIn<"vehicle">[];
  readonly bodyBush: PointIn<"vehicle">;
  /** Drop link from the end of the bar to the moving part. */
  readonly linkUpper: PointIn<"vehicle">;
  readonly linkLower: PointIn<"vehicle">;
}

export interface Brake {
  readonly discDiameter: Metres;
  readonly discThickness: Metres;
  readonly vented: boolean;
  /** From the mounting face inward to the middle of the disc. */
  readonly hatDepth: Metres;
  readonly pistonDiameter: Metres;
  readonly padThickness: Metres;
  /** Caliper ahead of or behind the wheel centre. */
  readonly caliperAt: "front" | "rear";
  readonly parking: boolean;
}

export interface Wheel {
  readonly centre: PointIn<"vehicle">;
  readonly camber: Radians;
  readonly toe: Radians;
  readonly loadedRadius: Metres;
  /** As on the sidewall: "225/50 R17". */
  readonly tyreSize: string;
  readonly tyreWidth: Metres;
  readonly freeRadius: Metres;
  readonly rimDiameter: Metres;
  readonly rimWidth: Metres;
  readonly rimOffset: Metres;
}

/** Closed outline as seen from below, in the ground plane: [x, y]; whole, the left half first. */
export type Outline = readonly (readonly [x: Metres, y: Metres])[];

/** A place of a layout of several bodies that can be worn: an end of a link, or (end null) a joint. */
export interface AxleBodyPlace {
  readonly part: string;
  readonly end: "from" | "to" | null;
  /** What sits there; one that no rubber is given for is a ball joint or a rigid pivot. */
  readonly joint: Joint;
}

/** The linkage of an axle as several bodies and joints, left side, and how well its points and rubber are known. */
export interface AxleBodies {
  readonly layout: BodyLayout;
  /** By name, every point of the layout. */
  readonly points: Readonly<Record<string, HardPoint>>;
  /** Every end of every link, and every joint. */
  readonly places: readonly AxleBodyPlace[];
  /** Rates of bare members along their length. */
  readonly members: readonly { readonly link: string; readonly rate: NewtonsPerMetre }[];
  /** The keys of the sheet it was read from, as JSON, so that they can be written again to the letter. */
  readonly file: string;
}

export interface Axle {
  readonly name: AxleName;
  readonly layout: AxleLayout;
  readonly rung: Rung;
  readonly track: Metres;
  readonly wheel: Wheel;
  /** The linkage where the layout is "bodies", and only there: then `links` are its members as they are drawn and renewed. */
  readonly bodies?: AxleBodies;
  readonly links: readonly Link[];
  readonly strut?: Strut;
  readonly trailingArm?: TrailingArm;
  readonly spring: Spring;
  readonly damper: Damper;
  readonly bar?: AntiRollBar;
  readonly brake: Brake;
  /** Whole outline(s), both sides; the first is the outer one, the others are openings. */
  readonly subframe: readonly Outline[];
  /** Arms of the knuckle from the hub to the outer joints are drawn by themselves; this is extra metal of the left one. */
  readonly knuckle: readonly Outline[];
  /** Where it is bolted to the body, both sides as they are. */
  readonly subframeMounts: readonly PointIn<"vehicle">[];
  /** How the errors of its hard points hang together; absent: each has an error of its own. */
  readonly correlation?: PointCorrelation;
  /** Somebody has looked again at hard points of an unusual order or motion, and they are so. */
  readonly pointsConfirmed?: boolean;
  /** Steered axle: rack housing from boot to boot, half length, at the inner tie-rod joints. */
  readonly rackTravel?: Metres;
  readonly driven: boolean;
  readonly levelSensor: boolean;
  /** Mass that moves with one wheel. */
  readonly unsprungMass: Kilograms;
  /** Share of the total brake force and of the drive torque taken by this axle. */
  readonly brakeShare: Share;
  readonly driveShare: Share;
  /** Wheel-centre travel from ride height to the stops, both positive. */
  readonly bumpStop: Metres;
  readonly droopStop: Metres;
}

/** A difference inside a family and the key that tells which one stands there. */
export interface Variant {
  readonly label: string;
  /** What tells it: code, or what eye and calliper show. */
  readonly key: string;
  readonly choices: readonly { readonly label: string; readonly code: string }[];
}

/** How long a position lasts, from practice only until a tally exists. */
export interface PracticeLife {
  /** Position without its corner: "front/lower-arm/rear-bush" means both sides. */
  readonly position: string;
  readonly lowKm: number;
  readonly middleKm: number;
  readonly highKm: number;
  readonly source: string;
}

export interface Family {
  readonly id: string;
  readonly name: string;
  readonly fromYear?: number;
  readonly toYear?: number;
  /** True for demo data: pages and paper say so. */
  readonly invented: boolean;
  readonly note?: string;
  /** Figures that nobody has entered: pages and paper call them assumed. Absent: none. */
  readonly assumed?: readonly AssumedFigure[];
  readonly wheelbase: Metres;
  readonly kerbMass: Kilograms;
  readonly frontWeightShare: Share;
  readonly cgHeight: Metres;
  readonly front: Axle;
  readonly rear: Axle;
  readonly variants: readonly Variant[];
  readonly life: readonly PracticeLife[];
  /** What its sheet says about work; null: nothing on file, and workOf gives the usual start values. */
  readonly work: FamilyWork | null;
}
