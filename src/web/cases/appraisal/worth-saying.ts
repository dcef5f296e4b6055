import type { PlaceFinding } from "#casework";

/** True where there is something to say of a place: a grade above sound, or too close to call. */
export const isWorthSaying = ({ grade, closeToCall }: Pick<PlaceFinding, "grade" | "closeToCall">): boolean =>
  (grade ?? 0) > 0 || closeToCall;
