import { formatNumber, type MatchAsked } from "#casework";
import { metresFromMm, radiansFromDegrees } from "#quantity";
import type { Corner, Family } from "../car.ts";
import { parseTypedQuantity, typedQuantityTrouble } from "../number/parse-typed-quantity.ts";
import type { MatchSearch } from "./match-search.ts";

/** One row as typed: hub centre to arch, camber, toe. */
export interface TypedRow {
  readonly height: string;
  readonly camber: string;
  readonly toe: string;
}

/** Everything typed on the page. */
export interface Entries {
  readonly rows: readonly TypedRow[];
  readonly bench: Readonly<Record<string, string>>;
  readonly pm: Readonly<Record<PmKey, string>>;
}

/**
 * Plus or minus of a tape from hub to arch, a stand's angles, a length between pins (95 %; from memory); of what readings and
 * points share. All heights are counted from the first, so they share its error.
 */
export const USUAL_PM = {
  height: "2",
  camber: "0.06",
  toe: "0.06",
  length: "1",
  heightBase: "2",
  bodyBase: "0",
} as const;
export const PM_UNITS = {
  height: "mm",
  camber: "°",
  toe: "°",
  length: "mm",
  heightBase: "mm",
  bodyBase: "mm",
} as const;
/** None of these is nought: a reading that is exact weighs without bound. */
const NEVER_EXACT: readonly PmKey[] = ["height", "camber", "toe", "length"];
export type PmKey = keyof typeof USUAL_PM;
export const PM_KEYS = Object.keys(USUAL_PM) as readonly PmKey[];
export const PM_NAMES: Readonly<Record<PmKey, string>> = {
  height: "± height",
  camber: "± camber",
  toe: "± toe",
  length: "± length",
  heightBase: "± shared by all heights",
  bodyBase: "± shared by the body's points",
};
export const ENTRY_NAMES = {
  height: "hub centre to arch",
  camber: "camber",
  toe: "toe of this wheel, in is +",
} as const;
export const ROW_UNITS = { height: "mm", camber: "°", toe: "°" } as const;
/** What each kind of entry may be; a figure beyond is refused beside its field. */
export const BOUNDS = {
  height: { low: 50, high: 1500 },
  camber: { low: -20, high: 20 },
  toe: { low: -20, high: 20 },
  length: { low: 20, high: 2000 },
  plusMinus: { low: 0, high: 1000 },
} as const;
export type EntryKind = keyof typeof BOUNDS;
export const LEAST_ROWS = 3;

const EMPTY: TypedRow = { height: "", camber: "", toe: "" };
/** Marks that part entries in an address; taken out of what is typed. */
const plain = (text: string): string => text.replaceAll(/[|;]/g, "");

/** The entries of an address. */
export const readEntries = ({ read, bench, pm }: MatchSearch): Entries => {
  const rows = (read ?? "").split(";").flatMap((row): readonly TypedRow[] => {
    const [height = "", camber = "", toe = ""] = row.split("|");
    return read === undefined ? [] : [{ height, camber, toe }];
  });
  const padded = Array.from({ length: Math.max(LEAST_ROWS, rows.length) }, (_, i) => rows[i] ?? EMPTY);
  const lengths = (bench ?? "").split(";").flatMap((entry): readonly (readonly [string, string])[] => {
    const [link = "", length = ""] = entry.split("|");
    return link === "" ? [] : [[link, length]];
  });
  const given = (pm ?? "").split("|");
  return {
    rows: padded,
    bench: Object.fromEntries(lengths),
    pm: Object.fromEntries(PM_KEYS.map((key, i) => [key, given[i] || USUAL_PM[key]])) as Entries["pm"],
  };
};

/** The same as it stands in an address; what is as usual is left out. */
export const formatEntries = ({ rows, bench, pm }: Entries): Omit<MatchSearch, "corner"> => {
  const read = rows.map(({ height, camber, toe }) => [height, camber, toe].map(plain).join("|")).join(";");
  const lengths = Object.entries(bench)
    .filter(([, length]) => length.trim() !== "")
    .map(([link, length]) => `${link}|${plain(length)}`)
    .join(";");
  const spread = PM_KEYS.map((key) => plain(pm[key])).join("|");
  return {
    ...(/[^|;]/.test(read) ? { read } : {}),
    ...(lengths === "" ? {} : { bench: lengths }),
    ...(spread === Object.values(USUAL_PM).join("|") ? {} : { pm: spread }),
  };
};

/** What keeps an entry from being used, in plain words; null where nothing does, or where it is blank. */
export const entryTrouble = (kind: EntryKind, text: string, unit: string, neverExact = false): string | null => {
  if (text.trim() === "") return null;
  const { low, high } = BOUNDS[kind];
  const read = parseTypedQuantity(text, unit, BOUNDS[kind]);
  if (read.kind !== "number") return typedQuantityTrouble(text, BOUNDS[kind], unit);
  const range = `${formatNumber(low, 0)} to ${formatNumber(high, 0)} ${unit}`.replace(" °", "°");
  if (read.value < low || read.value > high) return `give ${range}`;
  return neverExact && read.value === 0 ? "give more than 0" : null;
};

