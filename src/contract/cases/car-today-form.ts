import type { CarToday, Stage } from "#casework";

/** What Today says of a car, as JSON. */
export interface CarTodaySheet {
  readonly due_again: {
    readonly km: number;
    readonly from: "plan" | "horizon" | "practice";
    readonly words: string;
  } | null;
  readonly meanwhile: { readonly goes_on: readonly Stage[]; readonly held: readonly Stage[]; readonly words: string };
}

/** When a car is due again and what can go on, as the list of cars gives it. */
export const formatCarToday = ({ dueAgain, meanwhile: { goesOn, held, words } }: CarToday): CarTodaySheet => ({
  due_again: dueAgain,
  meanwhile: { goes_on: goesOn, held, words },
});
