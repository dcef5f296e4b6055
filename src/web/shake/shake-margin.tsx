import { formatBand, formatFigure } from "#casework";
import { fullName, gradeWords } from "#drawing";
import type { Family, Position } from "../car.ts";
import { byQuery } from "../cases/case/recorder.ts";
import { FigureFacts } from "../effect/figure-facts.tsx";
import { FigureLine, settleWords } from "../effect/figure-line.tsx";
import { rungWords } from "../effect/rung-words.ts";
import { PrintButton } from "../printing/print-button.tsx";
import { GradeMark } from "../scene/grade-mark.tsx";
import { printAskedSheet } from "../server/print-asked-sheet.ts";
import { Cautions } from "../shell/cautions.tsx";
import { FindingsList } from "../shell/findings-list.tsx";
import { MarginSection } from "../shell/margin-section.tsx";
import { gradeOfMark } from "../underside/position-mark.ts";
import { FLUID_GONE_LOOKS } from "../underside/torn-looks.ts";
import { BushAlone } from "./bush-alone.tsx";
import type { ShakeState } from "./use-shake.ts";

interface ShakeMarginProps {
  readonly family: Family;
  readonly position: Position;
  readonly state: ShakeState;
  /** Said under the heading: whether it is only looked at. */
  readonly lookedAt: React.ReactNode;
}

/** What stands in the margin before there is a curve, or where there can be none. */
const NoCurve = ({ state }: { readonly state: ShakeState }) => {
  const { answer, ended } = state;
  if (answer !== null && "findings" in answer)
    return (
      <>
        <FindingsList findings={answer.findings} />
        <MarginSection title="What it looks like">{FLUID_GONE_LOOKS}</MarginSection>
      </>
    );
  return (
    <p className="margin-lead">
      {ended === null ? "Being computed." : "The computation was ended before it had an answer. Choose it anew."}
    </p>
  );
};

/** Explains a bush without its fluid: the figure, why nobody sees it, how sure, what else, computed so. */
export const ShakeMargin = ({ family, position, state, lookedAt }: ShakeMarginProps) => {
  const { answer } = state;
  const grade = gradeOfMark({ kind: "fluid-gone" }, position.kind);
  const shake = answer !== null && "shake" in answer ? answer.shake : null;
  return (
    <>
      <div className="margin-top">
        <span className="margin-grade">
          <GradeMark grade={grade} /> {grade === null ? "" : `${gradeWords[grade]}: `}fluid gone
        </span>
      </div>
      <h2 className="heading">Shake under light braking</h2>
      <p className="label">{fullName(position)}</p>
      {lookedAt}
      {shake === null ? (
        <NoCurve state={state} />
      ) : (
        <>
          {shake.headline.signSure ? (
            <>
              <p className="margin-figure">
                <span className="figure-huge">{formatFigure(shake.headline).replace(" times", "×")}</span>
                <span className="unit">as far as on a sound bush</span>
              </p>
              <p className="label">{formatBand(shake.headline)} (95 %)</p>
            </>
          ) : (
            <p className="margin-notice">{settleWords(shake.headline)}</p>
          )}
          <details className="opens">
            <summary>All inputs</summary>
            <FigureFacts figure={shake.headline} basis={shake} />
          </details>
          <MarginSection title="Why nobody sees it">{shake.hidden}</MarginSection>
          <BushAlone shake={shake} />
          <MarginSection title="Whose limit">{shake.judgedAgainst}</MarginSection>
          <MarginSection title="How sure">
            {shake.howSure} Geometry {rungWords(shake.rung, shake.invented)}.
          </MarginSection>
          <MarginSection title="What else">{shake.whatElse}</MarginSection>
          <MarginSection title="Computed so">{shake.computedSo}</MarginSection>
          <p className="margin-links">
            <PrintButton
              print={() => printAskedSheet({ kind: "shake", family, question: shake.question }, byQuery())}
            />
          </p>
          <h3 className="margin-title">All figures; each opens</h3>
          {shake.figures.map((figure) => (
            <FigureLine key={figure.key} figure={figure} effect={shake} />
          ))}
          <Cautions cautions={shake.cautions} />
        </>
      )}
    </>
  );
};
