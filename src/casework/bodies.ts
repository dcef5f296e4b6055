import type { LayoutElasticity, LayoutRubber } from "#engines/linkage";
import type { Metres } from "#quantity";
import type { BodyLayout, Rung } from "#vehicle";
import type { Condition, EffectPart, Figure } from "./fault-effect.ts";
import type { TravelPlot } from "./travel/travel-sheet.ts";

type Place = readonly [Metres, Metres, Metres];

/** A wheel suspension given as bodies and joints, with what is elastic in it and how well it is known; left side. */
export interface BodiesFile {
  readonly layout: BodyLayout;
  /** What the file says of itself; "" where it says nothing. */
  readonly note: string;
  readonly elasticity: LayoutElasticity;
  /** Standard deviation of every point along x, y, z. */
  readonly sd: Place;
  /** Relative standard deviation of rates by "<part>" or "<link>.<end>"; absent: exact. */
  readonly rateSd: Readonly<Record<string, number>>;
}

/** Where a rubber sits: an end of a link, or (end null) a joint. */
export type RubberPlace = Pick<LayoutRubber, "part" | "end">;

export interface BodiesAsked {
  readonly file: BodiesFile;
  /** Null: only the sound state. */
  readonly torn: RubberPlace | null;
  readonly condition: Condition;
}

/** Where all parts stand in one pose; vehicle frame. */
export interface PlacedBodies {
  readonly wheel: { readonly centre: Place; readonly spin: Place; readonly radius: Metres; readonly groundZ: Metres };
  readonly bodies: readonly { readonly name: string; readonly points: readonly Place[] }[];
  readonly links: readonly { readonly name: string; readonly from: Place; readonly to: Place }[];
  readonly joints: readonly { readonly name: string; readonly at: Place }[];
  readonly spring: { readonly from: Place; readonly to: Place } | null;
  readonly damper: { readonly from: Place; readonly to: Place } | null;
}

/** What such a suspension does over its travel, sound and with one rubber torn. */
export interface BodiesSheet {
  readonly torn: RubberPlace | null;
  readonly plots: readonly TravelPlot[];
  /** At the asked travel, sound and torn; null where no balance is found. */
  readonly placed: PlacedBodies | null;
  readonly tornPlaced: PlacedBodies | null;
  readonly rung: Rung;
  readonly invented: boolean;
  readonly parts: readonly EffectPart[];
  readonly figures: readonly Figure[];
  readonly sentence: string;
  readonly binds: string;
  readonly howSure: string;
  readonly notComputed: string;
  readonly computedSo: string;
}
