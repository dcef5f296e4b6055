import type { Page } from "playwright-core";

/** Where something to press lies on the screen, px. */
export interface Box {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A thumb needs this much, px. */
const LEAST = 48;
/** Neighbours may share an edge; what overlaps by less than this is one line, px. */
const EDGE = 0.5;

/**
 * Everything that can be pressed inside a part of the page and lies wholly in view of what scrolls around it; a field
 * inside its label counts as the label.
 */
export const pressable = (page: Page, part: string): Promise<readonly Box[]> =>
  page
    .locator(`${part} :is(a, button, select, textarea, summary, input:not(label input)), ${part} label:has(input)`)
    .evaluateAll((elements) =>
      elements
        .filter((element) => {
          if (!element.checkVisibility()) return false;
          let around = element.parentElement;
          while (around !== null && !/auto|scroll|hidden/.test(getComputedStyle(around).overflowY))
            around = around.parentElement;
          if (around === null) return true;
          const [own, view] = [element.getBoundingClientRect(), around.getBoundingClientRect()];
          return own.top >= view.top - 1 && own.bottom <= view.bottom + 1;
        })
        .map((element) => {
          const { x, y, width, height } = element.getBoundingClientRect();
          return { name: element.getAttribute("aria-label") ?? element.textContent ?? "", x, y, width, height };
        }),
    );

const overlaps = (a: Box, b: Box): boolean =>
  a.x + a.width - b.x > EDGE &&
  b.x + b.width - a.x > EDGE &&
  a.y + a.height - b.y > EDGE &&
  b.y + b.height - a.y > EDGE;

/** Pairs that cover each other in part. */
export const overlapping = (boxes: readonly Box[]): readonly string[] =>
  boxes.flatMap((a, i) => boxes.slice(i + 1).flatMap((b) => (overlaps(a, b) ? [`${a.name} / ${b.name}`] : [])));

/** What is too small for a thumb. */
export const small = (boxes: readonly Box[]): readonly string[] =>
  boxes
    .filter(({ width, height }) => width < LEAST - EDGE || height < LEAST - EDGE)
    .map(({ name, width, height }) => `${name}: ${width} x ${height}`);
