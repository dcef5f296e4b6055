import { Link } from "@tanstack/react-router";
import { useCase } from "../case/case-context.tsx";
import { CaseSheet } from "../case/case-sheet.tsx";

/** The underside of a car whose car line is not chosen yet: offers the one next thing. */
export const NoFamilyPage = () => {
  const { visitId, familyComing } = useCase();
  return (
    <CaseSheet
      stage="underside"
      waiting={familyComing ? { doing: "Reading the car line" } : null}
      margin={
        <>
          <h2 className="heading">{familyComing ? "Being read" : "Which car line is it?"}</h2>
          <p className="margin-lead">
            The drawing and the list of places come from the car line. Two silhouettes are enough for it.
          </p>
          <p className="margin-links">
            <Link to="/cases/$visit/car" params={{ visit: visitId }} className="press">
              Choose it
            </Link>
          </p>
        </>
      }
    >
      <div className="empty-place">
        <svg viewBox="0 0 220 120" className="empty-drawing" aria-hidden="true">
          <path
            d="M20 20h34v80H20zM166 20h34v80h-34zM54 60H166"
            fill="none"
            stroke="var(--ink3)"
            strokeDasharray="6 4"
          />
        </svg>
        <p className="lead">{familyComing ? "" : "Nothing can be drawn before its car line is chosen."}</p>
      </div>
    </CaseSheet>
  );
};
