import type { PlanDocument, VisitDocument } from "./documents.ts";
import { formatKm } from "./format-km.ts";
import { secondsOf } from "./moment.ts";
import { SERVICE_KM } from "./usual-plan.ts";

/** What a visit that has no day yet is estimated from. */
export interface CarPace {
  /** The day of the visit the plan was made at, ISO, and what the car showed then. */
  readonly visit: Pick<VisitDocument, "date" | "odometerKm">;
  /** Year the car was built; null: not known. */
  readonly year: number | null;
}

const DAYS_PER_YEAR = 365.25;
const SECONDS_PER_DAY = 86_400;
const DAYS_PER_MONTH = DAYS_PER_YEAR / 12;
/** A car is driven so far in a year at least and at most; beyond it the average says nothing (invented bounds). */
const LEAST_PACE = 2000;
const MOST_PACE = 80_000;
const MONTHS = "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec".split(" ");

/** Year, month (1 to 12) and day of an ISO date. */
const partsOf = (iso: string): readonly [year: number, month: number, day: number] => {
  const [year = 0, month = 1, day = 1] = iso.slice(0, 10).split("-").map(Number);
  return [year, month, day];
};

/** How far the car goes in a year, km, and how that is known: its own average since it was built, or a yearly service. */
export function computePace({ visit, year }: CarPace): { readonly kmPerYear: number; readonly own: boolean } {
  // Of the year alone the middle is taken (common practice, no source).
  const age =
    year === null
      ? 0
      : (secondsOf(visit.date.slice(0, 10)) - secondsOf(`${year}-07-01`)) / SECONDS_PER_DAY / DAYS_PER_YEAR;
  const own = age >= 1 && visit.odometerKm !== null ? visit.odometerKm / age : null;
  return own !== null && own >= LEAST_PACE && own <= MOST_PACE
    ? { kmPerYear: own, own: true }
    : { kmPerYear: SERVICE_KM, own: false };
}

/** A month counted from the year 0: "May 2027". */
const monthWords = (months: number): string => `${MONTHS[Math.floor(months) % 12]} ${Math.floor(months / 12)}`;

const monthsOf = (iso: string): number => {
  const [year, month, day] = partsOf(iso);
  return 12 * year + month - 1 + (day - 1) / DAYS_PER_MONTH;
};

const dayWords = (iso: string): string => `${partsOf(iso)[2]} ${monthWords(monthsOf(iso))}`;

/** When a visit of a plan is: the day that was typed, "12 May 2027", or by the car's pace, "about May 2027". */
export function visitDateWords({ odometerKm, date }: PlanDocument["visits"][number], pace: CarPace): string {
  if (date !== undefined) return dayWords(date);
  const from = pace.visit.odometerKm ?? 0;
  if (odometerKm <= from) return dayWords(pace.visit.date);
  const years = (odometerKm - from) / computePace(pace).kmPerYear;
  return `about ${monthWords(monthsOf(pace.visit.date) + 12 * years)}`;
}

/** What the estimated days come from, in one sentence. */
export function paceWords(pace: CarPace): string {
  const { kmPerYear, own } = computePace(pace);
  return own
    ? `Days are estimated at ${formatKm(Math.round(kmPerYear / 100) * 100)} a year, this car's average since ${pace.year}.`
    : `Days are estimated at ${formatKm(kmPerYear)} a year, from memory: the car's year or odometer is not known well enough.`;
}

/** A typed day as ISO: "2027-05-12", "12.5.2027" or "12/5/2027"; "" is no day; null is none that exists. */
export function parseDay(text: string): string | null {
  const typed = text.trim();
  if (typed === "") return "";
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(typed);
  const said = /^(\d{1,2})[./ ](\d{1,2})[./ ](\d{4})$/.exec(typed);
  const [year, month, day] = iso
    ? [Number(iso[1]), Number(iso[2]), Number(iso[3])]
    : said
      ? [Number(said[3]), Number(said[2]), Number(said[1])]
      : [0, 0, 0];
  const isReal = year >= 1000 && month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month);
  const two = (value: number): string => String(value).padStart(2, "0");
  return isReal ? `${year}-${two(month)}-${two(day)}` : null;
}

/** Days of a month of the Gregorian calendar. */
function daysIn(year: number, month: number): number {
  const isLeap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  return month === 2 ? (isLeap ? 29 : 28) : [4, 6, 9, 11].includes(month) ? 30 : 31;
}
