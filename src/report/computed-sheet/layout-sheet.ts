import {
  type BodiesAsked,
  type BodiesHold,
  type BodiesSheet,
  doubtWords,
  formatForce,
  formatNumber,
  partWords,
  placeOfFault,
} from "#casework";
import { drawBodies, drawTravelPlots, seenNames } from "#drawing";
import { mmFromMetres } from "#quantity";
import { forceWords } from "../fault-sheet-words.ts";
import type { ComputedSheet, SheetTable } from "./computed-sheet.ts";
import { figureTable, SHEET_CAUTIONS } from "./figure-table.ts";
import type { SheetStamp } from "./sheet-stamp.ts";

/** From where it is seen on paper: a little round and from above. */
const EYE = { turn: 35, tilt: 20 } as const;

/** The printed sheet of a layout from a file: its curves, what the fault does, and how it is held where the file says what moves. */
export function layoutSheet(
  { file, condition }: BodiesAsked,
  sheet: BodiesSheet,
  hold: BodiesHold | null,
  stamp: SheetStamp,
): ComputedSheet {
  const { layout, note } = file;
  const { placed, faultyPlaced, fault } = sheet;
  const doubts = doubtWords(file);
  const bodies = layout.bodies.length === 1 ? "one moving body" : `${layout.bodies.length} moving bodies`;
  return {
    subject: {
      label: "Layout",
      blockName: layout.name,
      name: layout.name,
      words: [`A layout from a file, ${bodies}, left side.`, note].join(" ").trim(),
      invented: sheet.invented,
    },
    title: "A layout over its travel",
    sentences: [sheet.sentence, ...(sheet.others === null ? [] : [sheet.others]), ...(hold ? [hold.sentence] : [])],
    asked: [
      { heading: "Force at this wheel", text: forceWords(condition) },
      { heading: "Travel", text: `${formatNumber(mmFromMetres(condition.contactRise), 0)} mm from ride height` },
    ],
    drawings: [
      ...(placed
        ? [
            {
              share: 0.36,
              draw: (room: { readonly width: number; readonly height: number }) =>
                drawBodies(placed, {
                  ...room,
                  eye: EYE,
                  beside: faultyPlaced,
                  at: fault === null ? null : placeOfFault(fault),
                }),
            },
          ]
        : []),
      {
        share: placed ? 0.64 : 1,
        draw: (room) =>
          drawTravelPlots(
            { plots: sheet.plots, rows: [], poses: [], sentences: [sheet.sentence] },
            { ...room, at: condition.contactRise },
          ),
      },
    ],
    tables: [figureTable(sheet.figures), ...(hold ? [holdTable(file, hold)] : [])],
    words: [
      { heading: "How sure", text: `${sheet.howSure}${hold ? ` ${hold.howSure}` : ""}` },
      ...(hold === null || hold.states.every(({ rocks }) => rocks.length === 0)
        ? []
        : [
            {
              heading: "By hand",
              text: hold.states
                .filter(({ rocks }) => rocks.length > 0)
                .map(({ title, rocks }) => `${title}. ${rocks.map(({ words }) => words).join(" ")}`)
                .join(" "),
            },
          ]),
      { heading: "Where it binds", text: sheet.binds },
      { heading: "Not computed", text: sheet.notComputed },
      ...(doubts === null ? [] : [{ heading: "Doubtful in the file", text: doubts }]),
      {
        heading: "Computed so",
        text: `${sheet.computedSo}${hold ? ` ${hold.computedSo}` : ""} Method: docs/method/linkage-bodies.md${hold ? ", docs/method/load-states.md; hand-means, from memory" : ""}.`,
      },
    ],
    cautions: hold ? hold.cautions : SHEET_CAUTIONS,
    blockName: "Layout from a file",
    cells: [
      { label: "Rung", value: sheet.rung, share: 0.4 },
      { label: "Units", value: "mm, °, N", share: 0.6 },
    ],
    ...stamp,
  };
}

/** What presses each joint together in every way of holding it, and how its play is seen best. */
function holdTable({ layout }: BodiesAsked["file"], hold: BodiesHold): SheetTable {
  const share = 0.46 / Math.max(hold.states.length, 1);
  return {
    caption: "",
    columns: [
      { title: "joint", share: 0.2, anchor: "start" },
      ...hold.states.map(({ title }) => ({ title: title.toLowerCase(), share, anchor: "start" as const })),
      { title: "its play is seen best so", share: 0.34, anchor: "start" },
    ],
    rows: hold.best.map(({ part, words }, i) => [
      partWords(layout, part),
      ...hold.states.map(({ parts }) => {
        const joint = parts[i];
        return joint === undefined ? "" : `${formatForce(joint.load)}; ${seenNames[joint.by]}`;
      }),
      words,
    ]),
  };
}
