import { Link } from "@tanstack/react-router";
import type { FaultEffect } from "#casework";
import { fullName, gradeWords, groupOf, groupWords } from "#drawing";
import { RUNG_WORDS } from "../effect/figure-facts.tsx";
import { FigureLine } from "../effect/figure-line.tsx";
import { PrintSheet } from "../effect/print-sheet.tsx";
import { GradeMark } from "../scene/grade-mark.tsx";
import { Cautions } from "../shell/cautions.tsx";
import { MarginSection } from "../shell/margin-section.tsx";
import { FIRMER_FACTOR, gradeOfMark, wordsOfMark } from "../underside/position-mark.ts";
import { Headline } from "./headline.tsx";
import type { Geometry } from "./use-geometry.ts";

const otherWords = (count: number): string =>
  count === 1
    ? "The joint can also come to rest in one other place; the one shown lies on the side of the healthy preload."
    : `The joint can also come to rest in ${count} other places; the one shown lies on the side of the healthy preload.`;

const MarginTop = ({ geometry }: { readonly geometry: Geometry }) => {
  const grade = gradeOfMark(geometry.mark);
  return (
    <div className="margin-top">
      <span className="margin-grade">
        <GradeMark grade={grade} /> {geometry.mark.kind === "torn" ? gradeWords[grade] : wordsOfMark(geometry.mark)}
      </span>
      <span className="label">{groupWords(groupOf(geometry.position))}</span>
    </div>
  );
};

/** Explains what the sheet shows: the figure, whose limit, how sure, what else moves, computed so. */
export const EffectMargin = ({ geometry, effect }: { readonly geometry: Geometry; readonly effect: FaultEffect }) => {
  const { family, question } = geometry;
  return (
    <>
      <MarginTop geometry={geometry} />
      <h2 className="heading">{effect.headline.label}</h2>
      <p className="label">{fullName(geometry.position)}</p>
      {geometry.stranger === null ? null : (
        <p className="margin-notice">Nothing is computed at {geometry.stranger}; shown is an example in its place.</p>
      )}
      <Headline effect={effect} />
      <MarginSection title="Whose limit">{effect.judgedAgainst}</MarginSection>
      <MarginSection title="How sure">
        {effect.howSure} Geometry {RUNG_WORDS[effect.rung]}.
      </MarginSection>
      <MarginSection title="What else moves">{effect.whatElse}</MarginSection>
      {effect.others.length === 0 ? null : (
        <MarginSection title="Other places of rest">{otherWords(effect.others.length)}</MarginSection>
      )}
      <MarginSection title="Computed so">{effect.computedSo}</MarginSection>
      <p className="margin-links">
        {question === null ? null : <PrintSheet familyId={family.id} question={question} />}
        {geometry.mark.kind === "firmer" ? null : (
          <button
            type="button"
            className="link"
            onClick={() => geometry.chooseMark({ kind: "firmer", factor: FIRMER_FACTOR.usual })}
          >
            Compare a firmer one
          </button>
        )}
        <Link
          to="/families/$familyId/underside"
          params={{ familyId: family.id }}
          search={({ marks, at }) => ({
            ...(marks === undefined ? {} : { marks }),
            ...(at === undefined ? {} : { at }),
          })}
        >
          Underside
        </Link>
      </p>
      <h3 className="margin-title">All figures; each opens</h3>
      {effect.figures.map((figure) => (
        <FigureLine key={figure.key} figure={figure} />
      ))}
      <Cautions cautions={effect.cautions} />
    </>
  );
};
