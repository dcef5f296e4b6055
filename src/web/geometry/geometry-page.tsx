import { useMemo, useState } from "react";
import type { TravelSheetQuestion } from "#casework";
import type { Finding } from "#contract";
import { AskUsual } from "../effect/ask-usual.tsx";
import { conditionPathWords } from "../effect/condition-path-words.ts";
import { type EffectState, useFaultEffect } from "../effect/use-fault-effect.ts";
import { ShakeDrawing } from "../shake/shake-drawing.tsx";
import { ShakeMargin } from "../shake/shake-margin.tsx";
import { ShakeSliders } from "../shake/shake-sliders.tsx";
import { type ShakeState, useShake } from "../shake/use-shake.ts";
import { FindingsList } from "../shell/findings-list.tsx";
import { Sheet } from "../shell/sheet.tsx";
import type { TravelAnswer } from "../travel/travel-worker.ts";
import { useTravelSheet } from "../travel/use-travel-sheet.ts";
import { familyTitleBlock } from "../underside/family-title-block.ts";
import type { NewestAnswer } from "../worker/use-newest-answer.ts";
import { ConditionSliders } from "./condition-sliders.tsx";
import { type DrawnLines, EffectDrawing } from "./effect-drawing.tsx";
import { EffectHead, EffectMargin, OnlyLookedAt } from "./effect-margin.tsx";
import { HowFirm } from "./how-firm.tsx";
import { LinesMargin } from "./lines-margin.tsx";
import { NoAnswer } from "./no-answer.tsx";
import { NoGeometryPage } from "./no-geometry-page.tsx";
import { NotComputed } from "./not-computed.tsx";
import { SLIDER_KEYS } from "./slider-keys.ts";
import { SoundCornerPage } from "./sound-corner.tsx";
import { SubjectChoice } from "./subject-choice.tsx";
import { type Geometry, useGeometry } from "./use-geometry.ts";

/** On an upright tablet place, heading and figure stay in view below the drawing. */
const MARGIN_LOW = 172;

/** All lines as they were last computed, perhaps for another travel or force; null where none, or others, are drawn. */
const linesOf = ({ lines, family }: Geometry, { answer, asked }: MarginOfProps["besides"]): DrawnLines | null => {
  const { question } = lines;
  if (question === null || answer === null || asked === null || "findings" in answer) return null;
  const same = asked.family.id === family.id && asked.corner === question.corner;
  return same && JSON.stringify(asked.subjects) === JSON.stringify(question.subjects)
    ? { sheet: answer.sheet, asked }
    : null;
};

/** What stands in the margin where the question cannot be computed; the drawing says why. */
const NoFigure = ({ findings }: { readonly findings: readonly Finding[] }) => (
  <>
    <h2 className="heading">No figure</h2>
    <p className="margin-lead">What is asked here cannot be computed. The drawing says what came and what is needed.</p>
    <AskUsual findings={findings} />
  </>
);

interface MarginOfProps {
  readonly geometry: Geometry;
  readonly effect: EffectState;
  readonly shake: ShakeState;
  readonly besides: NewestAnswer<TravelSheetQuestion, TravelAnswer>;
}

/** What the states drawn besides do; nothing where none is. */
const BesidesMargin = ({ geometry, besides }: Pick<MarginOfProps, "geometry" | "besides">) => {
  const { answer, ended } = besides;
  if (geometry.lines.question === null) return null;
  if (answer === null)
    return <NoAnswer ended={ended} doing="Each state is balanced at every height." again="Choose or move anything" />;
  if ("findings" in answer) return <FindingsList findings={answer.findings} nameOf={conditionPathWords} />;
  const lines = linesOf(geometry, besides);
  return lines === null ? null : <LinesMargin lines={lines} />;
};

