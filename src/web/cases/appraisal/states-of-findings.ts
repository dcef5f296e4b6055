import type { PlaceFinding } from "#casework";
import type { PositionStates } from "#drawing";

/** What has been found as the drawings show it: places nobody has looked at have no state. */
export const statesOfFindings = (findings: readonly PlaceFinding[]): PositionStates =>
  Object.fromEntries(
    findings.flatMap(({ place, grade, closeToCall, found, limitWords }) =>
      grade === null
        ? []
        : [
            [
              place,
              {
                grade,
                close: closeToCall,
                ...(grade > 0 || closeToCall ? { sign: found } : {}),
                lines: limitWords === null ? [] : [limitWords],
              },
            ] as const,
          ],
    ),
  );

/** True where there is something to say of a place: a grade above sound, or too close to call. */
export const isWorthSaying = ({ grade, closeToCall }: Pick<PlaceFinding, "grade" | "closeToCall">): boolean =>
  (grade ?? 0) > 0 || closeToCall;
