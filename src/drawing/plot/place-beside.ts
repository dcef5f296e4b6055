import { type Box, boxesOverlap, distanceToSegment } from "../labels/crossing.ts";
import { polyline, type Spot } from "../path.ts";
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
  let best: Place | null = null;
  for (const share of SHARES) {
    const spot = own[Math.round(share * (own.length - 1))];
    if (spot === undefined) continue;
    for (const place of placesAt(spot, isFlat(own, spot), { width, height }, plot)) {
      const { box, way, gap } = place;
      const outside = box.x < plot.x - (plot.x === LEFT ? LEFT - 20 : 8) || height > plot.bottom - plot.top;
      const away = lines.every(({ spots }) => {
        const other = spots[Math.round(share * (own.length - 1))] ?? spot;
        return (other[0] - spot[0]) * way[0] + (other[1] - spot[1]) * way[1] <= 0;
      });
      const hits =
        (outside ? 100 : 0) +
        (away ? 0 : 0.5) +
        gap / 200 +
        (taken.some((other) => boxesOverlap(box, other)) ? 50 : 0) +
        lines.reduce((sum, { spots }) => sum + curveHits(spots, box), 0);
      if (best === null || hits < best.hits) best = { ...place, spot, hits };
    }
  }
  if (best === null) return [];
  const { box, way } = best;
  taken.push(box);
  const left = way[0] < 0;
  return [
    ...drawLeader(best, lines, colour),
    ...words.map(
      (text, i): Mark => ({
        kind: "text",
        x: left ? box.x + box.width : box.x,
        y: box.y + size * 0.86 + i * size * 1.15,
        text,
        style,
        colour,
        anchor: left ? "end" : "start",
        halo: true,
      }),
    ),
  ];
}

/** Where words could stand beside a spot of their curve: which way from it, and how far. */
interface Beside {
  readonly box: Box;
  readonly way: Spot;
  readonly gap: number;
}

interface Place extends Beside {
  readonly spot: Spot;
  readonly hits: number;
}

/** Whether a curve runs more across than upright where it passes a spot of its own. */
function isFlat(own: readonly Spot[], spot: Spot): boolean {
  const at = own.indexOf(spot);
  const [before, after] = [own[Math.max(0, at - 1)] ?? spot, own[at + 1] ?? spot];
  return Math.abs(after[0] - before[0]) > Math.abs(after[1] - before[1]);
}

/** Places left and right of a spot, and above and below it where the curve is flat. */
function placesAt(
  [x, y]: Spot,
  flat: boolean,
  { width, height }: { readonly width: number; readonly height: number },
  { x: from, width: room, top, bottom }: Plot,
): readonly Beside[] {
  const upright = (wanted: number): number => Math.max(top, Math.min(wanted, bottom - height));
  const across = (wanted: number): number => Math.min(wanted, from + room - width);
  return [
    ...([-1, 1] as const).flatMap((side) =>
      GAPS.map((gap) => ({
        box: { x: across(side === 1 ? x + gap : x - gap - width), y: upright(y - height / 2), width, height },
        way: [side, 0] as const,
        gap,
      })),
    ),
    ...(flat ? ([-1, 1] as const) : []).flatMap((side) =>
      GAPS.map((gap) => ({
        box: { x: across(x - width / 2), y: upright(side === 1 ? y + gap : y - gap - height), width, height },
        way: [0, side] as const,
        gap,
      })),
    ),
  ];
}

/** Nearer to each other than this two curves are one to the eye, page units. */
const ONE_TO_THE_EYE = 3;

/** A line from words to their own curve where another curve runs between the two, so that they are not taken for its name. */
function drawLeader(
  { box, way, spot }: Place,
  lines: readonly { readonly spots: readonly Spot[] }[],
  colour: Colour,
): readonly Mark[] {
  if (way[0] === 0) return [];
  const end: Spot = [way[0] < 0 ? box.x + box.width + 3 : box.x - 3, spot[1]];
  const [nearest, farthest] = [ONE_TO_THE_EYE, (end[0] - spot[0]) * way[0]];
  const between = lines.some(({ spots }) =>
    spots.slice(1).some((to, i) => {
      const from = spots[i] ?? to;
      if ((from[1] - spot[1]) * (to[1] - spot[1]) > 0 || from[1] === to[1]) return false;
      const x = from[0] + ((to[0] - from[0]) * (spot[1] - from[1])) / (to[1] - from[1]);
      const off = (x - spot[0]) * way[0];
      return off > nearest && off < farthest;
    }),
  );
  if (!between) return [];
  return [
    { kind: "path", d: polyline([end, spot]), stroke: { colour, width: 1 } },
    { kind: "circle", cx: spot[0], cy: spot[1], r: 2.5, fill: colour },
  ];
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
