import { parseSilhouette, type SilhouetteSheet } from "#contract";
import type { Family, LayoutName } from "../car.ts";

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

/** The form as it stands: texts as typed, choices as chosen. */
export interface SilhouetteForm {
  readonly name: string;
  readonly frontLayout: LayoutName;
  readonly rearLayout: LayoutName;
  readonly tyreSize: string;
  readonly drivenAxle: DrivenAxle;
  readonly numbers: Readonly<Record<NumberKey, string>>;
}

/** A family made of nothing entered; it holds what is taken then. */
const usualFamily = (): Family => {
  const made = parseSilhouette({});
  if ("findings" in made) throw new RangeError("a silhouette may be left empty");
  return made.family;
};

/** Every entry as it is taken where nothing is entered. */
export const usualForm = (): SilhouetteForm => {
  const family = usualFamily();
  const shown = ({ usual, factor }: NumberEntry) => String(Math.round(usual(family) / factor));
  const numbers = Object.fromEntries(NUMBER_ENTRIES.map((entry) => [entry.key, shown(entry)]));
  return {
    name: "",
    frontLayout: family.front.layout,
    rearLayout: family.rear.layout,
    tyreSize: family.front.wheel.tyreSize,
    drivenAxle: "front",
    numbers: numbers as SilhouetteForm["numbers"],
  };
};

const readNumber = (text: string): number | null => {
  const value = Number(text.trim().replace(",", "."));
  return text.trim() === "" || !Number.isFinite(value) ? null : value;
};

/** A form that makes a family, or what is wrong with it: in plain words, by key of the sheet. */
export type ReadForm =
  | { readonly sheet: SilhouetteSheet; readonly family: Family }
  | { readonly wrong: Readonly<Record<string, string>> };

/** Reads the whole form; everything wrong with it at once. */
export const readForm = (form: SilhouetteForm): ReadForm => {
  const wrong: Record<string, string> = {};
  const numbers: Partial<Record<NumberKey, number>> = {};
  for (const { key, factor, unit } of NUMBER_ENTRIES) {
    const value = readNumber(form.numbers[key]);
    if (value === null) wrong[key] = `give a number, in ${unit}`;
    else numbers[key] = Number((value * factor).toPrecision(12));
  }
  const sheet = {
    ...(form.name.trim() === "" ? {} : { name: form.name.trim() }),
    front_layout: form.frontLayout,
    rear_layout: form.rearLayout,
    tyre_size: form.tyreSize.trim(),
    driven_axle: form.drivenAxle,
    ...numbers,
  } as SilhouetteSheet;
  const made = parseSilhouette(sheet);
  if ("findings" in made) {
    for (const { path, needed, hint } of made.findings) {
      wrong[path] ??= [needed, hint].filter((part) => part !== "").join("; ");
    }
    return { wrong };
  }
  return Object.keys(wrong).length > 0 ? { wrong } : { sheet, family: made.family };
};
