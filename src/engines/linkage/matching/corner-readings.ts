import { type Jet, lengthOf, subtractVectors } from "#numeric";
import type { CornerGeometry } from "../geometry.ts";
import { TravelBand } from "../solve-band.ts";
import type { PointErrors } from "./point-errors.ts";

/** A value read, with its standard uncertainty (above 0). */
export interface Reading {
  readonly value: number;
  readonly u: number;
}

/** Camber and toe read with the wheel centre at one height against the body; metres, radians. */
export interface WheelReading {
  /** Wheel-centre travel from the design height, and its standard uncertainty (one error for camber and toe). */
  readonly travel: Reading | { readonly value: number; readonly u: 0 };
  readonly camber: Reading | null;
  readonly toe: Reading | null;
}

/** Distance between the joint centres of a link, measured on the bench; metres. */
export interface LengthReading {
  readonly link: string;
  readonly length: Reading;
}

/** What was measured of one corner. */
export interface CornerReadings {
  readonly wheel: readonly WheelReading[];
  readonly lengths: readonly LengthReading[];
  /** Standard uncertainty of the height all others are counted from: one error common to them all; absent: 0, metres. */
  readonly heightBase?: number;
}

/** Which of the readings a row stands for: `index` counts in its own list. */
export interface ReadingName {
  readonly kind: "camber" | "toe" | "length";
  readonly index: number;
}

/** One reading beside what the geometry says it should be; rad or m. */
export interface ReadingRow {
  readonly name: ReadingName;
  readonly observed: number;
  readonly u: number;
  readonly expected: number;
  /** Derivatives of `expected` by all sources, the setting held. */
  readonly derivatives: Float64Array;
}

/** How far camber and toe are set from those of the geometry, radians. */
export interface Settings {
  readonly camber: number;
  readonly toe: number;
}

/** Every reading beside what the geometry and the settings say of it. */
export interface Compared {
  readonly rows: readonly ReadingRow[];
  readonly settings: Settings;
}

/** Sources beside the points: the height of each wheel reading, and what those share. */
export const sourcesOf = (errors: PointErrors, readings: CornerReadings): number =>
  errors.count + readings.wheel.length + 1;

/**
 * The setting that explains what is left of the readings of one kind best, 0 without such a reading: camber and toe at
 * design height are set by adjusters, are free and say nothing of the hard points.
 */
function settingOf(rows: readonly ReadingRow[], kind: "camber" | "toe"): number {
  let [sum, weights] = [0, 0];
  for (const { name, observed, expected, u } of rows) {
    if (name.kind !== kind) continue;
    sum += (observed - expected) / u ** 2;
    weights += 1 / u ** 2;
  }
  return weights === 0 ? 0 : sum / weights;
}

/** The rows with the settings that explain them best. */
function withSettings(rows: readonly ReadingRow[]): Compared {
  const settings = { camber: settingOf(rows, "camber"), toe: settingOf(rows, "toe") };
  return {
    rows: rows.map((row) =>
      row.name.kind === "length" ? row : { ...row, expected: row.expected + settings[row.name.kind] },
    ),
    settings,
  };
}

/**
 * Every reading beside what a geometry, moved by `sources`, says of it. The geometry stands already where the sources
 * put it. Null where a height cannot be reached.
 */
export function compareReadings(
  geometry: CornerGeometry,
  errors: PointErrors,
  readings: CornerReadings,
  sources: Float64Array,
): Compared | null {
  const band = new TravelBand(geometry, (names) => names.map(() => [0, 0, 0]));
  const rows: ReadingRow[] = [];
  const n = sources.length;
  const base = readings.heightBase ?? 0;
  const row = (jet: Jet): Float64Array => {
    const derivatives = new Float64Array(n);
    errors.derivatives(jet, derivatives);
    return derivatives;
  };
  for (const [index, reading] of readings.wheel.entries()) {
    const height = errors.count + index;
    const { travel } = reading;
    const at = band.solve(travel.value + travel.u * (sources[height] as number) + base * (sources[n - 1] as number));
    if ("foldAt" in at) return null;
    const { wheel } = geometry;
    const angles = [
      ["camber", reading.camber, wheel.camber, at.camberChange, at.camberGain.value],
      ["toe", reading.toe, wheel.toe, at.toeChange, at.toeGain.value],
    ] as const;
    angles.forEach(([kind, read, design, change, gain]) => {
      if (!read) return;
      const derivatives = row(change.jet);
      derivatives[height] = gain * travel.u;
      derivatives[n - 1] = gain * base;
      rows.push({
        name: { kind, index },
        observed: read.value,
        u: read.u,
        expected: design + change.value,
        derivatives,
      });
    });
  }
  for (const [index, { link, length }] of readings.lengths.entries()) {
    const measured = geometry.links.find((l) => l.name === link);
    if (!measured) throw new Error(`no link is called ${link}`);
    const jet = lengthOf(subtractVectors(band.jets.pointAt(measured.outer), band.jets.pointAt(measured.inner)));
    rows.push({
      name: { kind: "length", index },
      observed: length.value,
      u: length.u,
      expected: jet[0] as number,
      derivatives: row(jet),
    });
  }
  return withSettings(rows);
}