/** Same for a plus or minus. */
export const spreadTrouble = (key: PmKey, text: string): string | null =>
  entryTrouble("plusMinus", text, PM_UNITS[key], NEVER_EXACT.includes(key));

const numberIn = (kind: EntryKind, text: string, unit: string): number | null => {
  const read = parseTypedQuantity(text, unit, BOUNDS[kind]);
  return read.kind === "number" && entryTrouble(kind, text, unit) === null ? read.value : null;
};

const radiansIn = (text: string, key: "camber" | "toe"): number | null => {
  const degrees = numberIn(key, text, "°");
  return degrees === null ? null : radiansFromDegrees(degrees);
};

/** Standard uncertainties of what is read; a blank one is as usual. */
const readSpread = (pm: Entries["pm"]): MatchAsked["u"] => {
  const half = (key: PmKey): number => (numberIn("plusMinus", pm[key], PM_UNITS[key]) ?? Number(USUAL_PM[key])) / 2;
  return {
    travel: metresFromMm(half("height")),
    camber: radiansFromDegrees(half("camber")),
    toe: radiansFromDegrees(half("toe")),
    length: metresFromMm(half("length")),
    heightBase: metresFromMm(half("heightBase")),
    bodyBase: metresFromMm(half("bodyBase")),
  };
};

/** The name of a row of readings. */
export const rowName = (index: number): string => (index === 0 ? "as it stands" : `height ${index + 1}`);

/** An entry that is to be put right, or a row that is not whole: where it stands, and what is wrong. */
export interface Trouble {
  readonly where: string;
  readonly said: string;
}

/** Everything typed that cannot be used. */
export const troublesOf = (family: Family, corner: Corner, { rows, bench, pm }: Entries): readonly Trouble[] => {
  const trouble = (where: string, said: string | null): readonly Trouble[] => (said === null ? [] : [{ where, said }]);
  const { links } = family[corner.startsWith("front") ? "front" : "rear"];
  return [
    ...rows.flatMap((row, i) => [
      ...(["height", "camber", "toe"] as const).flatMap((key) =>
        trouble(`${rowName(i)}, ${ENTRY_NAMES[key]}`, entryTrouble(key, row[key], ROW_UNITS[key])),
      ),
      ...trouble(rowName(i), halfRow(row)),
    ]),
    ...PM_KEYS.flatMap((key) => trouble(PM_NAMES[key], spreadTrouble(key, pm[key]))),
    ...Object.entries(bench).flatMap(([name, text]) => {
      const link = links.find((one) => one.name === name);
      if (link === undefined) return [{ where: `length of ${name}`, said: "no link of this axle is called so" }];
      return trouble(`${link.label}, pin to pin`, entryTrouble("length", text, "mm"));
    }),
  ];
};

const isBlank = (text: string): boolean => text.trim() === "";

/** What a row begun still wants; null for a whole one and for one not begun. */
const halfRow = ({ height, camber, toe }: TypedRow): string | null => {
  if (!isBlank(height)) return isBlank(camber) && isBlank(toe) ? "camber or toe is still to come" : null;
  return isBlank(camber) && isBlank(toe) ? null : "its height is still to come";
};

/** The question the entries make, and how many rows are whole; the question null with fewer than three, or with troubles. */
export const questionOf = (
  family: Family,
  corner: Corner,
  entries: Entries,
): { readonly asked: MatchAsked | null; readonly whole: number; readonly troubles: readonly Trouble[] } => {
  const { rows, bench, pm } = entries;
  const troubles = troublesOf(family, corner, entries);
  const rest = numberIn("height", rows[0]?.height ?? "", "mm");
  const readings = rows.flatMap((row): MatchAsked["readings"] => {
    const height = numberIn("height", row.height, "mm");
    const [camber, toe] = [radiansIn(row.camber, "camber"), radiansIn(row.toe, "toe")];
    if (height === null || rest === null || (camber === null && toe === null)) return [];
    // The arch comes nearer to the hub as the wheel rises.
    return [{ travel: metresFromMm(rest - height), camber, toe }];
  });
  if (readings.length < LEAST_ROWS || troubles.length > 0) return { asked: null, whole: readings.length, troubles };
  return {
    troubles,
    whole: readings.length,
    asked: {
      family,
      corner,
      readings,
      lengths: Object.entries(bench).flatMap(([link, text]) => {
        const mm = numberIn("length", text, "mm");
        return mm === null ? [] : [{ link, length: metresFromMm(mm) }];
      }),
      u: readSpread(pm),
    },
  };
};
