import { Link } from "@tanstack/react-router";
import { Cautions } from "../shell/cautions.tsx";
import { FindingsList } from "../shell/findings-list.tsx";
import { MarginSection } from "../shell/margin-section.tsx";
import type { ShakeState } from "./use-shake.ts";

/** What a bush without its fluid does to the car, in the sentence of the computation, or why there is none. */
export const ShakeSentence = ({ state: { answer, ended } }: { readonly state: ShakeState }) => {
  if (answer === null) return ended === null ? "Being computed." : "The computation was ended before it had an answer.";
  return "findings" in answer ? <FindingsList findings={answer.findings} /> : answer.shake.sentence;
};

/** Why nobody sees it, how sure the sentence is, and where to see the curve. */
export const ShakeDetails = ({
  familyId,
  state: { answer },
}: {
  readonly familyId: string;
  readonly state: ShakeState;
}) => {
  if (answer === null || "findings" in answer) return null;
  const { hidden, howSure, cautions } = answer.shake;
  return (
    <>
      <MarginSection title="Why nobody sees it">{hidden}</MarginSection>
      <MarginSection title="How sure">{howSure}</MarginSection>
      <p className="margin-links">
        <Link to="/families/$familyId/geometry" params={{ familyId }} search={(last) => last}>
          See the curve
        </Link>
      </p>
      <Cautions cautions={cautions} />
    </>
  );
};
