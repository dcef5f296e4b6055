const MS_PER_DAY = 86_400_000;
const MS_PER_MINUTE = 60_000;
/** Minutes at which a day's work begins: eight in the morning. */
const DAY_BEGINS = 8 * 60;

/** Days from 1 January 1970 to an ISO day, by the Gregorian calendar counted from 1 March (textbook arithmetic). */
function dayNumber(day: string): number {
  const [year = 0, month = 1, date = 1] = day.split("-").map(Number);
  const march = month <= 2 ? year - 1 : year;
  const era = Math.floor(march / 400);
  const ofEra = march - 400 * era;
  const ofYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + date - 1;
  return 146_097 * era + 365 * ofEra + Math.floor(ofEra / 4) - Math.floor(ofEra / 100) + ofYear - 719_468;
}

/** The ISO day of a number of days from 1 January 1970. */
function dayOf(number: number): string {
  const shifted = number + 719_468;
  const era = Math.floor(shifted / 146_097);
  const inEra = shifted - 146_097 * era;
  const ofEra = Math.floor(
    (inEra - Math.floor(inEra / 1460) + Math.floor(inEra / 36_524) - Math.floor(inEra / 146_096)) / 365,
  );
  const ofYear = inEra - (365 * ofEra + Math.floor(ofEra / 4) - Math.floor(ofEra / 100));
  const shiftedMonth = Math.floor((5 * ofYear + 2) / 153);
  const date = ofYear - Math.floor((153 * shiftedMonth + 2) / 5) + 1;
  const month = shiftedMonth < 10 ? shiftedMonth + 3 : shiftedMonth - 9;
  return `${400 * era + ofEra + (month <= 2 ? 1 : 0)}-${two(month)}-${two(date)}`;
}

const two = (value: number): string => String(value).padStart(2, "0");

/** The day so many days before (or, negative, after) another, ISO. */
export function dayBefore(today: string, days: number): string {
  return dayOf(dayNumber(today) - days);
}

/** A moment of a day in UTC, minutes after eight in the morning and within the day. */
export function momentOf(day: string, minutes: number): string {
  const ofDay = DAY_BEGINS + minutes;
  return `${day}T${two(Math.floor(ofDay / 60))}:${two(ofDay % 60)}:00Z`;
}

/**
 * An id of the form of UUID version 7 (RFC 9562, 5.7, from memory) that is the same every time.
 * @param day ISO day, and minutes after eight: its first 48 bits name that moment
 * @param number the rest, so that no two ids of a moment meet
 */
export function demoId(day: string, minutes: number, number: number): string {
  const moment = dayNumber(day) * MS_PER_DAY + (DAY_BEGINS + minutes) * MS_PER_MINUTE;
  const time = moment.toString(16).padStart(12, "0");
  return `${time.slice(0, 8)}-${time.slice(8)}-7000-8000-${number.toString(16).padStart(12, "0")}`;
}
