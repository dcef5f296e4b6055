import { between, type CarPoint, type Projection } from "../projection.ts";
import type { Mark } from "../scene.ts";
import type { Look } from "./look.ts";
import { drawTube } from "./tube.ts";

export interface DamperShape {
  readonly foot: CarPoint;
  readonly top: CarPoint;
  readonly tubeDiameter: number;
  /** Radius of the eye at the foot; 0 where the tube ends in the knuckle. */
  readonly eye: number;
}

/** A damper: rod at the top, tube over the lower part, eye at the foot. */
export function drawDamper(view: Projection, damper: DamperShape, look: Look): readonly Mark[] {
  const at = (share: number) => between(damper.foot, damper.top, share);
  const eye =
    damper.eye > 0 ? drawTube(view, { runs: [], width: 0, eyes: [{ at: damper.foot, radius: damper.eye }] }, look) : [];
  return [
    ...drawTube(view, { runs: [[at(0.55), damper.top]], width: damper.tubeDiameter * 0.4 }, { ...look, unseen: false }),
    ...drawTube(view, { runs: [[at(0.06), at(0.6)]], width: damper.tubeDiameter }, look),
    ...eye,
  ];
}
