import { polygon, polyline, type Spot } from "../path.ts";
import type { Colour, GradeMark, Mark } from "../scene.ts";
import { dashes } from "../tokens.ts";

/** The marks are drawn in a box of 20 by 20 with the centre at 10, 10. */
const BOX = 20;
const RING = 7;
const DOT = 2.8;
const DIAMOND: readonly Spot[] = [
  [10, 1.5],
  [18.5, 10],
  [10, 18.5],
  [1.5, 10],
];
const DIAMOND_HALF: readonly Spot[] = [
  [10, 1.5],
  [1.5, 10],
  [10, 18.5],
];
const SQUARE: readonly Spot[] = [
  [3, 3],
  [17, 3],
  [17, 17],
  [3, 17],
];
const OCTAGON: readonly Spot[] = [
  [6.3, 1],
  [13.7, 1],
  [19, 6.3],
  [19, 13.7],
  [13.7, 19],
  [6.3, 19],
  [1, 13.7],
  [1, 6.3],
];
const BAR: readonly Spot[] = [
  [4.5, 8.4],
  [15.5, 8.4],
  [15.5, 11.6],
  [4.5, 11.6],
];
const LINE = 1.6;

/** The three strokes of hatching inside the ring of a place nobody has looked at. */
function hatching(cx: number, cy: number, r: number): readonly Mark[] {
  return [-0.55, 0, 0.55].map((offset) => {
    const half = Math.sqrt(1 - offset * offset) * r;
    const [mx, my] = [cx + (offset * r) / Math.SQRT2, cy + (offset * r) / Math.SQRT2];
    const reach = half / Math.SQRT2;
    const d = polyline([
      [mx - reach, my + reach],
      [mx + reach, my - reach],
    ]);
    return { kind: "path", d, stroke: { colour: "ink3", width: 1 } };
  });
}

/** The dash of what was read and is not known. */
const dash = (cx: number, cy: number, r: number): readonly Mark[] => [
  {
    kind: "path",
    d: polyline([
      [cx - r / 2, cy],
      [cx + r / 2, cy],
    ]),
    stroke: { colour: "ink2", width: 1.4 },
  },
];

/**
 * A grade mark as plain shapes: sound is an open ring, watch a ring with a dot, plan a half-filled diamond, repair first a
 * square, do not drive an octagon with a bar; not looked at is hatched; read and not known is a ring with a dash; too close
 * to call wears a dashed ring.
 */
export function drawGradeMark(mark: GradeMark): readonly Mark[] {
  const { grade, cx, cy, size } = mark;
  const k = size / BOX;
  const shape = (spots: readonly Spot[]) => polygon(spots.map(([x, y]) => [cx + (x - 10) * k, cy + (y - 10) * k]));
  if (grade === null) {
    const r = RING * k;
    const ring: Mark = { kind: "circle", cx, cy, r, fill: "paper", stroke: { colour: "ink3", width: 1 } };
    return [ring, ...(mark.read === true ? dash(cx, cy, r) : hatching(cx, cy, r))];
  }
  const colour: Colour = `g${grade}`;
  const stroke = { colour, width: LINE };
  const ring: Mark = { kind: "circle", cx, cy, r: RING * k, fill: "paper", stroke };
  const shapes: readonly (readonly Mark[])[] = [
    [ring],
    [ring, { kind: "circle", cx, cy, r: DOT * k, fill: colour }],
    [
      { kind: "path", d: shape(DIAMOND), fill: "paper", stroke },
      { kind: "path", d: shape(DIAMOND_HALF), fill: colour },
    ],
    [{ kind: "path", d: shape(SQUARE), fill: colour, stroke }],
    [
      { kind: "path", d: shape(OCTAGON), fill: colour, stroke },
      { kind: "path", d: shape(BAR), fill: "paper" },
    ],
  ];
  const body = shapes[grade] ?? [];
  if (mark.close !== true) return body;
  const r = (grade === 2 ? 14.5 : 13.5) * k;
  return [...body, { kind: "circle", cx, cy, r, stroke: { colour, width: 1.4, dash: dashes.tooClose } }];
}
