import { type Box, boxesOverlap, distanceToSegment } from "../labels/crossing.ts";
import type { Spot } from "../path.ts";
import type { Colour, Mark, TextStyle, TypeScale } from "../scene.ts";
import { computeStyleWidth } from "../text-width.ts";
import { faces } from "../tokens.ts";

/** Page units the drawing of curves keeps at its left for the figures of the upright axis, and at its right. */
export const LEFT = 58;
export const RIGHT = 26;

/** Where one plot lies and how it turns values into page units. */
export interface Plot {
  readonly x: number;
  readonly width: number;
  readonly top: number;
  readonly bottom: number;
  readonly toX: (value: number) => number;
  readonly toY: (rise: number) => number;
}

/** Where along a curve its words are tried, from near the ends inward, and how far from it, page units. */
const SHARES = [0.2, 0.8, 0.25, 0.75, 0.3, 0.7, 0.12, 0.88, 0.4, 0.6, 0.5] as const;
const GAPS = [10, 20, 32] as const;

/** A few lines of words beside a curve: the first place free of curves and other words, looked for from the ends inward. */
export function placeBeside(
  words: readonly string[],
  own: readonly Spot[],
  lines: readonly { readonly spots: readonly Spot[] }[],
  plot: Plot,
  colour: Colour,
  type: TypeScale,
  taken: Box[],
): readonly Mark[] {
  const style: TextStyle = "label-bold";
  const { size } = faces[type][style];
  const width = Math.max(...words.map((word) => computeStyleWidth(word, style, type)));
  const height = words.length * size * 1.15;
  let best: { readonly box: Box; readonly anchor: "start" | "end"; readonly hits: number } | null = null;
  for (const share of SHARES) {
    const spot = own[Math.round(share * (own.length - 1))];
    if (spot === undefined) continue;
    for (const side of [-1, 1] as const) {
      for (const gap of GAPS) {
        const wanted = side === 1 ? spot[0] + gap : spot[0] - gap - width;
        const x = Math.min(wanted, plot.x + plot.width - width);
        const y = Math.max(plot.top, Math.min(spot[1] - height / 2, plot.bottom - height));
        const box = { x, y, width, height };
        const outside = x < plot.x - (plot.x === LEFT ? LEFT - 20 : 8) || height > plot.bottom - plot.top;
        const away = lines.every(
          ({ spots }) => ((spots[Math.round(share * (own.length - 1))]?.[0] ?? spot[0]) - spot[0]) * side <= 0,
        );
        const hits =
          (outside ? 100 : 0) +
          (away ? 0 : 0.5) +
          gap / 200 +
          (taken.some((other) => boxesOverlap(box, other)) ? 50 : 0) +
          lines.reduce((sum, { spots }) => sum + curveHits(spots, box), 0);
        if (best === null || hits < best.hits) best = { box, anchor: side === 1 ? "start" : "end", hits };
      }
    }
  }
  if (best === null) return [];
  const { box, anchor } = best;
  taken.push(box);
  return words.map((text, i) => ({
    kind: "text",
    x: anchor === "start" ? box.x : box.x + box.width,
    y: box.y + size * 0.86 + i * size * 1.15,
    text,
    style,
    colour,
    anchor,
    halo: true,
  }));
}

/** How many pieces of a curve come near a box. */
function curveHits(spots: readonly Spot[], box: Box): number {
  const centre: Spot = [box.x + box.width / 2, box.y + box.height / 2];
  return spots.slice(1).filter((to, i) => {
    const from = spots[i] ?? to;
    if (distanceToSegment(centre, [from, to]) > (box.width + box.height) / 2 + 4) return false;
    const steps = 6;
    return Array.from({ length: steps + 1 }, (_, k) => k / steps).some((share) => {
      const [x, y] = [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
      return x > box.x - 4 && x < box.x + box.width + 4 && y > box.y - 2 && y < box.y + box.height + 2;
    });
  }).length;
}
