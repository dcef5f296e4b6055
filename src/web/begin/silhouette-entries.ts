import { metresFromMm, mmFromMetres } from "#quantity";
import {
  checkSilhouette,
  type DrivenAxle,
  type LayoutName,
  type SilhouetteEntries,
  silhouetteDefaults,
  silhouetteRanges,
} from "#vehicle";

/** A number of the form, as it is entered: millimetres, kilograms, percent. */
export interface NumberEntry {
  readonly key: keyof typeof silhouetteRanges;
  readonly label: string;
  readonly unit: string;
  /** From the entered figure to SI. */
  readonly toSi: (entered: number) => number;
  readonly fromSi: (value: number) => number;
}

const inMm = { unit: "mm", toSi: metresFromMm, fromSi: (m: number) => Math.round(mmFromMetres(m)) };
const same = { toSi: (value: number) => value, fromSi: (value: number) => value };
const inPercent = {
  unit: "%",
  toSi: (percent: number) => percent / 100,
  fromSi: (share: number) => Math.round(share * 100),
};

export const NUMBER_ENTRIES: readonly NumberEntry[] = [
  { key: "wheelbase", label: "Wheelbase", ...inMm },
  { key: "frontTrack", label: "Front track", ...inMm },
  { key: "rearTrack", label: "Rear track", ...inMm },
  { key: "kerbMass", label: "Kerb mass", unit: "kg", ...same },
  { key: "frontWeightShare", label: "Of it on the front axle", ...inPercent },
  { key: "frontLowered", label: "Front lowered by", ...inMm },
  { key: "rearLowered", label: "Rear lowered by", ...inMm },
];

/** The form as it stands: texts as typed, choices as chosen. */
export interface SilhouetteForm {
  readonly name: string;
  readonly frontLayout: LayoutName;
  readonly rearLayout: LayoutName;
  readonly tyreSize: string;
  readonly drivenAxle: DrivenAxle;
  readonly numbers: Readonly<Record<NumberEntry["key"], string>>;
}

/** Every entry as it is taken where nothing is entered. */
export const usualForm = (): SilhouetteForm => ({
  name: "",
  frontLayout: silhouetteDefaults.frontLayout,
  rearLayout: silhouetteDefaults.rearLayout,
  tyreSize: silhouetteDefaults.tyreSize,
  drivenAxle: silhouetteDefaults.drivenAxle,
  numbers: Object.fromEntries(
    NUMBER_ENTRIES.map(({ key, fromSi }) => [key, String(fromSi(silhouetteDefaults[key]))]),
  ) as SilhouetteForm["numbers"],
});

const readNumber = (text: string): number | null => {
  const value = Number(text.trim().replace(",", "."));
  return text.trim() === "" || !Number.isFinite(value) ? null : value;
};

/** The range of an entry in the unit it is entered in. */
export const rangeOf = ({ key, fromSi }: NumberEntry): readonly [low: number, high: number] => {
  const [low, high] = silhouetteRanges[key];
  return [fromSi(low), fromSi(high)];
};

/** A form that can be used, or what is wrong with it: by entry, in plain words. */
export type ReadForm = { readonly entries: SilhouetteEntries } | { readonly wrong: Readonly<Record<string, string>> };

/** Reads the whole form; everything wrong with it at once. */
export const readForm = (form: SilhouetteForm): ReadForm => {
  const wrong: Record<string, string> = {};
  const numbers: Partial<Record<NumberEntry["key"], number>> = {};
  for (const entry of NUMBER_ENTRIES) {
    const value = readNumber(form.numbers[entry.key]);
    const [low, high] = rangeOf(entry);
    if (value === null || value < low || value > high)
      wrong[entry.key] = `give a number from ${low} to ${high} ${entry.unit}`;
    else numbers[entry.key] = entry.toSi(value);
  }
  const { frontLayout, rearLayout, tyreSize, drivenAxle } = form;
  const name = form.name.trim();
  const entries = {
    frontLayout,
    rearLayout,
    tyreSize: tyreSize.trim(),
    drivenAxle,
    ...numbers,
    ...(name === "" ? {} : { name }),
  };
  for (const { path, needed, hint } of checkSilhouette(entries))
    wrong[path] ??= [needed, hint].filter((part) => part !== "").join("; ");
  return Object.keys(wrong).length > 0 ? { wrong } : { entries };
};
