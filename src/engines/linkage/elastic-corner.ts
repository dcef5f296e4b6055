import type { DirectionIn, Metres, Newtons, NewtonsPerMetre } from "#quantity";
import type { CornerGeometry } from "./geometry.ts";

/** A bush with voids: softer (or firmer) across its axis in one direction. */
export interface VoidedRate {
  /** Through the voids; `radial` then holds across both them and the axis. */
  readonly rate: NewtonsPerMetre;
  /** Direction of the voids, fixed in the body; only its part across the axis counts. */
  readonly through: DirectionIn<"vehicle">;
}

/** Rates of one rubber (or joint) end; with an axis: radial across it and axial along it, else radial in every direction. */
export interface EndRate {
  readonly radial: NewtonsPerMetre;
  readonly axial?: NewtonsPerMetre;
  /** Fixed in the body, any length. */
  readonly axis?: DirectionIn<"vehicle">;
  readonly voided?: VoidedRate;
  /** N m per radian against a turn across the axis and about it, from design; absent: nothing resists. Need the axis. */
  readonly conical?: number;
  readonly torsional?: number;
}

/** Rates of a strut's top mount, whose axis is the strut line: the rod slides along it and turns about it freely. */
export type StrutTopRate = Pick<EndRate, "radial" | "voided" | "conical">;

export interface RubberEnd {
  readonly link: string;
  readonly end: "inner" | "outer";
  readonly rate: EndRate;
}

/** What is elastic in a corner. Anything not listed is rigid. Rates are constant. */
export interface CornerElasticity {
  readonly springRate: NewtonsPerMetre;
  readonly rubber: readonly RubberEnd[];
  readonly strutTop?: StrutTopRate;
  /** Trailing-arm bush: axis fixed in the body. */
  readonly trailingArm?: EndRate;
  /** Rate of the bare links along their length. */
  readonly members: readonly { readonly link: string; readonly rate: NewtonsPerMetre }[];
  /** Vertical force at the contact patch at design. */
  readonly wheelLoad: Newtons;
}

/** Several faults act together. `link` may be a link's name, "strut_top" or "trailing_arm". */
export type ElasticFault =
  | { readonly kind: "soft"; readonly link: string; readonly end: "inner" | "outer"; readonly factor: number }
  | { readonly kind: "play"; readonly link: string; readonly total: Metres }
  /** A link whose free length is longer by this much, held both ways. */
  | { readonly kind: "shift"; readonly link: string; readonly by: Metres };

/** Loads in vehicle axes on a left wheel. */
export interface CornerLoad {
  /** Toward the left, at the contact patch. */
  readonly lateral: Newtons;
  /** Rearward at the contact patch, wheel locked to the knuckle; negative pushes forward. */
  readonly braking: Newtons;
  /** Forward at the wheel centre. */
  readonly drive: Newtons;
  /** About z, N m. */
  readonly aligning: number;
  /** How far the patch is held above its design height; only where the contact height is held. */
  readonly contactRise: Metres;
  /** Rack position: inner joints of steered links stand this far toward +y. */
  readonly rack: Metres;
}

export const NO_LOAD: CornerLoad = { lateral: 0, braking: 0, drive: 0, aligning: 0, contactRise: 0, rack: 0 };

/** The load a share of the way from one to another. */
export function mixLoads(a: CornerLoad, b: CornerLoad, share: number): CornerLoad {
  const mix = (x: number, y: number): number => x + share * (y - x);
  return {
    lateral: mix(a.lateral, b.lateral),
    braking: mix(a.braking, b.braking),
    drive: mix(a.drive, b.drive),
    aligning: mix(a.aligning, b.aligning),
    contactRise: mix(a.contactRise, b.contactRise),
    rack: mix(a.rack, b.rack),
  };
}

export type Hold = "wheel-load" | "contact-height";

export interface ElasticCorner {
  readonly geometry: CornerGeometry;
  readonly elasticity: CornerElasticity;
  readonly hold: Hold;
  readonly faults: readonly ElasticFault[];
}
