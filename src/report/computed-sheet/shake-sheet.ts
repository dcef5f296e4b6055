import type { Shake } from "#casework";
import { drawBush, drawShake, type Family, positionName } from "#drawing";
import { type ComputedSheet, carLineSubject } from "./computed-sheet.ts";
import { figureTable } from "./figure-table.ts";
import type { SheetStamp } from "./sheet-stamp.ts";

/** The printed sheet of a hydraulic bush without its fluid. */
export const shakeSheet = (family: Family, shake: Shake, stamp: SheetStamp): ComputedSheet => ({
  subject: carLineSubject(family),
  title: `${positionName(family, shake.question.position)}: fluid gone`,
  sentences: [shake.sentence],
  asked: [],
  drawings: [
    { share: 0.62, draw: (room) => drawShake(shake, room) },
    { share: 0.38, draw: (room) => drawBush(shake, room) },
  ],
  tables: [figureTable(shake.figures)],
  words: [
    { heading: "Why nobody sees it", text: shake.hidden },
    { heading: "The bush itself, on a shaker", text: shake.bushAlone },
    { heading: "Judged against", text: shake.judgedAgainst },
    { heading: "How sure", text: shake.howSure },
    { heading: "What else", text: shake.whatElse },
    { heading: "Computed so", text: `${shake.computedSo} Method and proof: ${shake.headline.source}.` },
  ],
  cautions: shake.cautions,
  blockName: "Shake under braking",
  cells: [
    { label: "Rung", value: shake.rung, share: 0.4 },
    { label: "Units", value: "mm, km/h, N", share: 0.6 },
  ],
  ...stamp,
});
