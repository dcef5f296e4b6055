import type { MatchAsked } from "#casework";
import { metresFromMm, radiansFromDegrees } from "#quantity";
import type { Corner, Family } from "../car.ts";
import { parseTypedQuantity } from "../number/parse-typed-quantity.ts";
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
type PmKey = keyof typeof USUAL_PM;
const PM_KEYS = Object.keys(USUAL_PM) as readonly PmKey[];
export const ROW_UNITS = { height: "mm", camber: "°", toe: "°" } as const;
export const ROW_BOUNDS = {
  height: { low: 200, high: 900 },
  camber: { low: -20, high: 20 },
  toe: { low: -20, high: 20 },
} as const;
export const LENGTH_BOUNDS = { low: 50, high: 1500 } as const;
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

const numberIn = (
  text: string,
  unit: string,
  bounds: { readonly low?: number; readonly high?: number },
): number | null => {
  const read = parseTypedQuantity(text, unit, bounds);
  return read.kind === "number" ? read.value : null;
};

const radiansIn = (text: string, key: "camber" | "toe"): number | null => {
  const degrees = numberIn(text, "°", ROW_BOUNDS[key]);
  return degrees === null ? null : radiansFromDegrees(degrees);
};

/** Standard uncertainties of what is read; null where one is no figure, or nought where it cannot be. */
const readSpread = (pm: Entries["pm"]): MatchAsked["u"] | null => {
  const half = (key: PmKey): number => (numberIn(pm[key], PM_UNITS[key], { low: 0 }) ?? Number.NaN) / 2;
  if (!PM_KEYS.every((key) => half(key) > 0 || (half(key) === 0 && !NEVER_EXACT.includes(key)))) return null;
  return {
    travel: metresFromMm(half("height")),
    camber: radiansFromDegrees(half("camber")),
    toe: radiansFromDegrees(half("toe")),
    length: metresFromMm(half("length")),
    heightBase: metresFromMm(half("heightBase")),
    bodyBase: metresFromMm(half("bodyBase")),
  };
};

/** The question the entries make, and how many rows are whole; the question null with fewer than three. */
export const questionOf = (
  family: Family,
  corner: Corner,
  { rows, bench, pm }: Entries,
): { readonly asked: MatchAsked | null; readonly whole: number } => {
  const rest = numberIn(rows[0]?.height ?? "", "mm", ROW_BOUNDS.height);
  const readings = rows.flatMap((row): MatchAsked["readings"] => {
    const height = numberIn(row.height, "mm", ROW_BOUNDS.height);
    const [camber, toe] = [radiansIn(row.camber, "camber"), radiansIn(row.toe, "toe")];
    if (height === null || rest === null || (camber === null && toe === null)) return [];
    // The arch comes nearer to the hub as the wheel rises.
    return [{ travel: metresFromMm(rest - height), camber, toe }];
  });
  const spread = readSpread(pm);
  if (readings.length < LEAST_ROWS || spread === null) return { asked: null, whole: readings.length };
  return {
    whole: readings.length,
    asked: {
      family,
      corner,
      readings,
      lengths: Object.entries(bench).flatMap(([link, text]) => {
        const mm = numberIn(text, "mm", LENGTH_BOUNDS);
        return mm === null ? [] : [{ link, length: metresFromMm(mm) }];
      }),
      u: spread,
    },
  };
};
