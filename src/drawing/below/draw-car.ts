import type { Position } from "#vehicle";
import type { Mark } from "../scene.ts";
import { drawAxleFrame, drawAxleSteering } from "./axle-parts.ts";
import type { BelowView } from "./below-view.ts";
import { cornerParts } from "./corner-parts.ts";
import type { DrawnFamily } from "./drawn-family.ts";
import type { LookOf } from "./looks.ts";
import { drawSilhouette } from "./silhouette.ts";
import { drawWholeBar } from "./whole-bar.ts";

/** Both axles from below, far parts first; an axle on rung "layout" as its silhouette. Marks and labels are not drawn here. */
export function drawCar(view: BelowView, { family, positions }: DrawnFamily, looks: LookOf): readonly Mark[] {
  return [family.front, family.rear].flatMap((axle): readonly Mark[] => {
    if (axle.rung === "layout") return drawSilhouette(view, axle);
    const sides = (["left", "right"] as const).flatMap((side) =>
      cornerParts(axle, side, positionsOnSide(positions, side))
        .filter((part) => part.name !== "bar")
        .flatMap((part) => part.draw(view, (name) => looks(axle.name, side, name))),
    );
    return [
      ...drawAxleFrame(view, axle),
      ...drawAxleSteering(view, axle, (part) => looks(axle.name, null, part)),
      ...sides,
      ...drawWholeBar(view, axle, looks(axle.name, null, "bar")),
    ];
  });
}

const positionsOnSide = (positions: readonly Position[], side: "left" | "right"): readonly Position[] =>
  positions.filter((position) => position.side === side);
