import { judgeLooks, type PlaceFinding, type StoredLook } from "#casework";
import type { PositionStates } from "#drawing";
import type { Family, Grade } from "../../car.ts";

/** What the drawing shows of findings: grade, what was found, the limit and whose; places nobody looked at are absent. */
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
                ...(found === "nothing seen" ? {} : { sign: found }),
                ...(limitWords === null ? {} : { lines: [limitWords] }),
              },
            ] as const,
          ],
    ),
  );

/** The worst grade among findings; null where nobody has looked at anything. */
export const worstGrade = (findings: readonly PlaceFinding[]): Grade | null =>
  findings.reduce<Grade | null>(
    (worst, { grade }) => (grade === null || (worst !== null && worst >= grade) ? worst : grade),
    null,
  );

/** What the drawing shows of the looks at one car. */
export const statesOfLooks = (
  family: Family,
  looks: readonly StoredLook[],
  past: readonly StoredLook[],
): PositionStates => statesOfFindings(judgeLooks(family, looks, past));
