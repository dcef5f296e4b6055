import { Link } from "@tanstack/react-router";
import {
  type AppraisedFinding,
  type CarRemedy,
  type FaultEffect,
  findReadingPlace,
  NOT_KNOWN,
  type Shake,
} from "#casework";
import { positionName } from "#drawing";
import type { Family } from "../../car.ts";
import { FigureLine } from "../../effect/figure-line.tsx";
import { Headline } from "../../geometry/headline.tsx";
import { MarginSection } from "../../shell/margin-section.tsx";
import { GradeLine } from "../appraisal/grade-words.tsx";
import { recorderWords } from "../case/recorder.ts";
import { PlacePhotos } from "../looks/place-photos.tsx";
import { ReasonLine } from "./reason-line.tsx";
import { WhatItCanMean } from "./what-it-can-mean.tsx";

/** What the fault does to the car: the sentence, and every figure of it, each opening. */
const EffectFacts = ({ effect }: { readonly effect: FaultEffect }) => (
  <>
    <h3 className="margin-title">What it does</h3>
    <p className="margin-lead effect-sentence">{effect.sentence}</p>
    <Headline effect={effect} />
    <MarginSection title="Whose limit">{effect.judgedAgainst}</MarginSection>
    <MarginSection title="How sure">{effect.howSure}</MarginSection>
    {effect.narrows === null ? null : <MarginSection title="To know it better">{effect.narrows}</MarginSection>}
    <MarginSection title="What else moves">{effect.whatElse}</MarginSection>
    <MarginSection title="Computed so">{effect.computedSo}</MarginSection>
    <h3 className="margin-title">All figures; each opens</h3>
    {effect.figures.map((figure) => (
      <FigureLine key={figure.key} figure={figure} effect={effect} />
    ))}
  </>
);

/** What a bush without its fluid does: the sentence of its family's page, why nobody sees it, and every figure. */
const ShakeFacts = ({ shake }: { readonly shake: Shake }) => (
  <>
    <h3 className="margin-title">What it does</h3>
    <p className="margin-lead shake-sentence">{shake.sentence}</p>
    <MarginSection title="Why nobody sees it">{shake.hidden}</MarginSection>
    <MarginSection title="Whose limit">{shake.judgedAgainst}</MarginSection>
    <MarginSection title="How sure">{shake.howSure}</MarginSection>
    <MarginSection title="What else">{shake.whatElse}</MarginSection>
    <MarginSection title="Computed so">{shake.computedSo}</MarginSection>
    <h3 className="margin-title">All figures; each opens</h3>
    {shake.figures.map((figure) => (
      <FigureLine key={figure.key} figure={figure} effect={shake} />
    ))}
  </>
);

/** Photos and notes that were taken at a place. */
const Attached = ({ finding }: { readonly finding: AppraisedFinding }) => {
  const looks = finding.looks?.looks ?? [];
  const photos = [...new Set(looks.flatMap(({ photo }) => photo ?? []))];
  const notes = looks.filter(({ note }) => note !== null);
  if (photos.length === 0 && notes.length === 0) return null;
  return (
    <div className="finding-attached">
      <PlacePhotos photos={photos} />
      {notes.map(({ id, note, who }) => (
        <p key={id} className="label">
          “{note}” <span className="note">{recorderWords(who)}</span>
        </p>
      ))}
    </div>
  );
};

interface FindingMarginProps {
  readonly visitId: string;
  readonly family: Family;
  readonly finding: AppraisedFinding;
  /** The remedy that cures it; null where none is on file. */
  readonly remedy: CarRemedy | null;
}

/** Explains one finding: what was found, what it was held against and whose, how sure, what it does, what cures it. */
export const FindingMargin = ({ visitId, family, finding, remedy }: FindingMarginProps) => (
  <>
    <div className="margin-top">
      {finding.notKnown ? (
        <span className="margin-grade">{NOT_KNOWN}</span>
      ) : (
        <GradeLine grade={finding.grade} close={finding.closeToCall} />
      )}
    </div>
    <h2 className="heading">{positionName(family, finding.place)}</h2>
    <p className="margin-lead">{finding.found}</p>
    <Attached finding={finding} />
    {finding.reasons.length === 0 ? null : <h3 className="margin-title">Why; each reading opens</h3>}
    {finding.reasons.map((reason) => (
      <ReasonLine key={reason.text} reason={reason} finding={finding} />
    ))}
    {finding.howSure === "" || finding.effect !== null || finding.shake !== null ? null : (
      <MarginSection title="How sure">{finding.howSure}</MarginSection>
    )}
    {finding.caveat === null ? null : <p className="margin-notice">{finding.caveat}</p>}
    {finding.means.length === 0 && finding.advice === null ? null : <WhatItCanMean finding={finding} />}
    {finding.noShake === null ? null : <MarginSection title="What it does">{finding.noShake}</MarginSection>}
    {finding.shake === null ? null : <ShakeFacts shake={finding.shake} />}
    {finding.effect === null ? null : <EffectFacts effect={finding.effect} />}
    <MarginSection title="What cures it">{remedy === null ? "No remedy on file." : remedy.label}</MarginSection>
    <p className="margin-links">
      <Link to="/cases/$visit/plan" params={{ visit: visitId }}>
        See the plan
      </Link>
      {findReadingPlace(finding.place) === null ? (
        <Link to="/cases/$visit/underside" params={{ visit: visitId }}>
          Look again
        </Link>
      ) : (
        <Link to="/cases/$visit/readings" params={{ visit: visitId }}>
          Read again
        </Link>
      )}
    </p>
  </>
);
