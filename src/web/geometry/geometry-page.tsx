import { useMemo, useState } from "react";
import { useFaultEffect } from "../effect/use-fault-effect.ts";
import { FindingsList } from "../shell/findings-list.tsx";
import { Sheet } from "../shell/sheet.tsx";
import { familyTitleBlock } from "../underside/family-title-block.ts";
import { ConditionSliders } from "./condition-sliders.tsx";
import { EffectDrawing } from "./effect-drawing.tsx";
import { EffectMargin } from "./effect-margin.tsx";
import { NoGeometryPage } from "./no-geometry-page.tsx";
import { SubjectChoice } from "./subject-choice.tsx";
import { type Geometry, useGeometry } from "./use-geometry.ts";

/** On an upright tablet place, heading and figure stay in view below the drawing. */
const MARGIN_LOW = 172;

/** What stands in the margin before the first answer, or where none came. */
const NoAnswer = ({ ended }: { readonly ended: "stopped" | "broken" | null }) => (
  <>
    <h2 className="heading">{ended === null ? "Being computed" : "No answer"}</h2>
    <p className="margin-lead">
      {ended === null
        ? "Both corners are being balanced."
        : "The computation was ended before it had an answer. Move a slider to start it again."}
    </p>
  </>
);

const GeometrySheet = ({ geometry }: { readonly geometry: Geometry }) => {
  const { family, position, mark, condition, question } = geometry;
  const { answer, busy, ended, stop } = useFaultEffect(family, question);
  const effect = answer !== null && "effect" in answer ? answer.effect : null;
  const waiting = busy ? { doing: "Balancing the corner, sound and faulty, at every height", stop } : null;
  const [scale, setScale] = useState<string | null>(null);
  const reset = geometry.resetCondition;
  const keys = useMemo(() => [{ key: "0", does: "back to ride height and 2 kN of braking", run: reset }], [reset]);
  return (
    <Sheet
      name={family.name}
      sub={`geometry, ${position.axle} ${position.side}`}
      place="Families"
      waiting={waiting}
      subject={null}
      marginLow={MARGIN_LOW}
      keys={keys}
      titleBlock={familyTitleBlock(family, {
        title: `Geometry, ${position.axle} ${position.side}`,
        sheet: "3 of 3",
        scale,
      })}
      margin={
        effect !== null ? (
          <EffectMargin geometry={geometry} effect={effect} />
        ) : answer !== null && "findings" in answer ? (
          <FindingsList findings={answer.findings} />
        ) : (
          <NoAnswer ended={ended} />
        )
      }
    >
      <div className="geometry">
        <SubjectChoice
          family={family}
          positions={geometry.positions}
          position={position}
          mark={mark}
          onPosition={geometry.choosePosition}
          onMark={geometry.chooseMark}
        />
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be within reach of the keyboard */}
        <section className="geometry-drawing" aria-label="Views and curves" tabIndex={0}>
          {effect === null ? null : <EffectDrawing family={family} effect={effect} onScale={setScale} />}
        </section>
        <div className="geometry-sliders">
          <ConditionSliders axle={family[position.axle]} condition={condition} onChange={geometry.setCondition} />
        </div>
      </div>
    </Sheet>
  );
};

/** Geometry: one rubber, sound against faulty, in three views and as curves over travel. */
export const GeometryPage = () => {
  const geometry = useGeometry();
  return geometry === null ? <NoGeometryPage /> : <GeometrySheet geometry={geometry} />;
};
