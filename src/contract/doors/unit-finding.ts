import type { Finding } from "#numeric";

/** A figure that stands in another unit than the ones beside it. */
export const unitFinding = (path: string, got: string, needed: string, hint: string): Finding => ({
  code: "unit-mixed",
  path,
  got,
  needed,
  hint,
});

/** Six figures are enough to recognise what was typed. */
export const shownFigure = (x: number): string => String(Number(x.toPrecision(6)));
