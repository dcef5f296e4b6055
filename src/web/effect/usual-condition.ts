import type { Condition, FaultQuestion, RubberFault } from "#casework";
import { cornerOf, type Position } from "../car.ts";

/** What a fault is first looked at under: standing height, wheels straight, a firm stop at this wheel; common practice, no source. */
export const USUAL_CONDITION: Condition = { contactRise: 0, rack: 0, braking: 2000, lateral: 0, drive: 0 };

/** The question what a fault at a position does; null where nothing is wrong there or it lies on no corner. */
export const questionAt = (
  position: Position | null,
  fault: RubberFault | null,
  condition: Condition,
): FaultQuestion | null => {
  const corner = position === null ? null : cornerOf(position);
  if (position === null || corner === null || fault === null) return null;
  return { corner, position: position.id, fault, condition };
};
