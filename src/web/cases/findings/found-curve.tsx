import { useCallback } from "react";
import { type AppraisedFinding, type FaultEffect, formatFigure, type Shake } from "#casework";
import { drawCurves, drawShake } from "#drawing";
import { FittedScene, type SceneRoom } from "../../scene/fitted-scene.tsx";

const shakeHeight = () => 320;
const curvesHeight = () => 440;

const ShakeCurve = ({ shake }: { readonly shake: Shake }) => {
  const draw = useCallback((room: SceneRoom) => drawShake(shake, room), [shake]);
  return (
    <div className="found-plot" style={{ height: shakeHeight() }}>
      <FittedScene draw={draw} leastHeight={shakeHeight} />
    </div>
  );
};

const EffectCurves = ({ effect }: { readonly effect: FaultEffect }) => {
  const draw = useCallback((room: SceneRoom) => drawCurves(effect, { ...room, format: formatFigure }), [effect]);
  return (
    <div className="found-plot" style={{ height: curvesHeight() }}>
      <FittedScene draw={draw} leastHeight={curvesHeight} />
    </div>
  );
};

/** What the selected fault does, drawn: a torn or loose joint over travel, a bush without its fluid over the road speed. */
export const FoundCurve = ({ finding }: { readonly finding: AppraisedFinding | undefined }) =>
  finding === undefined || (finding.shake === null && finding.effect === null) ? null : (
    <section className="found-curve">
      <h2>What it does</h2>
      {finding.shake === null ? null : <ShakeCurve shake={finding.shake} />}
      {finding.effect === null ? null : <EffectCurves effect={finding.effect} />}
    </section>
  );
