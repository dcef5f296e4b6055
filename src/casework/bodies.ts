import type { LayoutElasticity, LayoutRubber, PlaySeenBy, Rock } from "#engines/linkage";
import type { Finding } from "#numeric";
import type { Kilograms, Metres, Newtons, Share } from "#quantity";
import type { BodyLayout, Rung } from "#vehicle";
import type { Condition, EffectPart, Figure, HardnessChange } from "./fault-effect.ts";
import type { TravelPlot } from "./travel/travel-sheet.ts";

type Place = readonly [Metres, Metres, Metres];

/** A wheel suspension given as bodies and joints, with what is elastic in it and how well it is known; left side. */
export interface BodiesFile {
  /** The file to the letter, as a printed sheet of it is asked for. */
  readonly text: string;
  readonly layout: BodyLayout;
  /** A layout alone: moved as a rigid linkage, nothing in it is torn, loose or firmer. */
  readonly isPlain: boolean;
  /** What is doubtful in the file and computed all the same. */
  readonly doubts: readonly Finding[];
  /** What the file says of itself; "" where it says nothing. */
  readonly note: string;
  readonly elasticity: LayoutElasticity;
  /** Standard deviation of every point along x, y, z. */
  readonly sd: Place;
  /** Relative standard deviation of rates by "<part>" or "<link>.<end>"; absent: exact. */
  readonly rateSd: Readonly<Record<string, number>>;
  /** What a torn rubber still has of its rates, and where that is from. */
  readonly tornShare: { readonly low: Share; readonly high: Share; readonly origin: string };
  /** What moves with the wheel and where it stops; null where the file does not say: then nothing is held. */
  readonly held: { readonly unsprungMass: Kilograms; readonly droop: Metres } | null;
}

/** Where a rubber sits: an end of a link, or (end null) a joint. */
export type RubberPlace = Pick<LayoutRubber, "part" | "end">;

/** What is wrong with (or different in) a layout. */
export type BodiesFault =
  | { readonly kind: "torn"; readonly place: RubberPlace }
  /** All rates of a place so many times the sound ones, at least and at most. */
  | { readonly kind: "firmer"; readonly place: RubberPlace; readonly low: number; readonly high: number }
  /** The same told by the hardness of the old part and of the new, both of which must be said. */
  | { readonly kind: "firmer"; readonly place: RubberPlace; readonly hardness: HardnessChange }
  /** Play from side to side: of a link along it, of a joint in every direction across its axis. */
  | {
      readonly kind: "loose";
      readonly part: string;
      readonly play: Metres;
      /** Nobody has measured this play; whatever is computed from it says so. */
      readonly assumed?: true;
    };

export interface BodiesAsked {
  readonly file: BodiesFile;
  /** Null: only the sound state. */
  readonly fault: BodiesFault | null;
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

/** What such a suspension does over its travel, sound and with one fault. */
export interface BodiesSheet {
  readonly fault: BodiesFault | null;
  readonly plots: readonly TravelPlot[];
  /** At the asked travel, sound and faulty; null where no balance is found. */
  readonly placed: PlacedBodies | null;
  readonly faultyPlaced: PlacedBodies | null;
  readonly rung: Rung;
  readonly invented: boolean;
  readonly parts: readonly EffectPart[];
  readonly figures: readonly Figure[];
  readonly sentence: string;
  /** Of a loose part: how many ways it can stand at the asked travel, and how far apart; null where there is one. */
  readonly others: string | null;
  readonly binds: string;
  readonly howSure: string;
  readonly notComputed: string;
  readonly computedSo: string;
}

/** What opens a joint's play; too close to call where the drawn layouts do not agree. */
type SeenBy = PlaySeenBy | "too-close";

/** One joint, or one end of a link, in one way of holding the car. */
export interface HeldPart {
  readonly part: string;
  readonly end: "from" | "to" | null;
  /** What presses it together, with its 95 %. */
  readonly load: Newtons;
  readonly low: Newtons;
  readonly high: Newtons;
  readonly rock: Rock;
  readonly by: SeenBy;
}

/** One way of holding the car. */
export interface BodiesHeld {
  /** "ride", "hanging" or "under/<body>". */
  readonly key: string;
  readonly title: string;
  readonly how: string;
  readonly travel: Metres;
  readonly placed: PlacedBodies;
  /** Where the support stands; null without one. */
  readonly supportAt: Place | null;
  readonly spring: Newtons;
  readonly stop: Newtons;
  readonly under: Newtons;
  readonly wheelLoad: Newtons;
  readonly parts: readonly HeldPart[];
  /** What both hands move at the tyre's edge; empty while the wheel stands on the ground. */
  readonly rocks: readonly BodiesRock[];
}

/** A rock of the wheel: movement from side to side, sound and with the fault, with the 95 % of what the fault adds. */
export interface BodiesRock {
  readonly rock: Rock;
  readonly sound: Metres;
  /** Null where no fault is looked at. */
  readonly faulty: Metres | null;
  readonly low: Metres;
  readonly high: Metres;
  readonly tells: "yes" | "no" | "too-close" | null;
  readonly words: string;
}

/** Forces of a layout in every way of holding it, where play can be seen, and what a hand moves. */
export interface BodiesHold {
  readonly states: readonly BodiesHeld[];
  /** Ways in which nothing carries the wheel, in words. */
  readonly leftOut: readonly string[];
  /** By part and end, in the order of the parts of a state. */
  readonly best: readonly {
    readonly part: string;
    readonly end: "from" | "to" | null;
    readonly state: string | null;
    readonly words: string;
  }[];
  readonly sentence: string;
  readonly howSure: string;
  readonly computedSo: string;
  readonly cautions: readonly string[];
}
