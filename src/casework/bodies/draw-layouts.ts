import { type LayoutElasticity, scaleRate } from "#engines/linkage";
import { normalFrom, seededRandom } from "#numeric";
import type { BodyLayout } from "#vehicle";
import type { BodiesFile } from "../bodies.ts";

const SEED = 20_261_130;
/** Layouts drawn for the bands of forces and of what a hand moves. */
export const LAYOUT_DRAWS = 40;

/** One layout as it may be, and a number from 0 to 1 that says where in its range a fault is. */
export interface DrawnLayout {
  readonly layout: BodyLayout;
  readonly elasticity: LayoutElasticity;
  readonly share: number;
}

/**
 * Layouts drawn with a fixed seed: every point by its standard deviation (points of equal coordinates together), every rubber's
 * rates by a factor with theirs.
 */
export function drawLayouts({ layout, elasticity, sd, rateSd }: BodiesFile): readonly DrawnLayout[] {
  const random = seededRandom(SEED);
  const normal = normalFrom(random);
  return Array.from({ length: LAYOUT_DRAWS }, () => {
    const moved = new Map<string, readonly [number, number, number]>();
    const points = Object.entries(layout.points).map(([name, at]) => {
      const key = at.join();
      const known = moved.get(key) ?? [at[0] + sd[0] * normal(), at[1] + sd[1] * normal(), at[2] + sd[2] * normal()];
      moved.set(key, known);
      return [name, known] as const;
    });
    const rubber = elasticity.rubber.map((one) => {
      const by = Math.exp((rateSd[one.end === null ? one.part : `${one.part}.${one.end}`] ?? 0) * normal());
      return { ...one, rate: scaleRate(one.rate, by) };
    });
    return {
      layout: { ...layout, points: Object.fromEntries(points) },
      elasticity: { ...elasticity, rubber },
      share: random(),
    };
  });
}
