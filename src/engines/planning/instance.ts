/**
 * What a plan is chosen from. Distances are in one unit throughout (the odometer's), hours in hours, money in one
 * currency; the model asks for no particular one.
 */
export interface PlanInstance {
  /** Money per hour. */
  readonly labourRate: number;
  /** Odometer at the end of the plan; not before the last visit. */
  readonly horizon: number;
  /** Factor on amounts that fall due at the end. */
  readonly endDiscount: number;
  /** In the order of time; the first is now. */
  readonly visits: readonly Visit[];
  readonly parts: readonly Part[];
  /** Parts that are renewed at the same visits. */
  readonly pairs: readonly (readonly string[])[];
  readonly operations: readonly Operation[];
  readonly hardware: readonly Hardware[];
  readonly kits: readonly Kit[];
  readonly upgrades: readonly Upgrade[];
  readonly alignment: AlignmentRule | null;
}

export interface Visit {
  readonly odometer: number;
  /** Factor on amounts of this visit. */
  readonly discount: number;
  /** Once, if anything is done. */
  readonly fixedCost: number;
  /** Upper limits; null where there is none. */
  readonly bayHours: number | null;
  readonly budget: number | null;
}

/** How long a unit lasts, in distance. */
export type Life =
  | { readonly family: "weibull"; readonly shape: number; readonly scale: number }
  | { readonly family: "lognormal"; readonly median: number; readonly sigma: number };

/** What can be fitted: parts and upgrades share one name space. */
interface Item {
  readonly id: string;
  readonly price: number;
  /** Of every group at least one operation must be in the visit; no group: only the visit itself. */
  readonly access: readonly (readonly string[])[];
  /** Number of the visit (from 1) at which it is fitted, and at no other; absent or null: wherever it costs least. */
  readonly onlyAt?: number | null;
}

export interface Part extends Item {
  /** Distance the unit now fitted has run. */
  readonly ageNow: number;
  readonly wear: Wear | null;
  /** Longest age at the end of an interval; null: none. */
  readonly maxAge: number | null;
  /** Renewed at the first visit whatever it costs. */
  readonly mustNow: boolean;
  /** An upgrade may rely on the unit now fitted. */
  readonly conditionOk: boolean;
}

export interface Wear {
  readonly life: Life;
  readonly failCost: number;
  /** Highest chance of failure allowed in one interval; null: none. */
  readonly mostRisk: number | null;
  /** Share of the price a new unit would still be worth at the end. */
  readonly endValueShare: number;
}

export interface Upgrade extends Item {
  /** Parts that must be renewed at the same visit or before, unless their present unit may be relied on. */
  readonly requires: readonly string[];
  /** Number of the visit (from 1) by which it must be fitted; null: it may be left out. */
  readonly requiredBy: number | null;
  /** Money per 1000 of distance from fitting to the horizon, not discounted. */
  readonly benefitPer1000: number;
}

export interface Operation {
  readonly id: string;
  readonly hours: number;
  /** Operations that must be in the same visit. */
  readonly needs: readonly string[];
  /** Hardware that must be new afterwards, each once per visit. */
  readonly disturbs: readonly string[];
}

export interface Hardware {
  readonly id: string;
  readonly price: number;
}

/** One kit covers all its parts that are renewed at the visit; what is left over is lost. */
export interface Kit {
  readonly id: string;
  readonly contents: readonly string[];
  readonly price: number;
}

/** A visit that renews one of the parts or does one of the operations must also do `operation`. */
export interface AlignmentRule {
  readonly operation: string;
  readonly ifParts: readonly string[];
  readonly ifOperations: readonly string[];
}

/** What is done at one visit. */
export interface VisitChoice {
  /** Number of the visit, from 1. */
  readonly visit: number;
  readonly replace: readonly string[];
  readonly operations: readonly string[];
  readonly kits: readonly string[];
}
