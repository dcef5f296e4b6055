import { Link } from "@tanstack/react-router";
import type { ReactNode } from "react";
import { type Stage, stageWords } from "#casework";
import { useCase } from "./case-context.tsx";
import { CaseSheet } from "./case-sheet.tsx";

interface LaterStagePageProps {
  readonly stage: Stage;
  /** What does the work until then. */
  readonly meanwhile: ReactNode;
  /** What will be here, in one plain line each. */
  readonly willBe: readonly { readonly name: string; readonly says: string }[];
}

/** A step of the job that has no page yet: its place is there and says what will be here. */
export const LaterStagePage = ({ stage, meanwhile, willBe }: LaterStagePageProps) => (
  <CaseSheet
    stage={stage}
    margin={
      <>
        <h2 className="heading">Until then</h2>
        <p className="margin-lead">The job goes on without {stageWords[stage]}: no step waits for it.</p>
        <div className="meanwhile">{meanwhile}</div>
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

const WithoutOptions = () => {
  const { visitId, family } = useCase();
  return (
    <>
      <p>
        <Link to="/cases/$visit/plan" params={{ visit: visitId }}>
          Plan
        </Link>
        : each remedy at each visit, with what it costs to do it then or later.
      </p>
      {family === null ? null : (
        <p>
          <Link to="/families/$familyId/geometry" params={{ familyId: family.family.id }}>
            Geometry
          </Link>
          : what a firmer bush does beside a sound and a torn one.
        </p>
      )}
    </>
  );
};

/** Options of one car, before they exist. */
export const OptionsPage = () => (
  <LaterStagePage
    stage="options"
    meanwhile={<WithoutOptions />}
    willBe={[
      { name: "Sets of changes", says: "side by side, each with what it does to the car" },
      { name: "Order of changes", says: "which first, and what that decides for the next" },
    ]}
  />
);
