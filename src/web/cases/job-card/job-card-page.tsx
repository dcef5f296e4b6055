import { Link, useNavigate, useSearch } from "@tanstack/react-router";
import { type Appraisal, groupByPlace, type JobStep, NOBODY, nextWorkWords } from "#casework";
import { type AppraisedCase, useAppraisal } from "../appraisal/use-appraisal.ts";
import { WaitingPage } from "../appraisal/waiting-page.tsx";
import { momentNow } from "../case/case-context.tsx";
import { CaseSheet } from "../case/case-sheet.tsx";
import { StageDone } from "../case/stage-done.tsx";
import { signStep, unsignStep } from "./step-changes.ts";
import { StepMargin } from "./step-margin.tsx";
import { StepRows } from "./step-rows.tsx";

/** Hub to arch at the corner of a step as it was read, mm; null where it was not. */
const heightAsFound = ({ held }: AppraisedCase, step: JobStep): number | null => {
  const corner = step.place?.replace(" ", "-") ?? "";
  const looks = groupByPlace(held.looks).get(`${corner}/ride-height`);
  const reading = looks?.readings.find((r) => r.quantity === "ride-height");
  return reading === undefined ? null : 1000 * reading.value;
};

/** Steps that are not signed, each with its number on the card. */
const openSteps = (steps: readonly JobStep[]): readonly string[] =>
  steps.flatMap(({ record, label, place }, i) =>
    record === null ? [`${i + 1} ${label}${place === null ? "" : `, ${place}`}`] : [],
  );

const Box = ({ appraisal }: { readonly appraisal: Appraisal }) => {
  const parts = appraisal.plan.remedies.filter((r) => r.visit === 0 && r.agreed).flatMap((r) => r.remedy.parts);
  const { hardware } = appraisal.jobCard;
  return (
    <section className="job-box">
      <h2>In the box before the car goes up</h2>
      {parts.length + hardware.length === 0 ? <p className="label">No part is on file for this work.</p> : null}
      <ul>
        {parts.map((part) => (
          <li key={part.id}>
            {part.count} x {part.label}{" "}
            <span className="note">{part.id.slice(part.id.indexOf("@") + 1).replace("-", " ")}</span>
          </li>
        ))}
        {hardware.map((h) => (
          <li key={h.item}>
            {h.must > 0 ? `${h.must} x ${h.label}, new` : h.label}
            {h.may > 0 ? <span className="note"> {h.may} more at hand if seized</span> : null}
          </li>
        ))}
      </ul>
    </section>
  );
};

const NothingSelected = ({ appraisal }: { readonly appraisal: Appraisal }) => {
  const { steps, done } = appraisal.jobCard;
  const open = steps.filter((s) => s.record === null);
  if (steps.length === 0)
    return (
      <>
        <h2 className="heading">The card is empty</h2>
        <p className="margin-lead">Nothing is to be signed for this visit.</p>
      </>
    );
  return (
    <>
      <h2 className="heading">
        {open.length === 0 ? "Every step is signed" : `${open.length} of ${steps.length} steps open`}
      </h2>
      <p className="margin-lead">
        {done === 0
          ? "Tick a step when it is done; it is signed with your name and the time. A step opens to torque, support and cautions."
          : open.length === 0
            ? "The hand-over checks what is left."
            : `Next: ${open[0]?.label ?? ""}.`}
      </p>
    </>
  );
};

interface NothingAgreedProps {
  readonly visitId: string;
  readonly of: AppraisedCase;
  readonly appraisal: Appraisal;
}

const NothingAgreed = ({ visitId, of, appraisal }: NothingAgreedProps) => (
  <div className="empty-place">
    <h2 className="empty-heading">No step yet</h2>
    <p className="margin-lead">
      {nextWorkWords(appraisal.plan, of.record.rates.currency)} Steps come from the remedies the owner agrees to for
      now.{" "}
      <Link to="/cases/$visit/plan" params={{ visit: visitId }} className="case-link">
        {appraisal.plan.remedies.some(({ visit }) => visit === 0) ? "Agree on the plan" : "See the plan"}
      </Link>
    </p>
  </div>
);

const JobCardSheet = ({ of, appraisal }: { readonly of: AppraisedCase; readonly appraisal: Appraisal }) => {
  const { step: selected = null } = useSearch({ from: "/cases/$visit/job-card" });
  const navigate = useNavigate({ from: "/cases/$visit/job-card" });
  const { change, who, visitId } = of.held;
  const { steps } = appraisal.jobCard;
  const chosen = steps.find((s) => s.id === selected) ?? null;
  const select = (step: string) => void navigate({ search: { step }, replace: true });
  const sign = (step: JobStep, hubToArch: number | null) =>
    change("job-card", (card) =>
      signStep(card, { step: step.id, doneBy: who, at: momentNow(), hubToArch, torqueNm: null, note: null }),
    );
  const unsign = (step: JobStep) => change("job-card", (card) => unsignStep(card, step.id));
  const tick = (step: JobStep) => {
    if (step.record !== null) unsign(step);
    else if (step.needsRideHeight || who === NOBODY) select(step.id);
    else sign(step, null);
  };
  return (
    <CaseSheet
      stage="job-card"
      waiting={of.waiting}
      marks={appraisal.stages}
      subject={selected}
      margin={
        <>
          {chosen === null ? (
            <NothingSelected appraisal={appraisal} />
          ) : (
            <StepMargin
              step={chosen}
              isNamed={who !== NOBODY}
              heightAsFound={heightAsFound(of, chosen)}
              onSign={(height) => sign(chosen, height)}
              onUnsign={() => unsign(chosen)}
            />
          )}
          {steps.length === 0 ? null : <StageDone stage="job-card" open={openSteps(steps)} />}
        </>
      }
    >
      {steps.length === 0 ? (
        <NothingAgreed visitId={visitId} of={of} appraisal={appraisal} />
      ) : (
        <div className="job-page">
          <h2>
            {appraisal.jobCard.done} of {steps.length} steps signed
          </h2>
          <StepRows steps={steps} selected={selected} onSelect={select} onTick={tick} />
          <Box appraisal={appraisal} />
        </div>
      )}
    </CaseSheet>
  );
};

/** Job card: the steps of what was agreed to, in their order, each ticked with who and when. */
export const JobCardPage = () => {
  const of = useAppraisal();
  if (of.appraisal === null) return <WaitingPage stage="job-card" of={of} />;
  return <JobCardSheet of={of} appraisal={of.appraisal} />;
};
