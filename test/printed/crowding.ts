import { boxesOverlap, crossesBox } from "../../src/drawing/labels/crossing.ts";
import type { PageInk, Words } from "./page-ink.ts";

/** From the base line: up to the top of a capital, and down to where a line would touch most letters. */
const ABOVE = 0.64;
const BELOW = 0.12;
const NEAR = 0.5;

const boxOf = ({ x, width, base, size }: Words) => ({
  x,
  y: base - ABOVE * size,
  width,
  height: (ABOVE + BELOW) * size,
});

/** Words and lines that reach out of a frame so far from the page's edges, points. */
export function outsideFrame({ width, height, words, strokes }: PageInk, margin: number): readonly string[] {
  const out = (x: number, y: number) =>
    x < margin - NEAR || x > width - margin + NEAR || y < margin - NEAR || y > height - margin + NEAR;
  return [
    ...words.flatMap((one) => {
      const { x, y, width: wide, height: high } = boxOf(one);
      return out(x, y) || out(x + wide, y + high) ? [`outside: ${one.text}`] : [];
    }),
    ...strokes.flatMap(({ from, to }) =>
      out(...from) || out(...to) ? [`line outside: ${from.map(Math.round)} to ${to.map(Math.round)}`] : [],
    ),
  ];
}

/** Words that share ground with others. */
export function overlappingWords({ words }: PageInk): readonly string[] {
  return words.flatMap((one, i) =>
    words
      .slice(i + 1)
      .flatMap((other) => (boxesOverlap(boxOf(one), boxOf(other)) ? [`${one.text} | ${other.text}`] : [])),
  );
}

/** Words that a line runs through, and that no white field keeps clear of it. */
export function struckWords({ words, strokes, covers }: PageInk): readonly string[] {
  return words.flatMap((one) => {
    const box = boxOf(one);
    const cover = covers.filter(
      ({ x, y, width, height, order }) =>
        order < one.order &&
        x <= box.x + NEAR &&
        y <= box.y + NEAR &&
        x + width >= box.x + box.width - NEAR &&
        y + height >= box.y + box.height - NEAR,
    );
    const cleared = Math.max(-1, ...cover.map(({ order }) => order));
    const struck = strokes.some(({ from, to, order }) => order > cleared && crossesBox([from, to], box));
    return struck ? [`struck: ${one.text}`] : [];
  });
}
