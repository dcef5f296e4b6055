import { type JobStep, torqueWords } from "#casework";
import { timeWords } from "../appraisal/time-words.ts";

interface StepRowsProps {
  readonly steps: readonly JobStep[];
  readonly selected: string | null;
  readonly onSelect: (step: string) => void;
  /** Signs the step, or takes the signature back. */
  readonly onTick: (step: JobStep) => void;
}

const StepLine = ({
  step,
  number,
  of,
}: {
  readonly step: JobStep;
  readonly number: number;
  readonly of: StepRowsProps;
}) => (
  <li className="step-row" data-done={step.record !== null}>
    <button
      type="button"
      className="step-tick"
      aria-pressed={step.record !== null}
      aria-label={`${step.record === null ? "Sign" : "Signed"}: ${step.label}${step.place === null ? "" : `, ${step.place}`}`}
      onClick={() => of.onTick(step)}
    >
      <svg viewBox="0 0 24 24" width="24" height="24" aria-hidden="true">
        <rect x="2.5" y="2.5" width="19" height="19" className="tick-box" />
        {step.record === null ? null : <path d="M6.5 12.5l4 4 7.5-9.5" className="tick-mark" />}
      </svg>
    </button>
    <button
      type="button"
      className="step-pick"
      aria-pressed={step.id === of.selected}
      onClick={() => of.onSelect(step.id)}
    >
      <span className="step-number note">{number}</span>
      <span className="found-what">
        <span className="found-name">{step.label}</span>
        {step.place === null ? null : <span className="label">{step.place}</span>}
        {step.support === null ? null : <span className="note">{step.support}</span>}
      </span>
      <span className="step-torque label">
        {step.fasteners.map((f) => (
          <span key={`${f.item}${f.label}`}>
            {f.count} x {f.label}: {torqueWords(f)}
          </span>
        ))}
        {step.needsRideHeight ? <span className="step-loaded">at ride height, height written down</span> : null}
      </span>
      <span className="step-signed note">
        {step.record === null ? "" : `${step.record.doneBy}, ${timeWords(step.record.at)}`}
        {step.cautions.length === 0 ? "" : step.record === null ? "caution" : ""}
      </span>
    </button>
  </li>
);

/** Steps one below the other in the order they are done; each is ticked, and opens. */
export const StepRows = (of: StepRowsProps) => (
  <ol className="step-rows">
    {of.steps.map((step, i) => (
      <StepLine key={step.id} step={step} number={i + 1} of={of} />
    ))}
  </ol>
);
