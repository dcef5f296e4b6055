/** Days before a month of a year that begins in March. */
const daysBefore = (monthFromMarch: number): number => Math.floor((monthFromMarch * 306 + 5) / 10);

/**
 * An ISO 8601 moment with its offset ("2031-05-14T09:30:00+02:00") or a day, as seconds that can be compared; NaN where
 * the text is neither. Gregorian calendar, years begun in March so that the leap day comes last (own derivation).
 */
export function secondsOf(moment: string): number {
  const match = /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}):(\d{2}):(\d{2}(?:\.\d+)?)(?:Z|([+-])(\d{2}):(\d{2})))?$/.exec(
    moment,
  );
  if (!match) return Number.NaN;
  const part = (i: number): number => Number(match[i] ?? 0);
  const fromMarch = (part(2) + 9) % 12;
  const year = part(1) - Math.floor(fromMarch / 10);
  const leapDays = Math.floor(year / 4) - Math.floor(year / 100) + Math.floor(year / 400);
  const days = 365 * year + leapDays + daysBefore(fromMarch) + part(3) - 1;
  const offset = (match[7] === "-" ? -60 : 60) * (60 * part(8) + part(9));
  return 86_400 * days + 3600 * part(4) + 60 * part(5) + part(6) - offset;
}
