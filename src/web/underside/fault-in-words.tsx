import { Link } from "@tanstack/react-router";
import type { FaultQuestion } from "#casework";
import type { Family } from "../car.ts";
import { AskUsual } from "../effect/ask-usual.tsx";
import { conditionPathWords } from "../effect/condition-path-words.ts";
import { settleWords } from "../effect/figure-line.tsx";
import { PrintSheet } from "../effect/print-sheet.tsx";
import type { EffectState } from "../effect/use-fault-effect.ts";
import { Cautions } from "../shell/cautions.tsx";
import { FindingsList } from "../shell/findings-list.tsx";
import { MarginSection } from "../shell/margin-section.tsx";

/** What the marked fault does to the car, in the sentence of the computation, or why there is none. */
export const FaultSentence = ({ effect: { answer, ended } }: { readonly effect: EffectState }) => {
  if (answer === null) return ended === null ? "Being computed." : "The computation was ended before it had an answer.";
  if ("effect" in answer) return answer.effect.sentence;
  return (
    <>
      <FindingsList findings={answer.findings} nameOf={conditionPathWords} />
      <AskUsual findings={answer.findings} />
    </>
  );
};

/** The readings that would settle a sign that is not sure; nothing where it is. */
export const FaultSettled = ({ effect: { answer } }: { readonly effect: EffectState }) =>
  answer === null || "findings" in answer || answer.effect.headline.signSure ? null : (
    <p className="margin-notice">{settleWords(answer.effect.headline)}</p>
  );

interface FaultDetailsProps {
  readonly family: Family;
  readonly question: FaultQuestion;
  readonly effect: EffectState;
}

/** How sure the sentence is, where to go on from there, and what to take care of. */
export const FaultDetails = ({ family, question, effect: { answer } }: FaultDetailsProps) => {
  if (answer === null || "findings" in answer) return null;
  const { howSure, narrows, cautions } = answer.effect;
  return (
    <>
      <MarginSection title="How sure">{howSure}</MarginSection>
      {narrows === null ? null : <MarginSection title="To know it better">{narrows}</MarginSection>}
      <p className="margin-links">
        <Link to="/families/$familyId/geometry" params={{ familyId: family.id }} search={(last) => last}>
          See the curve
        </Link>
        <PrintSheet family={family} question={question} />
      </p>
      <Cautions cautions={cautions} />
    </>
  );
};
