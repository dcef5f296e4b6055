import type { Wait } from "#casework";

/** What a case can wait for, as it is said. */
export const WAIT_WORDS: Readonly<Record<Wait["what"], string>> = {
  part: "Part",
  owner: "Owner's word",
  stand: "Stand",
  person: "Person",
};

const DAY_MS = 86_400_000;

const dayOf = (moment: string): number => Date.parse(`${moment.slice(0, 10)}T00:00:00Z`);

/** Since when, in words: "since 09:20", "since yesterday", "for 3 days". */
export const sinceWords = (since: string, today: string): string => {
  const days = Math.round((dayOf(today) - dayOf(since)) / DAY_MS);
  if (days <= 0) return since.length > 10 ? `since ${since.slice(11, 16)}` : "since today";
  return days === 1 ? "since yesterday" : `for ${days} days`;
};

/** When something is due, in words; "" where nobody said. */
export const dueWords = (due: string | null, today: string): string => {
  if (due === null) return "";
  const days = Math.round((dayOf(due) - dayOf(today)) / DAY_MS);
  if (days < 0) return days === -1 ? "due yesterday" : `due ${-days} days ago`;
  if (days === 0) return due.length > 10 ? `due ${due.slice(11, 16)}` : "due today";
  return days === 1 ? "due tomorrow" : `due in ${days} days`;
};
