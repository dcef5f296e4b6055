import { type AppraisedFinding, NOT_KNOWN } from "#casework";
import { positionName } from "#drawing";
import type { Family } from "../../car.ts";
import { GradeMark } from "../../scene/grade-mark.tsx";
import { gradeLine } from "../appraisal/grade-words.tsx";

interface FoundRowsProps {
  readonly family: Family;
  /** In order of grade, worst first. */
  readonly findings: readonly AppraisedFinding[];
  readonly selected: string | null;
  readonly onSelect: (place: string) => void;
}

/** Findings one below the other, worst first; each selects its place. */
export const FoundRows = ({ family, findings, selected, onSelect }: FoundRowsProps) => (
  <ol className="found-rows">
    {findings.map((finding) => (
      <li key={finding.place}>
        <button
          type="button"
          className="found-row"
          aria-pressed={finding.place === selected}
          onClick={() => onSelect(finding.place)}
        >
          <GradeMark grade={finding.grade} close={finding.closeToCall} read={finding.notKnown} size={20} />
          <span className="found-what">
            <span className="found-name">{positionName(family, finding.place)}</span>
            <span className="label">{finding.found}</span>
            {finding.limitWords === null ? null : <span className="note">{finding.limitWords}</span>}
            {finding.caveat === null ? null : <span className="note">{finding.caveat}</span>}
          </span>
          <span className="found-grade label">
            {finding.notKnown ? NOT_KNOWN : gradeLine({ grade: finding.grade, close: finding.closeToCall })}
          </span>
        </button>
      </li>
    ))}
  </ol>
);
