import { type Family, INVENTED_NOTE, type Scene, type TitleCell } from "#drawing";
import { carLineName, carLineWords, type Paragraph } from "../fault-sheet-words.ts";

/** Room a scene of a sheet is drawn for, page units. */
export interface SceneRoom {
  readonly width: number;
  readonly height: number;
}

/** One drawing of a sheet. */
export interface SheetDrawing {
  /** Of the width of its row. */
  readonly share: number;
  readonly draw: (room: SceneRoom) => Scene;
}

export interface SheetColumn {
  readonly title: string;
  /** Of the width of the table. */
  readonly share: number;
  readonly anchor: "start" | "end";
}

/** A table of a sheet; the first cell of a row is its head. */
export interface SheetTable {
  readonly caption: string;
  readonly columns: readonly SheetColumn[];
  readonly rows: readonly (readonly string[])[];
}

/** What a sheet is about, as it stands at its head and in its title block. */
export interface SheetSubject {
  /** What kind of thing it is: "Family". */
  readonly label: string;
  readonly blockName: string;
  readonly name: string;
  readonly words: string;
  readonly invented: boolean;
}

/** A car line as the subject of a sheet. */
export const carLineSubject = (family: Family): SheetSubject => ({
  label: "Family",
  blockName: family.name,
  name: carLineName(family),
  words: [
    carLineWords(family),
    ...(family.invented ? [`${INVENTED_NOTE.charAt(0).toUpperCase()}${INVENTED_NOTE.slice(1)}.`] : []),
  ].join(" "),
  invented: family.invented,
});

/** Everything one printed page of a computation is made from; there is no clock and nothing is looked up. */
export interface ComputedSheet {
  readonly subject: SheetSubject;
  /** "Rear left: how to hold it". */
  readonly title: string;
  /** The answer in plain words; each begins on a line of its own. */
  readonly sentences: readonly string[];
  /** What was asked: words after a label each. */
  readonly asked: readonly Paragraph[];
  /** Side by side in one row. */
  readonly drawings: readonly SheetDrawing[];
  readonly tables: readonly SheetTable[];
  readonly words: readonly Paragraph[];
  readonly cautions: readonly string[];
  /** Name in the title block, and its cells of the sheet's own. */
  readonly blockName: string;
  readonly cells: readonly TitleCell[];
  /** The date as it is to be written on the sheet. */
  readonly date: string;
  /** Who made the sheet; absent = the cell is left out. */
  readonly by?: string;
}
