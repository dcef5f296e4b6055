import { cautionsFor, fastenerWords, type JobStep, torqueWords } from "#casework";
import { Cautions } from "../../shell/cautions.tsx";
import { MarginSection } from "../../shell/margin-section.tsx";
import { timeWords } from "../appraisal/time-words.ts";
import { HeightEntry } from "./height-entry.tsx";
import { SignerEntry } from "./signer-entry.tsx";

interface StepMarginProps {
  readonly step: JobStep;
  /** Somebody is named as recording here: a step is signed with a name. */
  readonly isNamed: boolean;
  /** Hub centre to arch as found at this step's corner, mm. */
  readonly heightAsFound: number | null;
  /** Signs it; the height, metres, where the step asks for one. */
  readonly onSign: (hubToArch: number | null) => void;
  readonly onUnsign: () => void;
}

const Fasteners = ({ step }: { readonly step: JobStep }) => (
  <table className="price-facts step-fasteners">
    <tbody>
      {step.fasteners.map((f) => (
        <tr key={`${f.item}${f.label}`}>
          <th scope="row">
            {f.count} x {f.label}
            <span className="note">
              {" "}
              {fastenerWords(f)}; source {f.source}
            </span>
          </th>
          <td>{torqueWords(f)}</td>
        </tr>
      ))}
    </tbody>
  </table>
);

const Signature = ({ step, isNamed, heightAsFound, onSign, onUnsign }: StepMarginProps) => {
  if (step.record !== null)
    return (
      <p className="margin-links">
        Signed by {step.record.doneBy}, {timeWords(step.record.at)}
        {step.record.hubToArch === null ? "" : `, at ${Math.round(step.record.hubToArch * 1000)} mm`}.
        <button type="button" className="link" onClick={onUnsign}>
          Take it back
        </button>
      </p>
    );
  if (!isNamed) return <SignerEntry />;
  if (step.needsRideHeight) return <HeightEntry key={step.id} asFound={heightAsFound} onEnter={onSign} />;
  return (
    <p className="margin-links">
      <button type="button" className="press" onClick={() => onSign(null)}>
        Sign this step
      </button>
    </p>
  );
};

/** Explains one step: what to hold, torque and stage with whose figure, new or used again, cautions; and signs it. */
export const StepMargin = (props: StepMarginProps) => {
  const { step } = props;
  return (
    <>
      <p className="label">{step.place ?? "the whole car"}</p>
      <h2 className="heading">{step.label}</h2>
      {step.support === null ? null : <MarginSection title="Hold and support">{step.support}</MarginSection>}
      {step.fasteners.length === 0 ? null : (
        <>
          <h3 className="margin-title">Fasteners, torque and stage</h3>
          <Fasteners step={step} />
        </>
      )}
      {step.needsRideHeight ? (
        <MarginSection title="At ride height">
          Rubber bushes get their final torque with the wheel at the height it was read at before the work; turned tight
          hanging they tear early. The height is written down with the signature.
        </MarginSection>
      ) : null}
      <Signature {...props} />
      {step.cautions.length === 0 ? null : (
        <Cautions
          cautions={cautionsFor(step.cautions).map(
            (c) => `${c.when.charAt(0).toUpperCase()}${c.when.slice(1)}: ${c.text}`,
          )}
        />
      )}
    </>
  );
};
