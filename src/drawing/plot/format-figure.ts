import type { Figure } from "#casework";

/** How a figure is written with its unit; passed in, so that page, paper and drawing show the same digits. */
export type FormatFigure = (figure: Figure) => string;
