import {
  type CarQuestion,
  type CornerRow,
  carMotionForm,
  type Figure,
  formatBand,
  formatFigure,
  type WholeCar,
} from "#casework";
import { drawTravelPlots } from "#drawing";
import { type ComputedSheet, carLineSubject, type SheetTable } from "./computed-sheet.ts";
import { figureTable, SHEET_CAUTIONS } from "./figure-table.ts";
import type { SheetStamp } from "./sheet-stamp.ts";

/** Whether a figure stands in the table of the four wheels. */
const isInTable = ({ corners }: WholeCar, figure: Figure): boolean =>
  corners.some(({ cells }) => Object.values(cells).includes(figure));

/** What all four wheels do, beside each other. */
const cornerTable = (rows: readonly CornerRow[]): SheetTable => {
  const cell = (figure: Figure | null): string => {
    if (figure === null) return "–";
    const band = formatBand(figure);
    return figure.signSure ? `${formatFigure(figure)}${band === null ? "" : ` (${band})`}` : "sign not sure";
  };
  return {
    caption: "Each wheel; in brackets where the figure lies with 95 %",
    columns: [
      { title: "figure", share: 0.24, anchor: "start" },
      ...["front left", "front right", "rear left", "rear right"].map((title) => ({
        title,
        share: 0.19,
        anchor: "end" as const,
      })),
    ],
    rows: rows.map(({ label, cells }) => [
      label,
      cell(cells.frontLeft),
      cell(cells.frontRight),
      cell(cells.rearLeft),
      cell(cells.rearRight),
    ]),
  };
};

/** The printed sheet of the whole car over one motion. */
export function carSheet({ family }: CarQuestion, car: WholeCar, stamp: SheetStamp): ComputedSheet {
  const form = carMotionForm(car.motion.kind);
  return {
    subject: carLineSubject(family),
    title: `The whole car: ${form.name}`,
    sentences: [car.sentence],
    asked: [],
    drawings: [
      {
        share: 1,
        draw: (room) =>
          drawTravelPlots(
            { plots: car.plots, rows: [], poses: [], sentences: [car.sentence] },
            { ...room, at: car.motion.by, upright: { title: car.axis, show: form.show } },
          ),
      },
    ],
    tables: [cornerTable(car.corners), figureTable(car.figures.filter((figure) => !isInTable(car, figure)))].filter(
      ({ rows }) => rows.length > 0,
    ),
    words: [
      { heading: "How sure", text: car.howSure },
      { heading: "Computed so", text: `${car.computedSo} Method and proof: ${car.figures[0]?.source ?? ""}.` },
    ],
    cautions: SHEET_CAUTIONS,
    blockName: "The whole car",
    cells: [
      { label: "Rung", value: car.rung, share: 0.4 },
      { label: "Units", value: "mm, °, N", share: 0.6 },
    ],
    ...stamp,
  };
}
