import { type CarQuestion, carMotionForm, type WholeCar } from "#casework";
import { drawTravelPlots } from "#drawing";
import { type ComputedSheet, carLineSubject } from "./computed-sheet.ts";
import { figureTable, SHEET_CAUTIONS } from "./figure-table.ts";
import type { SheetStamp } from "./sheet-stamp.ts";

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
    tables: [figureTable(car.figures)],
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
