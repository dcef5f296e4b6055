import { between, type CarPoint, type Projection } from "../projection.ts";
import type { Mark } from "../scene.ts";
import type { Look } from "./look.ts";

export interface CoilShape {
  readonly seat: CarPoint;
  readonly top: CarPoint;
  readonly diameter: number;
  readonly wire: number;
}

/** A coil spring seen along its axis: turns step from the seat to the top; the nearest turn carries the line weight. */
export function drawCoilFromBelow(view: Projection, coil: CoilShape, look: Look): readonly Mark[] {
  const turns = 5;
  return Array.from({ length: turns }, (_, i) => 1 - i / (turns - 1)).flatMap((share) => {
    const [cx, cy] = view.spot(between(coil.seat, coil.top, share));
    const stroke = { colour: look.colour, width: share === 0 ? look.weight : 0.5 };
    return [coil.diameter / 2, coil.diameter / 2 - coil.wire].map(
      (r): Mark => ({ kind: "circle", cx, cy, r: r * view.scale, stroke }),
    );
  });
}
