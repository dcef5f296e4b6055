import { formatNumber } from "#casework";
import { parseSilhouette, type SilhouetteSheet } from "#contract";
import type { Family, LayoutName } from "../car.ts";
import { distinctName } from "../families/distinct-name.ts";
import { parseTypedQuantity, typedQuantityTrouble } from "../number/parse-typed-quantity.ts";
import type { SilhouetteRanges } from "../server/silhouettes.ts";

/** A number of the form, as it is entered: millimetres, kilograms, percent. */
export interface NumberEntry {
  readonly key: NumberKey;
  readonly label: string;
  readonly unit: string;
  /** What one entered unit is in the sheet. */
  readonly factor: number;
  /** The figure of a family made of nothing entered, in the unit of the sheet. */
  readonly usual: (family: Family) => number;
}

export type NumberKey =
  | "wheelbase_mm"
  | "front_track_mm"
  | "rear_track_mm"
  | "kerb_mass_kg"
  | "front_weight_share"
  | "front_lowered_mm"
  | "rear_lowered_mm";

export const NUMBER_ENTRIES: readonly NumberEntry[] = [
  { key: "wheelbase_mm", label: "Wheelbase", unit: "mm", factor: 1, usual: (family) => family.wheelbase * 1000 },
  { key: "front_track_mm", label: "Front track", unit: "mm", factor: 1, usual: (family) => family.front.track * 1000 },
  { key: "rear_track_mm", label: "Rear track", unit: "mm", factor: 1, usual: (family) => family.rear.track * 1000 },
  { key: "kerb_mass_kg", label: "Kerb mass", unit: "kg", factor: 1, usual: (family) => family.kerbMass },
  {
    key: "front_weight_share",
    label: "Weight on front",
    unit: "%",
    factor: 0.01,
    usual: (family) => family.frontWeightShare,
  },
  { key: "front_lowered_mm", label: "Front lowered", unit: "mm", factor: 1, usual: () => 0 },
  { key: "rear_lowered_mm", label: "Rear lowered", unit: "mm", factor: 1, usual: () => 0 },
];

export type DrivenAxle = NonNullable<SilhouetteSheet["driven_axle"]>;

/** The form as it stands: texts as typed, choices as chosen; "" where nothing is: what is usual is assumed then. */
export interface SilhouetteForm {
  readonly name: string;
  readonly frontLayout: LayoutName | "";
  readonly rearLayout: LayoutName | "";
  readonly tyreSize: string;
  readonly drivenAxle: DrivenAxle | "";
  readonly numbers: Readonly<Record<NumberKey, string>>;
}

/** A form in which every choice is made. */
export type AssumedForm = SilhouetteForm & {
  readonly frontLayout: LayoutName;
  readonly rearLayout: LayoutName;
  readonly drivenAxle: DrivenAxle;
};

/** A family made of nothing entered; it holds what is taken then. */
const usualFamily = (): Family => {
  const made = parseSilhouette({});
  if ("findings" in made) throw new RangeError("a silhouette may be left empty");
  return made.family;
};

/** What is assumed where an entry is left blank, as it would be typed. */
export const assumedForm = (): AssumedForm => {
  const family = usualFamily();
  const shown = ({ usual, factor }: NumberEntry) => String(Math.round(usual(family) / factor));
  const numbers = Object.fromEntries(NUMBER_ENTRIES.map((entry) => [entry.key, shown(entry)]));
  return {
    name: "",
    frontLayout: family.front.layout,
    rearLayout: family.rear.layout,
    tyreSize: family.front.wheel.tyreSize,
    drivenAxle: family.front.driveShare > 0 ? "front" : "rear",
    numbers: numbers as SilhouetteForm["numbers"],
  };
};

/** A form nothing has been entered in. */
export const blankForm = (): SilhouetteForm => ({
  name: "",
  frontLayout: "",
  rearLayout: "",
  tyreSize: "",
  drivenAxle: "",
  numbers: Object.fromEntries(NUMBER_ENTRIES.map(({ key }) => [key, ""])) as SilhouetteForm["numbers"],
});

/** A car line's entries as a form shows them. */
export const formOfSheet = (sheet: SilhouetteSheet): SilhouetteForm => {
  const shown = ({ key, factor }: NumberEntry): string => {
    const value = sheet[key];
    return value === undefined ? "" : String(Number((value / factor).toPrecision(12)));
  };
  return {
    name: sheet.name ?? "",
    frontLayout: sheet.front_layout ?? "",
    rearLayout: sheet.rear_layout ?? "",
    tyreSize: sheet.tyre_size ?? "",
    drivenAxle: sheet.driven_axle ?? "",
    numbers: Object.fromEntries(NUMBER_ENTRIES.map((entry) => [entry.key, shown(entry)])) as SilhouetteForm["numbers"],
  };
};

/** Between what a number may lie, in the unit it is entered in. */
export const boundsOf = ({ key, factor }: NumberEntry, ranges: SilhouetteRanges): { low: number; high: number } => {
  const { minimum = Number.NEGATIVE_INFINITY, maximum = Number.POSITIVE_INFINITY } = ranges[key] ?? {};
  const inUnit = (value: number): number => Number((value / factor).toPrecision(12));
  return { low: inUnit(minimum), high: inUnit(maximum) };
};

