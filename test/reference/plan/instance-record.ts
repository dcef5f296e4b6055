import { readdirSync, readFileSync } from "node:fs";

/** An instance as it stands in a file. */
export interface InstanceRecord {
  readonly name: string;
  readonly labour_rate: number;
  readonly horizon_miles: number;
  readonly end_discount: number;
  readonly visits: readonly {
    readonly miles: number;
    readonly discount: number;
    readonly fixed_cost: number;
    readonly bay_hours?: number | null;
    readonly budget?: number | null;
  }[];
  readonly parts: readonly PartRecord[];
  readonly pairs?: readonly (readonly string[])[];
  readonly operations: readonly {
    readonly id: string;
    readonly hours: number;
    readonly needs?: readonly string[];
    readonly disturbs?: readonly string[];
  }[];
  readonly hardware?: readonly { readonly id: string; readonly price: number }[];
  readonly kits?: readonly KitRecord[];
  readonly upgrades?: readonly UpgradeRecord[];
  readonly alignment?: {
    readonly op: string;
    readonly if_parts: readonly string[];
    readonly if_ops: readonly string[];
  } | null;
}

export interface PartRecord {
  readonly id: string;
  readonly price: number;
  readonly access: readonly (readonly string[])[];
  readonly age_now: number;
  readonly life?: LifeRecord | null;
  readonly fail_cost?: number;
  readonly p_max?: number | null;
  readonly max_age?: number | null;
  readonly must_now?: boolean;
  readonly end_value_share?: number;
  readonly condition_ok?: boolean;
}

export type LifeRecord =
  | { readonly family: "weibull"; readonly shape: number; readonly scale: number }
  | { readonly family: "lognormal"; readonly median: number; readonly sigma: number };

export interface KitRecord {
  readonly id: string;
  readonly contents: readonly string[];
  readonly price: number;
}

export interface UpgradeRecord {
  readonly id: string;
  readonly price: number;
  readonly access: readonly (readonly string[])[];
  readonly requires: readonly string[];
  readonly required_by?: number | null;
  readonly benefit_per_1000: number;
}

export interface ChoiceRecord {
  readonly visit: number;
  readonly replace: readonly string[];
  readonly operations: readonly string[];
  readonly kits: readonly string[];
  readonly hours: number;
  readonly spend: number;
}

export interface AnswerRecord {
  readonly status: "optimal" | "infeasible" | "limit";
  readonly cost: number | null;
  readonly bound: number | null;
  readonly choices: readonly ChoiceRecord[];
}

export interface ExpectedRecord {
  readonly verdict: "optimal" | "infeasible";
  readonly optimum?: number;
  readonly one_optimal_plan?: Readonly<Record<string, readonly number[]>>;
  readonly visits_of_that_plan?: readonly ChoiceRecord[];
  readonly plan_unique?: boolean;
  readonly visit_details_unique?: boolean;
}

const read = (name: string): unknown => JSON.parse(readFileSync(new URL(name, import.meta.url), "utf8"));

export const instanceNames: readonly string[] = readdirSync(new URL("instances/", import.meta.url))
  .map((file) => file.replace(/\.json$/, ""))
  .sort();

export const readInstance = (name: string): InstanceRecord => read(`instances/${name}.json`) as InstanceRecord;

export const readExpected = (): Readonly<Record<string, ExpectedRecord>> =>
  read("expected.json") as Readonly<Record<string, ExpectedRecord>>;
