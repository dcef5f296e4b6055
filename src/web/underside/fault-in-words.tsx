import { Link } from "@tanstack/react-router";
import type { FaultQuestion } from "#casework";
import { conditionPathWords } from "../effect/condition-path-words.ts";
import { PrintSheet } from "../effect/print-sheet.tsx";
import type { EffectState } from "../effect/use-fault-effect.ts";
import { Cautions } from "../shell/cautions.tsx";
import { FindingsList } from "../shell/findings-list.tsx";
import { MarginSection } from "../shell/margin-section.tsx";

interface FaultInWordsProps {
  readonly familyId: string;
  readonly question: FaultQuestion;
  readonly effect: EffectState;
}

/** What the marked fault does to the car, in the sentence of the computation, and where to go on from there. */
export const FaultInWords = ({ familyId, question, effect }: FaultInWordsProps) => {
  const { answer } = effect;
  if (answer === null) {
    return (
      <MarginSection title="What it does">
        {effect.ended === null ? "Being computed." : "The computation was ended before it had an answer."}
      </MarginSection>
    );
  }
  if ("findings" in answer) return <FindingsList findings={answer.findings} nameOf={conditionPathWords} />;
  const { sentence, howSure, cautions } = answer.effect;
  return (
    <>
      <MarginSection title="What it does">{sentence}</MarginSection>
      <MarginSection title="How sure">{howSure}</MarginSection>
      <p className="margin-links">
        <Link to="/families/$familyId/geometry" params={{ familyId }} search={(last) => last}>
          See the curve
        </Link>
        <PrintSheet familyId={familyId} question={question} />
      </p>
      <Cautions cautions={cautions} />
    </>
  );
};
