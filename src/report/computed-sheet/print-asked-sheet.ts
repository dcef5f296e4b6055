import { computeHandTest, computeHold, type SheetQuestion } from "#casework";
import type { ComputedSheet } from "./computed-sheet.ts";
import { holdSheet } from "./hold-sheet.ts";
import { printComputedSheet } from "./print-computed-sheet.ts";

/** What is stamped on a sheet beside what was computed. */
export interface SheetStamp {
  /** The date as it is to be written on the sheet. */
  readonly date: string;
  /** Who makes it; absent = the cell is left out. */
  readonly by?: string;
}

/** What keeps a sheet from being computed. */
type Findings = Extract<ReturnType<typeof computeHold>, { findings: unknown }>;

/** A sheet as a file: its bytes and the name it is kept under. */
export interface PrintedFile {
  readonly pdf: Promise<Uint8Array>;
  readonly fileName: string;
}

/** Computes what a sheet is asked with and prints it on one A4 page; findings where it cannot be computed. */
export function printAskedSheet(question: SheetQuestion, stamp: SheetStamp): PrintedFile | Findings {
  const made = makeSheet(question, stamp);
  if ("findings" in made) return made;
  return { pdf: printComputedSheet(made.sheet), fileName: made.fileName };
}

type Made = { readonly sheet: ComputedSheet; readonly fileName: string } | Findings;

/** Lower-case words of a file name. */
const fileName = (...words: readonly string[]): string =>
  `${words
    .join("-")
    .replaceAll("/", "-")
    .replaceAll(/[^a-z0-9-]/g, "")}.pdf`;

function makeSheet(question: SheetQuestion, stamp: SheetStamp): Made {
  const { family, corner, held, test } = question;
  const hold = computeHold(family, corner);
  if ("findings" in hold) return hold;
  const hand = test === null ? null : computeHandTest(family, test);
  if (hand !== null && "findings" in hand) return hand;
  const state = held.kind === "under" ? `under/${held.part}` : held.kind;
  const facts = { family, hold: hold.hold, state, test: hand === null ? null : hand.test, ...stamp };
  return { sheet: holdSheet(facts), fileName: fileName(family.id, corner, "hold") };
}
