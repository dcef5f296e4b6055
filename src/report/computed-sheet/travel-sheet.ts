import {
  changesShown,
  formatChange,
  formatNumber,
  isNothing,
  type TravelChange,
  type TravelSheet,
  type TravelSheetQuestion,
} from "#casework";
import { drawTravelPlots, drawTurnedCorner } from "#drawing";
import { mmFromMetres } from "#quantity";
import { forceWords } from "../fault-sheet-words.ts";
import { type ComputedSheet, carLineSubject, type SheetTable } from "./computed-sheet.ts";
import { SHEET_CAUTIONS } from "./figure-table.ts";
import type { SheetStamp } from "./sheet-stamp.ts";

/** From where the corner is seen on paper: a little round and from above. */
const EYE = { turn: 35, tilt: 20 } as const;
const MOST_ROWS = 2;
/** Share of the width for what a row is called. */
const NAMES = 0.24;

/** The printed sheet of a corner over its travel, up to four states beside each other. */
export function travelSheet(question: TravelSheetQuestion, sheet: TravelSheet, stamp: SheetStamp): ComputedSheet {
  const { family, corner, condition } = question;
  const words = corner.replace("-", " ");
  const pose = sheet.poses[0];
  const { verdicts, rubber, rows } = sheet;
  const told = sheet.sentences.slice(0, rows.length + rubber.length);
  const first = verdicts.length > 0 ? verdicts : [...told.slice(rows.length), ...told.slice(0, rows.length)];
  const beside = rows.find(({ subject }) => subject === "beside");
  return {
    subject: carLineSubject(family),
    title: `${words.charAt(0).toUpperCase()}${words.slice(1)} over its travel`,
    sentences: first.slice(0, verdicts.length || MOST_ROWS),
    asked: [{ heading: "Force at this wheel", text: forceWords(condition) }],
    drawings: [
      ...(pose
        ? [
            {
              share: 0.36,
              draw: (room: { readonly width: number; readonly height: number }) =>
                drawTurnedCorner(family, corner, pose, condition.rack, { ...room, eye: EYE }),
            },
          ]
        : []),
      { share: pose ? 0.64 : 1, draw: (room) => drawTravelPlots(sheet, { ...room, at: condition.contactRise }) },
    ],
    tables: [
      ...rubber.map((row) => changeTable(row.words, "less sound", row)),
      ...rows.map((row) =>
        changeTable(row.subject === "sound" ? family.name : row.words, "from ride height", {
          toe: changesShown(row, "toe"),
          camber: changesShown(row, "camber"),
        }),
      ),
    ],
    words: [
      {
        heading: "How sure",
        text: `${rubber.flatMap(({ means }) => (means === null ? [] : [`${means} `])).join("")}Each change with its 95 %; a value whose sign is less than 97.5 % sure is not printed. Two car lines are compared as independent, the rack moved so that both turn the same way.`,
      },
      ...(sheet.open.length === 0
        ? []
        : [
            {
              heading: "What would settle it",
              text: sheet.open.map(({ asked, settle }) => `${asked}: ${settle}`).join(" "),
            },
          ]),
      {
        heading: "Where it binds",
        text: [rows[0]?.binds, beside && `${beside.words}: ${beside.binds}`].filter(Boolean).join(" "),
      },
      {
        heading: "Computed so",
        text: "Toe, camber and the place of the wheel: links with rubber ends in balance at the asked force, the contact height held. The other figures: the same linkage without rubber. Method and proof: two-force-links; docs/method/linkage.md, docs/verification.md.",
      },
    ],
    cautions: SHEET_CAUTIONS,
    blockName: "Over travel",
    cells: [
      { label: "Rung", value: [...new Set(rows.map(({ rung }) => rung))].join(", "), share: 0.4 },
      { label: "Units", value: "mm, °, kN", share: 0.6 },
    ],
    ...stamp,
  };
}

function changeTable(
  caption: string,
  head: string,
  row: Pick<TravelSheet["rows"][number], "toe" | "camber">,
): SheetTable {
  const cell = (change: TravelChange): string => {
    if (!change.sure) return "sign not sure";
    if (isNothing(change)) return "under 0.01°";
    const { value, low, high } = formatChange(change);
    return `${value} (${low} to ${high})`;
  };
  const height = ({ travel }: TravelChange): string =>
    `${travel > 0 ? "+" : ""}${formatNumber(mmFromMetres(travel), 0)} mm`;
  return {
    caption,
    columns: [
      { title: head, share: NAMES, anchor: "start" },
      ...row.toe.map((change) => ({
        title: height(change),
        share: (1 - NAMES) / row.toe.length,
        anchor: "start" as const,
      })),
    ],
    rows: [
      ["toe, in is +", ...row.toe.map(cell)],
      ["camber, top out is +", ...row.camber.map(cell)],
    ],
  };
}
