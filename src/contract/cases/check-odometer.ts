import type { Finding } from "#numeric";
import { dayNumber } from "./calendar-day.ts";

/** One visit's odometer, in km as read. */
export interface OdometerReading {
  readonly visit: string;
  /** ISO date. */
  readonly date: string;
  readonly odometerKm: number;
}

interface Distance extends OdometerReading {
  /** What the car has really run: the offset of a replaced odometer added. */
  readonly run: number;
}

const kmPerMile = 1.609_344;
/** A car's run where nothing is known of this one: about 15,000 km a year; common practice, no source. */
const usualKmPerDay = 40;
/** Between two visits a car may run three times what it did before, and a long journey; invented, only a net for slips. */
const slackFactor = 3;
const slackKm = 10_000;
/** A history shorter than this says nothing of how much a car is driven; invented. */
const tellingDays = 30;

const byDay = (one: OdometerReading, other: OdometerReading): number =>
  one.date === other.date ? (one.visit < other.visit ? -1 : 1) : one.date < other.date ? -1 : 1;

/** What the car had run at each visit; the first reading that falls, and fits with the offset, is where the odometer was replaced. */
const computeDistances = (readings: readonly OdometerReading[], offsetKm: number): readonly Distance[] => {
  const distances: Distance[] = [];
  let replaced = false;
  for (const reading of readings.toSorted(byDay)) {
    const before = distances.at(-1)?.run ?? 0;
    replaced ||= offsetKm > 0 && reading.odometerKm < before && reading.odometerKm + offsetKm >= before;
    distances.push({ ...reading, run: reading.odometerKm + (replaced ? offsetKm : 0) });
  }
  return distances;
};

const kmPerDay = (history: readonly Distance[]): number => {
  const first = history[0];
  const last = history.at(-1);
  if (first === undefined || last === undefined) return usualKmPerDay;
  const days = dayNumber(last.date) - dayNumber(first.date);
  return days < tellingDays ? usualKmPerDay : (last.run - first.run) / days;
};

const km = (value: number): string => `${Math.round(value)} km`;

const finding = (code: string, reading: Distance, needed: string, hint: string): readonly Finding[] => [
  { code, path: "document.odometer_km", got: km(reading.odometerKm), needed, hint },
];

/** The hint where the figure was typed in the other unit; null where that does not fit the history either. */
const hintMiles = (reading: Distance, from: number, to: number): string | null => {
  const fits = (value: number): boolean => value >= from && value <= to;
  const offset = reading.run - reading.odometerKm;
  const asMiles = reading.odometerKm * kmPerMile;
  if (fits(asMiles + offset)) return `If it was read in miles it is ${km(asMiles)}, which fits the visits before.`;
  const asKm = reading.odometerKm / kmPerMile;
  if (fits(asKm + offset)) return `If km were taken for miles it is ${km(asKm)}, which fits the visits before.`;
  return null;
};

/** The hint where one digit too many was typed, the tenths most often. */
const hintDigit = (reading: Distance, from: number, to: number): string => {
  const offset = reading.run - reading.odometerKm;
  const shorter = Math.floor(reading.odometerKm / 10) + offset;
  return shorter >= from && shorter <= to ? `Without its last digit it is ${km(shorter - offset)}, which fits. ` : "";
};

const checkAgainstPast = (reading: Distance, history: readonly Distance[], confirmed: boolean): readonly Finding[] => {
  const before = history.at(-1);
  if (before === undefined) return [];
  const days = dayNumber(reading.date) - dayNumber(before.date);
  const most = before.run + slackKm + slackFactor * kmPerDay(history) * days;
  const miles = hintMiles(reading, before.run, most);
  if (reading.run < before.run) {
    const needed = `at least ${km(before.run)}, read on ${before.date}`;
    if (miles !== null) return finding("odometer-miles", reading, needed, miles);
    const hint = `If the odometer was replaced, set odometer_offset_km of the car to what the new one lacks (at least ${km(before.run - reading.odometerKm)}). If the earlier visit is wrong, put that right first.`;
    return finding("odometer-lower", reading, needed, hint);
  }
  if (reading.run <= most || confirmed) return [];
  const needed = `at most about ${km(most)}: ${km(before.run)} on ${before.date} and ${days} days since`;
  const stands = 'If it stands, send it with "confirmed": true.';
  return miles === null
    ? finding("odometer-jump", reading, needed, `${hintDigit(reading, before.run, most)}${stands}`)
    : finding("odometer-miles", reading, needed, `${miles} ${stands}`);
};

const checkAgainstFuture = (reading: Distance, after: Distance | undefined): readonly Finding[] =>
  after === undefined || reading.run <= after.run
    ? []
    : finding(
        "odometer-lower",
        reading,
        `at most ${km(after.run)}, read later, on ${after.date}`,
        "Look at the date of this visit and at the reading of the later one.",
      );

/**
 * What is odd about the odometer of a visit beside the car's other visits: lower than before though the odometer was
 * not replaced, higher than later, miles in place of kilometres (or the other way), or farther than a car runs.
 * `offsetKm` is what to add to readings of a replaced odometer; a jump is taken where its sender has confirmed it.
 */
export const checkOdometer = (
  reading: OdometerReading,
  others: readonly OdometerReading[],
  offsetKm: number,
  confirmed: boolean,
): readonly Finding[] => {
  const distances = computeDistances([...others.filter(({ visit }) => visit !== reading.visit), reading], offsetKm);
  const index = distances.findIndex(({ visit }) => visit === reading.visit);
  const own = distances[index];
  if (own === undefined) return [];
  const past = checkAgainstPast(own, distances.slice(0, index), confirmed);
  return past.length > 0 ? past : checkAgainstFuture(own, distances[index + 1]);
};
