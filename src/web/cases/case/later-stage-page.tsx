import type { Stage } from "#casework";
import { stageWords } from "#casework";
import { CaseSheet } from "./case-sheet.tsx";

interface LaterStagePageProps {
  readonly stage: Stage;
  /** What will be here, in one plain line each. */
  readonly willBe: readonly { readonly name: string; readonly says: string }[];
}

/** A step of the job that has no page yet: its place is there and says what will be here. */
export const LaterStagePage = ({ stage, willBe }: LaterStagePageProps) => (
  <CaseSheet
    stage={stage}
    margin={
      <>
        <h2 className="heading">{stageWords[stage]} comes later</h2>
        <p className="margin-lead">The job goes on without it: no step waits for this one.</p>
      </>
    }
  >
    <div className="empty-place">
      <h2 className="empty-heading">What will be here</h2>
      <dl className="empty-list">
        {willBe.map(({ name, says }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{says}</dd>
          </div>
        ))}
      </dl>
    </div>
  </CaseSheet>
);

/** Options of one car, before they exist. */
export const OptionsPage = () => (
  <LaterStagePage
    stage="options"
    willBe={[
      { name: "Sets of changes", says: "side by side, each with what it does to the car" },
      { name: "Order of changes", says: "which first, and what that decides for the next" },
    ]}
  />
);

/** Findings of one car, before their page exists. */
export const FindingsLaterPage = () => (
  <LaterStagePage
    stage="findings"
    willBe={[
      {
        name: "What is worn",
        says: "each reading against its limit and whose, against the other side, against its past",
      },
      { name: "What is suspected", says: "causes by their chance, and the next best look" },
    ]}
  />
);

/** Plan of one car, before its page exists. */
export const PlanLaterPage = () => (
  <LaterStagePage
    stage="plan"
    willBe={[{ name: "Now or later", says: "whole remedies over visits, shared labour once, what waiting costs" }]}
  />
);

/** Job card of one car, before its page exists. */
export const JobCardLaterPage = () => (
  <LaterStagePage
    stage="job-card"
    willBe={[{ name: "Steps in their order", says: "support, torque and stage, new fasteners, cautions" }]}
  />
);

/** Hand-over of one car, before its page exists. */
export const HandOverLaterPage = () => (
  <LaterStagePage
    stage="hand-over"
    willBe={[{ name: "As left beside as found", says: "checks that hold the car, what is taught anew, who signed" }]}
  />
);

/** Steps of the first half that are being drawn. */
export const UndersideLaterPage = () => <LaterStagePage stage="underside" willBe={[]} />;
