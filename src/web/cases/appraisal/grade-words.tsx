import { gradeWords, NOT_LOOKED_AT, TOO_CLOSE } from "#drawing";
import type { Grade } from "../../car.ts";
import { GradeMark } from "../../scene/grade-mark.tsx";

interface GradeLineProps {
  readonly grade: Grade | null;
  readonly close: boolean;
}

/** A grade in words: "Watch, too close to call". */
export const gradeLine = ({ grade, close }: GradeLineProps): string =>
  grade === null ? NOT_LOOKED_AT : `${gradeWords[grade]}${close ? `, ${TOO_CLOSE.toLowerCase()}` : ""}`;

/** The mark of a grade with its words. */
export const GradeLine = ({ grade, close }: GradeLineProps) => (
  <span className="margin-grade">
    <GradeMark grade={grade} close={close} /> {gradeLine({ grade, close })}
  </span>
);
