/** Number of a day of the calendar, counted so that two differ by the days between them (Gregorian calendar, years begun in March so that the leap day comes last; own derivation). */
export const dayNumber = (date: string): number => {
  const [year = 0, month = 1, day = 1] = date.split("-").map(Number);
  const fromMarch = (month + 9) % 12;
  const years = year - Math.floor(fromMarch / 10);
  const leapDays = Math.floor(years / 4) - Math.floor(years / 100) + Math.floor(years / 400);
  return 365 * years + leapDays + Math.floor((fromMarch * 306 + 5) / 10) + day - 1;
};
