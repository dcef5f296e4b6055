import { judgeLooks, type PlaceFinding, type StoredLook, type SymptomEntry, type VisitDocument } from "#casework";
import type { PositionStates } from "#drawing";
import type { Family, Grade } from "../../car.ts";

/**
 * What the drawing shows of findings: grade, the limit and whose, and what was found where `says` wants it said; places
 * nobody looked at are absent.
 */
export const statesOfFindings = (
  findings: readonly PlaceFinding[],
  says: (finding: PlaceFinding) => boolean = ({ found }) => found !== "nothing seen",
): PositionStates =>
  Object.fromEntries(
    findings.flatMap((finding) =>
      finding.grade === null && !finding.notKnown
        ? []
        : [
            [
              finding.place,
              {
                grade: finding.grade,
                close: finding.closeToCall,
                ...(says(finding) ? { sign: finding.found } : {}),
                ...(finding.limitWords === null ? {} : { lines: [finding.limitWords] }),
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
  visit: Pick<VisitDocument, "discMinimum">,
  complaints: readonly SymptomEntry[],
): PositionStates => statesOfFindings(judgeLooks(family, looks, past, visit, complaints));
