import type { Target } from "#drawing";

export type Direction = "ArrowLeft" | "ArrowRight" | "ArrowUp" | "ArrowDown";

const UNIT: Record<Direction, readonly [number, number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
/** How much a step aside counts against a step ahead; common practice, no source. */
const ASIDE = 2;

export const isDirection = (key: string): key is Direction => Object.hasOwn(UNIT, key);

const middle = (target: Target): readonly [number, number] => [
  target.x + target.width / 2,
  target.y + target.height / 2,
];

/** The next target from one toward a direction of the page; null where there is none. */
export const nearestTarget = (targets: readonly Target[], from: Target, direction: Direction): Target | null => {
  const [ux, uy] = UNIT[direction];
  const [fx, fy] = middle(from);
  let best: Target | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const target of targets) {
    const [x, y] = middle(target);
    const ahead = (x - fx) * ux + (y - fy) * uy;
    const aside = Math.abs((x - fx) * uy) + Math.abs((y - fy) * ux);
    const cost = ahead + ASIDE * aside;
    if (target.id !== from.id && ahead > 1 && cost < least) {
      best = target;
      least = cost;
    }
  }
  return best;
};
