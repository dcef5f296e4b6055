import type { Axle } from "#vehicle";
import type { Spot } from "../path.ts";
import type { CarPoint, Projection } from "../projection.ts";

/** The plain stretch between the axles that is left out: its ends along the car, metres, front one first. */
export interface Break {
  readonly front: number;
  readonly rear: number;
  /** Page units between the two break lines. */
  readonly gap: number;
}

/** The car from below, front up: page right is the car's left side. */
export interface BelowView extends Projection {
  readonly centreX: number;
  readonly break: Break | null;
  /** Page y of a place along the car, metres ahead of the front axle. */
  readonly y: (x: number) => number;
}

/**
 * A view from below.
 * @param frontEdge metres ahead of the front axle that lie at page y `top`
 * @param scale page units per metre
 */
export function belowView(
  centreX: number,
  top: number,
  frontEdge: number,
  scale: number,
  gap: Break | null,
): BelowView {
  const y = (x: number): number => {
    if (gap === null || x > (gap.front + gap.rear) / 2) return top + (frontEdge - x) * scale;
    return top + (frontEdge - gap.front) * scale + gap.gap + (gap.rear - x) * scale;
  };
  const spot = ([x, across]: CarPoint): Spot => [centreX + across * scale, y(x)];
  return { scale, centreX, break: gap, y, spot };
}

/** How far an axle's drawn parts reach along the car, metres: [rearmost, foremost]. */
export function reachAlong(axle: Axle): readonly [rear: number, front: number] {
  const [wheelX] = axle.wheel.centre;
  const radius = axle.wheel.freeRadius;
  const points: readonly number[] = [
    ...axle.links.flatMap((link) => [link.inner.at[0], link.outer.at[0]]),
    ...axle.subframe.flat().map(([x]) => x),
    ...(axle.bar?.path ?? []).map(([x]) => x),
    ...(axle.trailingArm === undefined ? [] : [axle.trailingArm.bush.at[0]]),
    ...axle.subframeMounts.map(([x]) => x),
  ];
  const margin = 0.03;
  return [
    Math.min(wheelX - radius, ...points.map((x) => x - margin)),
    Math.max(wheelX + radius, ...points.map((x) => x + margin)),
  ];
}

/** Half the width of what is drawn of an axle, metres: to the outer side of the tyre. */
export function halfWidth(axle: Axle): number {
  return axle.wheel.centre[1] + axle.wheel.tyreWidth / 2 + 0.04;
}