/** Units a figure is often typed in without saying so, and what one of them is in the unit of the entry. */
const UNSAID: Readonly<Record<string, readonly (readonly [unit: string, factor: number])[]>> = {
  mm: [
    ["m", 1000],
    ["cm", 10],
  ],
  kg: [["t", 1000]],
};

/** What a figure beyond its range may have been meant as: "; 2.71 m would do, with its unit"; "" where nothing fits. */
const meantWords = (
  text: string,
  { low, high }: { low: number; high: number },
  unit: string,
  value: number,
): string => {
  const meant = UNSAID[unit]?.find(([, factor]) => value * factor >= low && value * factor <= high);
  if (meant !== undefined) return `; write ${text.trim()} ${meant[0]} if that is meant`;
  return unit === "%" && 100 * value >= low && 100 * value <= high
    ? `; ${text.trim()} is ${formatNumber(100 * value, 0)} %`
    : "";
};

/** A number from its entry in the unit of the sheet, or what is wrong with it; `value` absent where nothing is entered. */
const readEntry = (
  entry: NumberEntry,
  text: string,
  ranges: SilhouetteRanges,
): { readonly value?: number } | { readonly wrong: string } => {
  if (text.trim() === "") return {};
  const bounds = boundsOf(entry, ranges);
  const read = parseTypedQuantity(text, entry.unit, bounds);
  if (read.kind !== "number")
    return { wrong: typedQuantityTrouble(text, bounds, entry.unit) ?? `give a number, in ${entry.unit}` };
  if (read.value >= bounds.low && read.value <= bounds.high)
    return { value: Number((read.value * entry.factor).toPrecision(12)) };
  const meant = read.as === null ? meantWords(text, bounds, entry.unit, read.value) : "";
  return { wrong: `give ${formatNumber(bounds.low, 0)} to ${formatNumber(bounds.high, 0)} ${entry.unit}${meant}` };
};

/** What a form is read with. */
export interface FormContext {
  /** What may be entered; what no range is known of is held against the templates alone. */
  readonly ranges: SilhouetteRanges;
  /** Names of the other car lines. */
  readonly taken: readonly string[];
  readonly rung: SilhouetteSheet["rung"];
}

const NO_CONTEXT: FormContext = { ranges: {}, taken: [], rung: undefined };

/** Name a car line is kept under: as entered, or as it is called without one, told from the others by a number. */
export const keptName = (entered: string, taken: readonly string[]): string =>
  distinctName(entered.trim() === "" ? usualFamily().name : entered.trim(), taken);

/** A form that makes a family, or what is wrong with it: in plain words, by key of the sheet. */
export type ReadForm =
  | { readonly sheet: SilhouetteSheet; readonly family: Family }
  | { readonly wrong: Readonly<Record<string, string>> };

/**
 * The family as far as the form can be read: what is wrong in it is taken from another form.
 * Null where even that makes none.
 */
export const familyAsFarAsRead = (
  form: SilhouetteForm,
  other: SilhouetteForm,
  context?: FormContext,
): Family | null => {
  const read = readForm(form, context);
  if ("family" in read) return read.family;
  const numbers = Object.fromEntries(
    NUMBER_ENTRIES.map(({ key }) => [key, (key in read.wrong ? other : form).numbers[key]]),
  ) as SilhouetteForm["numbers"];
  const tyreSize = "tyre_size" in read.wrong ? other.tyreSize : form.tyreSize;
  for (const tried of [
    { ...form, numbers, tyreSize },
    { ...form, numbers: other.numbers, tyreSize: other.tyreSize },
  ]) {
    const again = readForm({ ...tried, name: "" }, context);
    if ("family" in again) return again.family;
  }
  return null;
};

/** Reads the whole form; everything wrong with it at once. */
export const readForm = (form: SilhouetteForm, { ranges, taken, rung }: FormContext = NO_CONTEXT): ReadForm => {
  const wrong: Record<string, string> = {};
  const numbers: Partial<Record<NumberKey, number>> = {};
  for (const entry of NUMBER_ENTRIES) {
    const read = readEntry(entry, form.numbers[entry.key], ranges);
    if ("wrong" in read) wrong[entry.key] = read.wrong;
    else if (read.value !== undefined) numbers[entry.key] = read.value;
  }
  const sheet = {
    name: keptName(form.name, taken),
    ...(rung !== undefined && { rung }),
    ...(form.frontLayout !== "" && { front_layout: form.frontLayout }),
    ...(form.rearLayout !== "" && { rear_layout: form.rearLayout }),
    ...(form.tyreSize.trim() !== "" && { tyre_size: form.tyreSize.trim() }),
    ...(form.drivenAxle !== "" && { driven_axle: form.drivenAxle }),
    ...numbers,
  } as SilhouetteSheet;
  const made = parseSilhouette(sheet);
  if ("findings" in made) {
    for (const { path, needed, hint } of made.findings) {
      wrong[path] ??= [needed, hint].filter((part) => part !== "").join(". ");
    }
    return { wrong };
  }
  return Object.keys(wrong).length > 0 ? { wrong } : { sheet, family: made.family };
};
