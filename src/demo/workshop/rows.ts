import type { EnquiryDocument, LoadState, SignName, Stage, Wait } from "#casework";
import type { AxleName, Corner, QuantityName } from "#vehicle";

/** A car of the demo workshop; nobody and nothing in it exists. */
export interface CarRow {
  readonly registration: string;
  readonly name: string;
  readonly year: number;
  readonly owner: string;
  readonly family: string;
  readonly variants?: readonly (readonly [label: string, choice: string, known: boolean])[];
  /** Oldest first; the last is the one in work. */
  readonly visits: readonly VisitRow[];
}

export interface VisitRow {
  readonly daysAgo: number;
  readonly km: number;
  readonly by: string;
  readonly bay: string | null;
  /** Where it stands: every stage before is done. */
  readonly at: Exclude<Stage, "options"> | "closed";
  readonly waits?: readonly WaitRow[];
  readonly enquiry: EnquiryDocument;
  readonly readings?: ReadingRows;
  readonly seen?: readonly SeenRow[];
  /** Corners whose other places were looked at and showed nothing. */
  readonly restOf?: readonly Corner[];
  readonly agreed?: readonly string[];
  readonly declined?: readonly string[];
  readonly steps?: readonly StepRow[];
  readonly taught?: readonly (readonly [item: string, state: "done" | "not-needed" | "look-up"])[];
  readonly signed?: string;
}

export type WaitRow = readonly [what: Wait["what"], label: string, sinceDaysAgo: number, dueInDays: number | null];

/** Readings as the workshop writes them: four corners in the order front left, front right, rear left, rear right. */
export interface ReadingRows {
  readonly heights?: Four;
  readonly pressures?: Four;
  /** Middle of the tread, mm; and how much less the inner and the outer edge have. */
  readonly tread?: readonly [middle: Four, inner: Four, outer: Four];
  readonly pads?: Four;
  /** Least of the disc, mm, and how much more there is at the points around it, front and rear. */
  readonly discs?: readonly [least: Four, front: readonly number[], rear: readonly number[]];
  readonly camber?: Four;
  readonly toe?: Four;
  readonly caster?: readonly [left: number, right: number];
  readonly settled: boolean;
  /** Quantities nobody took. */
  readonly notTaken?: readonly QuantityName[];
}
export type Four = readonly [number, number, number, number];

/** What was seen or measured at a place beside the standard readings. */
export type SeenRow =
  | { readonly place: string; readonly signs: readonly SignName[]; readonly load: LoadState; readonly note?: string }
  | { readonly place: string; readonly quantity: QuantityName; readonly value: number; readonly load: LoadState };

/** A step that is done: hub to arch in mm where it asks for it, torque in N·m where one was read. */
export type StepRow = readonly [step: string, hubToArchMm?: number | null, torqueNm?: number | null];

/** An owner's words with nothing picked from the list yet. */
export const words = (text: string, use: string | null = "daily"): EnquiryDocument => ({
  words: text,
  symptoms: [],
  use,
});

/** An owner's words with one complaint from the list. */
export const complaint = (
  text: string,
  symptom: string,
  axle: AxleName | "unknown",
  side: "left" | "right" | "both" | "unknown" = "unknown",
  braking: "light" | "firm" | null = null,
  use: string | null = "daily",
): EnquiryDocument => ({
  words: text,
  symptoms: [
    {
      symptom,
      side,
      axle,
      conditions: { speedKmh: null, temperature: null, load: null, steering: null, braking },
      since: null,
    },
  ],
  use,
});
