import type { CornerGeometry } from "#engines/linkage";
import { makeRandom } from "../test/fuzz/differences.ts";
import { disturb, readCorners } from "../test/fuzz/reference-corners.ts";

/** Seed of every corner drawn here; printed with the table. */
export const SEED = 20_261_128;

/** Five-link corners: the invented rear axle of the reference with every point moved by up to 8 mm. */
export function drawCorners(count: number): readonly CornerGeometry[] {
  const corner = readCorners().find(({ name }) => name === "rear_five_link");
  if (!corner) throw new Error("the reference has no rear five-link");
  const random = makeRandom(SEED);
  return Array.from({ length: count }, () => disturb(corner.geometry, random, 0.008));
}

/** Wheel travels from -60 to 60 mm and back in steps of 2 mm, metres: neighbours are close, as under a slider. */
export const sweep: readonly number[] = Array.from(
  { length: 120 },
  (_, i) => (i < 60 ? -60 + 2 * i : 180 - 2 * i) / 1000,
);
