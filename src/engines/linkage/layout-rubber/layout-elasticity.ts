import type { Metres, Newtons, NewtonsPerMetre } from "#quantity";
import type { EndRate } from "../elastic-corner.ts";
import type { ElasticMeasure } from "./turn-measure.ts";

/** Rates of one end of a link, or (end null) of a joint, which gives its own axis. */
export interface LayoutRubber {
  readonly part: string;
  readonly end: "from" | "to" | null;
  readonly rate: EndRate;
}

/** What is elastic in a layout of any number of bodies; parts not listed are rigid, bodies always are. */
export interface LayoutElasticity {
  readonly springRate: NewtonsPerMetre;
  readonly rubber: readonly LayoutRubber[];
  readonly members: readonly { readonly link: string; readonly rate: NewtonsPerMetre }[];
  /** Vertical force at the contact patch at design. */
  readonly wheelLoad: Newtons;
}

/** Several faults act together; `part` is a link (with its end where rubber is meant) or a joint. */
export type LayoutFault =
  /** All rates of one end of a link, or of a joint, times a factor. */
  | { readonly kind: "soft"; readonly part: string; readonly end: "from" | "to" | null; readonly factor: number }
  /** A dead band of this total width, of a link along its line, of a joint in every direction across its axis. */
  | { readonly kind: "play"; readonly part: string; readonly total: Metres };

/** One elastic member of a layout: a measure with energy k/2 (m - free)^2, its rate N/m or N m/rad; Infinity is rigid. */
export interface LayoutTerm {
  readonly part: string;
  readonly measure: ElasticMeasure;
  readonly healthyRate: number;
  readonly rate: number;
  /** Takes part in carrying the wheel load at design. */
  readonly carriesPreload: boolean;
  /** What its rate is made of: the ends and member of a link in series, or one rate of one rubber; null: exact. */
  readonly made: LinkMade | RubberMade | null;
}

/** What the faults leave of the rates of an end of a link or (null) of a joint. */
export type Softness = (part: string, end: LayoutRubber["end"]) => number;

/** A link: each end with what its faults leave of it. */
export interface LinkMade {
  readonly of: "link";
  readonly ends: readonly { readonly rubber: LayoutRubber; readonly soft: number }[];
  readonly member: number | null;
}

/** One rate of a rubber: all of its rates go with one factor. */
export interface RubberMade {
  readonly of: "rubber";
  readonly rubber: LayoutRubber;
}

/** Name of a rate among the uncertain ones: "<link>.from", "<link>.to" or that of the joint. */
export const rateName = ({ part, end }: Pick<LayoutRubber, "part" | "end">): string => (end ? `${part}.${end}` : part);
