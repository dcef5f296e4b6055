import { formatForce } from "#casework";
import { MarginSection } from "../shell/margin-section.tsx";

interface StateForcesProps {
  /** Newtons; what does not press stands as nought. */
  readonly state: {
    readonly spring: number;
    readonly stop: number;
    readonly under: number;
    readonly wheelLoad: number;
  };
}

/** What pushes and pulls at a corner in the state it is held in. */
export const StateForces = ({ state: { spring, stop, under, wheelLoad } }: StateForcesProps) => (
  <MarginSection title="Forces in this state">
    Spring {formatForce(spring)}
    {stop > 0 ? `, droop stop ${formatForce(stop)}` : ""}
    {under > 0 ? `, support ${formatForce(under)}` : ""}
    {wheelLoad > 0 ? `, ground ${formatForce(wheelLoad)}` : ""}.
  </MarginSection>
);
