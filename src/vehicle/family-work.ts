import type { Metres, NewtonMetres, Radians, Share } from "#quantity";
import type { AxleName } from "./corners.ts";

/** Whose figure it is; a page never shows a limit without this. */
export type Owner = "maker" | "law" | "workshop" | "practice" | "memory";

/** What can be read at a place, with the unit it is stored in (SI inside, unit in the key of a file). */
export type QuantityName =
  | "play"
  | "lost-travel"
  | "crack-depth"
  | "sleeve-offset"
  | "thickness"
  | "thickness-variation"
  | "run-out"
  | "pad-thickness"
  | "tread"
  | "pressure"
  | "ride-height"
  | "camber"
  | "toe"
  | "caster"
  | "boiling-point"
  | "slide-force"
  | "drag-torque"
  | "leak-grade"
  | "rebounds"
  | "gap"
  | "free-height";

/** In which state of load a reading is taken, and a limit was set. */
export type LoadState = "standing" | "hanging" | "supported" | "bench" | "driving";

/** A limit for one quantity at one kind of place. At least one of lower and upper; SI. */
export interface Limit {
  /** A position without its corner ("lower-arm/ball-joint"), or a kind of position ("disc"); `axle` null = both. */
  readonly place: string;
  readonly axle: AxleName | null;
  readonly quantity: QuantityName;
  readonly lower: number | null;
  readonly upper: number | null;
  /** The state of load it was set for; a reading in another is never held against it. null: any. */
  readonly loadState: LoadState | null;
  readonly owner: Owner;
  readonly source: string;
  /** Grade of a reading beyond it; practice and memory can raise to plan (2) at most. */
  readonly grade: 1 | 2 | 3 | 4;
}

/** One stage of tightening: a torque, or an angle on top of the stage before. */
export type TighteningStage = { readonly torque: NewtonMetres } | { readonly angle: Radians };

export type FastenerPolicy = "always-new" | "if-seized" | "reuse";

/** A fastener that an operation loosens. Stages absent: not on file, and paper says so. */
export interface FastenerUse {
  readonly item: string;
  readonly label: string;
  readonly count: number;
  readonly policy: FastenerPolicy;
  readonly locker: "none" | "pre-applied" | "tube";
  readonly grease: boolean;
  readonly stages: readonly TighteningStage[] | null;
  readonly owner: Owner;
  readonly source: string;
  /** Final torque only with the wheel at ride height. */
  readonly atRideHeight: boolean;
}

/** How far one doing of a piece of work reaches: it is charged once per corner, per axle or per car and visit. */
export type WorkScope = "corner" | "axle" | "car";

/** A piece of work that several operations share and that is charged once a visit for its scope. */
export interface Access {
  readonly id: string;
  readonly label: string;
  readonly hours: number;
  readonly scope: WorkScope;
}

export interface Operation {
  readonly id: string;
  readonly label: string;
  /** Own hours, shared access not counted. */
  readonly hours: number;
  readonly scope: WorkScope;
  /** Where in the order of a job it stands: taking apart and pressing before brakes, brakes before alignment. */
  readonly phase: "chassis" | "brakes" | "alignment" | "electrics";
  /** Access pieces it needs, charged once a visit for their scope. */
  readonly access: readonly string[];
  readonly fasteners: readonly FastenerUse[];
  /** What must be held so that nothing hangs on a hose, wire or joint. */
  readonly support: string;
  /** Numbers of the caution table that this step must show. */
  readonly cautions: readonly number[];
  /** What was loosened, for the list of what must be re-taught or re-aimed. */
  readonly loosens: readonly ("front-toe" | "rear-toe" | "sensor-link" | "height" | "subframe" | "rack" | "wheel")[];
  readonly needsAlignment: boolean;
  readonly source: string;
}

/** What cures findings at a place: operations and parts; the owner agrees to the whole of it. */
export interface RemedyTemplate {
  readonly id: string;
  readonly label: string;
  readonly axle: AxleName | null;
  /** Positions without corner that it cures. */
  readonly cures: readonly string[];
  readonly operations: readonly string[];
  readonly parts: readonly { readonly part: string; readonly count: number }[];
  /** Done on both sides of the axle, always. */
  readonly pair: boolean;
}

export interface StockPart {
  readonly id: string;
  readonly label: string;
  /** In cents of the workshop's currency, without tax; null = not on file. */
  readonly priceCents: number | null;
  readonly kind: "part" | "set" | "hardware" | "consumable";
  /** Contents of a set. */
  readonly contents: readonly { readonly part: string; readonly count: number }[];
}

/** A weak point of a family. */
export interface KnownFault {
  readonly id: string;
  /** Position without its side: "front/lower-arm/rear-bush". */
  readonly position: string;
  readonly scope: string;
  readonly sign: string;
  readonly face: "front" | "rear" | "inner" | "outer" | "lower" | "upper";
  readonly howToSee: string;
  readonly told: "seen-here" | "told" | "bulletin";
  readonly confirmed: number;
  readonly denied: number;
  /** Factor on the prior of this cause for cars in scope. */
  readonly priorFactor: number;
}

/** Target of alignment at ride height; SI. */
export interface AlignmentTarget {
  readonly axle: AxleName;
  readonly camber: readonly [low: Radians, high: Radians] | null;
  readonly toe: readonly [low: Radians, high: Radians] | null;
  readonly caster: readonly [low: Radians, high: Radians] | null;
  /** Hub centre to arch, metres: the height the angles belong to. */
  readonly hubToArch: Metres | null;
  /** How far a height may be from it, up or down. null: not on file, then heights are not held against it. */
  readonly heightTolerance: Metres | null;
  /** How far left and right may differ; null: not on file. */
  readonly heightApart: Metres | null;
  readonly camberApart: Radians | null;
  readonly casterApart: Radians | null;
  /** How far the axle may point to one side; null: not on file. */
  readonly thrust: Radians | null;
  readonly owner: Owner;
  readonly source: string;
}

/** What a family's file knows about work; every list may be empty, and paper then says "not on file". */
export interface FamilyWork {
  /** "family": from the family's own sheet; "usual": start values for a layout, invented, until a sheet replaces them. */
  readonly origin: "family" | "usual";
  readonly limits: readonly Limit[];
  readonly access: readonly Access[];
  readonly operations: readonly Operation[];
  readonly remedies: readonly RemedyTemplate[];
  readonly parts: readonly StockPart[];
  readonly knownFaults: readonly KnownFault[];
  readonly alignment: readonly AlignmentTarget[];
}

/** Settings of a workshop. */
export interface ShopRates {
  readonly workshop: string;
  readonly currency: string;
  readonly labourCentsPerHour: number;
  readonly taxShare: Share;
  /** Fixed cost of one more visit (write-up, wash, courtesy), cents. */
  readonly visitCents: number;
}
