import type { ReactNode } from "react";
import { type FaultEffect, formatEffectCsv, type RubberFault } from "#casework";
import { fullName, gradeWords, groupOf, groupWords } from "#drawing";
import type { Position } from "../car.ts";
import { FigureLine } from "../effect/figure-line.tsx";
import { PrintSheet } from "../effect/print-sheet.tsx";
import { CsvLink } from "../printing/csv-link.tsx";
import { GradeMark } from "../scene/grade-mark.tsx";
import { Cautions } from "../shell/cautions.tsx";
import { MarginSection } from "../shell/margin-section.tsx";
import {
  FIRMER_FACTOR,
  gradeOfMark,
  isSameMark,
  type PartFault,
  type PositionMark,
  partFaultOfMark,
  wordsOfMark,
} from "../underside/position-mark.ts";
import { possibleFaultsAt } from "../underside/rubber-at.ts";
import { Headline } from "./headline.tsx";
import { PlaceLinks } from "./place-links.tsx";
import type { Geometry } from "./use-geometry.ts";

interface SubjectProps {
  readonly geometry: Geometry;
  readonly position: Position;
  readonly shown: RubberFault;
}

const otherWords = (count: number): string =>
  count === 1
    ? "The joint can also come to rest in one other place; the one shown lies on the side of the healthy preload."
    : `The joint can also come to rest in ${count} other places; the one shown lies on the side of the healthy preload.`;

const MarginTop = ({ position, shown }: SubjectProps) => {
  const grade = gradeOfMark(shown, position.kind);
  const words = shown.kind === "firmer" || grade === null ? null : gradeWords[grade];
  return (
    <div className="margin-top">
      <span className="margin-grade">
        <GradeMark grade={grade} /> {[words, wordsOfMark(shown)].filter((part) => part !== null).join(": ")}
      </span>
      <span className="label">{groupWords(groupOf(position))}</span>
    </div>
  );
};

const markWords = (mark: PositionMark | null, kind: Position["kind"]): string => {
  if (mark === null) return "nothing";
  const grade = gradeOfMark(mark, kind);
  return [wordsOfMark(mark), grade === null ? null : gradeWords[grade].toLowerCase()]
    .filter((part) => part !== null)
    .join(", ");
};

/** Said where the sheet looks at something else than what is marked; nothing is marked by looking. */
export const OnlyLookedAt = ({
  geometry,
  position,
  shown,
}: Pick<SubjectProps, "geometry" | "position"> & { readonly shown: PartFault }) => {
  const { mark } = geometry;
  if (mark !== null && isSameMark(mark, shown)) return null;
  return (
    <>
      <p className="margin-notice">
        Only looked at. Marked on the Underside: {markWords(mark, position.kind)}. It stays so.
      </p>
      <p className="margin-links">
        {partFaultOfMark(mark) === null ? null : (
          <button type="button" className="link" onClick={() => geometry.lookAs(null)}>
            Back to what is marked
          </button>
        )}
        <button type="button" className="link" onClick={geometry.markAsShown}>
          Mark it so
        </button>
      </p>
    </>
  );
};

interface EffectProps extends SubjectProps {
  readonly effect: FaultEffect;
}

/** What the sheet shows and the figure it is about. */
export const EffectHead = ({ effect, ...subject }: EffectProps) => {
  const { geometry, position } = subject;
  return (
    <>
      <MarginTop {...subject} />
      <h2 className="heading">{effect.headline.label}</h2>
      <p className="label">{fullName(position)}</p>
      {geometry.stranger === null ? null : <p className="margin-notice">Nothing is computed at {geometry.stranger}.</p>}
      <OnlyLookedAt {...subject} />
      <Headline effect={effect} />
    </>
  );
};

interface EffectMarginProps extends EffectProps {
  /** What is drawn besides. */
  readonly children: ReactNode;
}

/** Explains the figure: whose limit, how sure, what else moves, computed so. */
export const EffectMargin = ({ effect, geometry, position, shown, children }: EffectMarginProps) => {
  const { family, question } = geometry;
  return (
    <>
      <MarginSection title="Whose limit">{effect.judgedAgainst}</MarginSection>
      <MarginSection title="How sure">{effect.howSure}</MarginSection>
      {effect.narrows === null ? null : <MarginSection title="To know it better">{effect.narrows}</MarginSection>}
      <MarginSection title="What else moves">{effect.whatElse}</MarginSection>
      {effect.others.length === 0 ? null : (
        <MarginSection title="Other places of rest">{otherWords(effect.others.length)}</MarginSection>
      )}
      <MarginSection title="Computed so">{effect.computedSo}</MarginSection>
      <p className="margin-links">
        {question === null ? null : <PrintSheet family={family} question={question} />}
        <CsvLink text={formatEffectCsv(family, effect)} name={`${family.id}-${geometry.corner}-${shown.kind}`} />
        {shown.kind === "firmer" || !possibleFaultsAt(family, position).firmer ? null : (
          <button
            type="button"
            className="link"
            onClick={() => geometry.lookAs({ kind: "firmer", factor: FIRMER_FACTOR.usual })}
          >
            Compare a firmer one
          </button>
        )}
      </p>
      <PlaceLinks geometry={geometry} />
      {children}
      <h3 className="margin-title">All figures; each opens</h3>
      {effect.figures.map((figure) => (
        <FigureLine key={figure.key} figure={figure} effect={effect} />
      ))}
      <Cautions cautions={effect.cautions} />
    </>
  );
};
