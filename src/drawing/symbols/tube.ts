import { capsulePath, circlePath } from "../path.ts";
import type { CarPoint, Projection } from "../projection.ts";
import type { Mark } from "../scene.ts";
import type { Look } from "./look.ts";

export interface Eye {
  readonly at: CarPoint;
  /** Metres. */
  readonly radius: number;
}

export interface TubeShape {
  /** Each run is a bent bar through its points. */
  readonly runs: readonly (readonly CarPoint[])[];
  /** Metres. */
  readonly width: number;
  readonly eyes?: readonly Eye[];
}

/** Outlines of all bars and eyes, drawn `inset` page units inside their edge. */
function outlines(view: Projection, shape: TubeShape, inset: number): string {
  const radius = Math.max((shape.width * view.scale) / 2 - inset, 0.2);
  const bars = shape.runs.flatMap((run) =>
    run.slice(1).map((to, i) => capsulePath(view.spot(run[i] ?? to), view.spot(to), radius)),
  );
  const eyes = (shape.eyes ?? []).map((eye) =>
    circlePath(view.spot(eye.at), Math.max(eye.radius * view.scale - inset, 0.3)),
  );
  return [...bars, ...eyes].join("");
}

/**
 * A link or any tube: bars and eyes united into one outline. The ink lies under a paper shape that is smaller by the
 * line weight, so where bars meet no line is left between them.
 */
export function drawTube(view: Projection, shape: TubeShape, look: Look): readonly Mark[] {
  const inner = outlines(view, shape, look.weight);
  const marks: Mark[] = [
    { kind: "path", d: outlines(view, shape, 0), fill: look.colour },
    { kind: "path", d: inner, fill: "paper" },
  ];
  if (look.unseen) marks.push({ kind: "path", d: inner, fill: "hatch-unseen" });
  return marks;
}
