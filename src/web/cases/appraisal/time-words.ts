const format = new Intl.DateTimeFormat("en-GB", { dateStyle: "medium", timeStyle: "short" });

/** A moment as it is read: "12 Mar 2026, 09:30". */
export const timeWords = (moment: string): string => {
  const date = new Date(moment);
  return Number.isNaN(date.getTime()) ? moment : format.format(date);
};
