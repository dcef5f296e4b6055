import { type Figure, formatBand, formatFigure, formatRange } from "#casework";
import type { SheetTable } from "./computed-sheet.ts";

/** Figures as a table of a sheet; one whose sign is not sure gives the reading that would settle it. */
export const figureTable = (figures: readonly Figure[]): SheetTable => ({
  caption: "",
  columns: [
    { title: "figure", share: 0.46, anchor: "start" },
    { title: "value", share: 0.12, anchor: "end" },
    { title: "lies with 95 % at", share: 0.42, anchor: "start" },
  ],
  rows: figures.map((figure) => [
    figure.label,
    figure.signSure ? formatFigure(figure) : "not printed",
    figure.signSure
      ? (formatBand(figure) ?? formatRange(figure) ?? "no band")
      : `its sign is not sure. ${figure.settle ?? ""}`.trim(),
  ]),
});

/** Said on every sheet of a computation. */
export const SHEET_CAUTIONS: readonly string[] = [
  "The vehicle maker's figures for this very car come first, and the law of the place where it is stricter.",
  "Never go under a car held by a jack only: rated stands on level ground, at the maker's points, the other wheels chocked.",
  "Work on steering, suspension and brakes belongs to people licensed for it where the law says so. This sheet is a computation, not an inspection.",
];