const MarginOf = ({ geometry, effect, shake, besides }: MarginOfProps) => {
  const { position, shown } = geometry;
  const { answer } = effect;
  if (position === null || shown === null) return null;
  if (shown.kind === "fluid-gone") {
    const subject = { geometry, position, shown };
    return (
      <ShakeMargin
        family={geometry.family}
        position={position}
        state={shake}
        lookedAt={<OnlyLookedAt {...subject} />}
      />
    );
  }
  const computed =
    answer === null || "findings" in answer ? null : { geometry, position, shown, effect: answer.effect };
  return (
    <>
      {computed !== null ? (
        <EffectHead {...computed} />
      ) : answer !== null && "findings" in answer ? (
        <NoFigure findings={answer.findings} />
      ) : (
        <NoAnswer ended={effect.ended} doing="Both corners are being balanced." again="Move a slider" />
      )}
      {/* Stands at one place of the margin whatever the answer is, so that a field keeps the keyboard while it is typed in. */}
      <HowFirm geometry={geometry} />
      {computed === null ? null : (
        <EffectMargin {...computed}>
          <BesidesMargin geometry={geometry} besides={besides} />
        </EffectMargin>
      )}
    </>
  );
};

const GeometrySheet = ({ geometry }: { readonly geometry: Geometry }) => {
  const { family, position, shown, condition, question } = geometry;
  const state = useFaultEffect(family, question);
  const { answer, busy, stop } = state;
  const effect = answer !== null && "effect" in answer ? answer.effect : null;
  const shake = useShake(family, position, shown, geometry.shakeSetting);
  const shaken = shake.answer !== null && "shake" in shake.answer ? shake.answer.shake : null;
  const besides = useTravelSheet(geometry.lines.question);
  const stopAll = () => {
    stop();
    besides.stop();
  };
  const lines = useMemo(() => linesOf(geometry, besides), [geometry, besides]);
  const wide = lines === null ? "" : "geometry-lines";
  const balancing =
    busy || besides.busy
      ? { doing: "Balancing the corner, sound and as looked at, at every height", stop: stopAll }
      : null;
  const [eye, setEye] = geometry.eye;
  const [scale, setScale] = useState<string | null>(null);
  const reset = geometry.resetCondition;
  const keys = useMemo(() => [{ key: "0", does: "back to ride height and 2 kN of braking", run: reset }], [reset]);
  return (
    <Sheet
      name={family.name}
      sub={`geometry, ${geometry.corner.replace("-", " ")}`}
      place="Families"
      waiting={shake.waiting ?? balancing}
      subject={null}
      marginLow={MARGIN_LOW}
      keys={keys}
      fieldKeys={SLIDER_KEYS}
      titleBlock={familyTitleBlock(family, {
        title: `Geometry, ${geometry.corner.replace("-", " ")}`,
        sheet: "3 of 7",
        scale: effect === null ? null : scale,
      })}
      margin={<MarginOf geometry={geometry} effect={state} shake={shake} besides={besides} />}
    >
      <div className="geometry">
        <SubjectChoice geometry={geometry} />
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be within reach of the keyboard */}
        <section className={`geometry-drawing ${wide}`} aria-label="Views and curves" tabIndex={0}>
          {effect === null ? null : (
            <EffectDrawing family={family} effect={effect} lines={lines} eye={eye} setEye={setEye} onScale={setScale} />
          )}
          {answer !== null && "findings" in answer ? <NotComputed findings={answer.findings} /> : null}
          {shaken === null ? null : <ShakeDrawing shake={shaken} />}
        </section>
        {shown?.kind === "fluid-gone" ? (
          <div className="geometry-sliders">
            <ShakeSliders setting={geometry.shakeSetting} shake={shaken} onChange={geometry.setShakeSetting} />
          </div>
        ) : null}
        {question === null || position === null ? null : (
          <div className="geometry-sliders">
            <ConditionSliders axle={family[position.axle]} condition={condition} onChange={geometry.setCondition} />
          </div>
        )}
      </div>
    </Sheet>
  );
};

/** Geometry: one rubber, sound against what is marked or looked at, in three views and as curves over travel. */
export const GeometryPage = () => {
  const geometry = useGeometry();
  if (geometry === "arriving") return null;
  if (geometry.positions.length === 0) return <NoGeometryPage />;
  return geometry.shown === null ? <SoundCornerPage geometry={geometry} /> : <GeometrySheet geometry={geometry} />;
};
