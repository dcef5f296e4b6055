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
