import type { Metres } from "#quantity";

/**
 * What two people may edit at once is kept as documents with a version. Every saved version stays; saving over a
 * version somebody else has saved meanwhile is refused, and both are shown.
 */
export interface DocumentBodies {
  readonly car: CarDocument;
  readonly visit: VisitDocument;
  readonly enquiry: EnquiryDocument;
  readonly plan: PlanDocument;
  readonly "job-card": JobCardDocument;
  readonly "hand-over": HandOverDocument;
  readonly settings: SettingsDocument;
  readonly "car-line": CarLineDocument;
}
export type DocumentKind = keyof DocumentBodies;

export interface StoredDocument<K extends DocumentKind = DocumentKind> {
  readonly kind: K;
  /** car: the car's id; settings: "shop"; car-line: the family's id; all others: the visit's id. */
  readonly id: string;
  /** 1 for the first saved. */
  readonly version: number;
  readonly body: DocumentBodies[K];
  readonly by: string;
  /** By the server's clock, ISO 8601. */
  readonly at: string;
}

/** One vehicle: identity, what it is, what is known and what is guessed. */
export interface CarDocument {
  readonly registration: string;
  /** As people call it: "Ouzel saloon, 2014". */
  readonly name: string;
  readonly year: number | null;
  /** Identity number as on the car; null = not read. */
  readonly identityNumber: string | null;
  readonly owner: string | null;
  /** Family on file (a silhouette makes one of rung "scaled"); null = not chosen yet. */
  readonly family: string | null;
  readonly variants: readonly { readonly label: string; readonly choice: string; readonly known: boolean }[];
  readonly distanceUnit: "km" | "mi";
  /** Set where the odometer was replaced: what to add to later readings. */
  readonly odometerOffsetKm: number;
  readonly invented: boolean;
}

/** Stages of the job line, in the order of the job. */
export type Stage =
  | "enquiry"
  | "car"
  | "readings"
  | "underside"
  | "findings"
  | "options"
  | "plan"
  | "job-card"
  | "hand-over";

/** What a case waits for. */
export interface Wait {
  readonly what: "part" | "owner" | "stand" | "person";
  readonly label: string;
  readonly since: string;
  readonly due: string | null;
}

export interface VisitDocument {
  readonly car: string;
  readonly odometerKm: number | null;
  /** Date of the visit, ISO. */
  readonly date: string;
  readonly by: string;
  readonly bay: string | null;
  /** Stages somebody called done; what blocks a stage is computed. */
  readonly done: readonly Stage[];
  readonly waits: readonly Wait[];
  readonly settled: boolean | null;
  /** Least thickness as it is stamped on the discs of each axle; null or absent: not read off. */
  readonly discMinimum?: { readonly front: Metres | null; readonly rear: Metres | null } | undefined;
  readonly closed: boolean;
}

export interface SymptomEntry {
  /** Id of the symptom table ("pulls-under-braking"). */
  readonly symptom: string;
  readonly side: "left" | "right" | "both" | "unknown";
  readonly axle: "front" | "rear" | "unknown";
  readonly conditions: {
    readonly speedKmh: readonly [low: number, high: number] | null;
    readonly temperature: "cold" | "warm" | "any" | null;
    readonly load: "empty" | "laden" | "any" | null;
    readonly steering: "straight" | "left" | "right" | "lock" | null;
    readonly braking: "none" | "light" | "firm" | null;
  };
  readonly since: string | null;
}

/** What somebody says of a suspect; a later word on the same cause counts instead, and none is ever taken out. */
export interface SuspectWord {
  /** Id of the table of causes. */
  readonly cause: string;
  /** "open": neither any more, what was said before no longer counts. */
  readonly word: "accepted" | "ruled-out" | "open";
  readonly reason: string | null;
  readonly by: string;
  readonly at: string;
}

export interface EnquiryDocument {
  /** The owner's own words, as they were said. */
  readonly words: string;
  readonly symptoms: readonly SymptomEntry[];
  /** What the car is used for: daily, long distance, towing, track. */
  readonly use: string | null;
  /** What was said of suspects, in the order it was said; absent: nothing. */
  readonly suspects?: readonly SuspectWord[] | undefined;
}

export interface PlanDocument {
  /** Visits that are to be planned over; the first is now. */
  readonly visits: readonly {
    readonly label: string;
    readonly odometerKm: number;
    /** The day it was agreed for, ISO; absent: estimated from how far the car goes in a year. */
    readonly date?: string | undefined;
  }[];
  /** Remedies the owner has declined, and those agreed to by name with who said so. */
  readonly declined: readonly string[];
  readonly agreed: readonly { readonly remedy: string; readonly by: string; readonly at: string }[];
  /** Remedies fixed to a visit by hand: remedy id to index of the visit. */
  readonly fixed: readonly { readonly remedy: string; readonly visit: number }[];
  readonly horizonKm: number;
}

export interface StepRecord {
  readonly step: string;
  readonly doneBy: string;
  readonly at: string;
  /** Hub centre to arch when the final torque was given, metres; needed where the step says so. */
  readonly hubToArch: Metres | null;
  readonly torqueNm: number | null;
  readonly note: string | null;
}

export interface JobCardDocument {
  readonly steps: readonly StepRecord[];
}

export interface HandOverDocument {
  /** Checks that were passed over, each with who said so and why. */
  readonly overrides: readonly {
    readonly gate: string;
    readonly reason: string;
    readonly by: string;
    readonly at: string;
  }[];
  readonly taught: readonly {
    readonly item: string;
    readonly state: "done" | "not-needed" | "look-up";
    readonly by: string;
  }[];
  readonly signedBy: string | null;
  readonly signedAt: string | null;
  readonly receivedBy: string | null;
}

export interface SettingsDocument {
  readonly workshop: string;
  readonly currency: string;
  readonly labourCentsPerHour: number;
  readonly taxShare: number;
  readonly visitCents: number;
  readonly units: {
    readonly distance: "km" | "mi";
    readonly length: "mm" | "in";
    readonly torque: "nm" | "lbft";
    readonly angle: "deg" | "deg-min";
    readonly pressure: "bar" | "psi";
  };
  /** True while the invented workshop is loaded; its cars never stand beside real ones. */
  readonly invented: boolean;
}

/** What is kept of a car line beside its file. */
export interface CarLineDocument {
  /** True where it was taken off the list; its file stays, and what refers to it still opens. */
  readonly offList: boolean;
}
