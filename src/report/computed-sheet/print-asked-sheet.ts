import {
  type BodiesAsked,
  computeBodies,
  computeBodiesHold,
  computeCar,
  computeFaultEffect,
  computeHandTest,
  computeHold,
  computeMatch,
  computeShake,
  computeTravelSheet,
  type SheetQuestion,
} from "#casework";
import { printFaultSheet } from "../print-fault-sheet.ts";
import { carSheet } from "./car-sheet.ts";
import type { ComputedSheet } from "./computed-sheet.ts";
import { holdSheet } from "./hold-sheet.ts";
import { layoutSheet } from "./layout-sheet.ts";
import { matchSheet } from "./match-sheet.ts";
import { printComputedSheet } from "./print-computed-sheet.ts";
import { shakeSheet } from "./shake-sheet.ts";
import type { SheetStamp } from "./sheet-stamp.ts";
import { travelSheet } from "./travel-sheet.ts";

/** What keeps a sheet from being computed. */
type Findings = Extract<ReturnType<typeof computeHold>, { findings: unknown }>;

/** A sheet as a file: its bytes and the name it is kept under. */
export interface PrintedFile {
  readonly pdf: Promise<Uint8Array>;
  readonly fileName: string;
}

/** Computes what a sheet is asked with and prints it on one A4 page; findings where it cannot be computed. */
export function printAskedSheet(question: SheetQuestion, stamp: SheetStamp): PrintedFile | Findings {
  if (question.kind === "fault") return printFault(question, stamp);
  const made = makeSheet(question, stamp);
  if ("findings" in made) return made;
  return { pdf: printComputedSheet(made.sheet), fileName: made.fileName };
}

/** The sheet of one fault has a page of its own kind. */
function printFault({ family, question }: Extract<SheetQuestion, { kind: "fault" }>, stamp: SheetStamp) {
  const answer = computeFaultEffect(family, question);
  if ("findings" in answer) return answer;
  const pdf = printFaultSheet({ family, effect: answer.effect, ...stamp });
  return { pdf, fileName: fileName(family.id, question.position, question.fault.kind) };
}

type Made = { readonly sheet: ComputedSheet; readonly fileName: string } | Findings;

/** Lower-case words of a file name. */
const fileName = (...words: readonly string[]): string =>
  `${words
    .join("-")
    .replaceAll("/", "-")
    .replaceAll(/[^a-z0-9-]/g, "")}.pdf`;

function makeSheet(asked: Exclude<SheetQuestion, { kind: "fault" }>, stamp: SheetStamp): Made {
  switch (asked.kind) {
    case "hold":
      return makeHold(asked, stamp);
    case "car": {
      const { question } = asked;
      const answer = computeCar(question);
      if ("findings" in answer) return answer;
      const sheet = carSheet(question, answer.car, stamp);
      return { sheet, fileName: fileName(question.family.id, "car", question.motion.kind) };
    }
    case "shake": {
      const { family, question } = asked;
      const answer = computeShake(family, question);
      if ("findings" in answer) return answer;
      const sheet = shakeSheet(family, answer.shake, stamp);
      return { sheet, fileName: fileName(family.id, question.position, "fluid-gone") };
    }
    case "match": {
      const { question } = asked;
      const answer = computeMatch(question);
      if ("findings" in answer) return answer;
      const sheet = matchSheet(question, answer.match, stamp);
      return { sheet, fileName: fileName(question.family.id, question.corner, "matched") };
    }
    case "layout":
      return makeLayout(asked.question, stamp);
    case "travel": {
      const { question } = asked;
      const answer = computeTravelSheet(question);
      if ("findings" in answer) return answer;
      const sheet = travelSheet(question, answer.sheet, stamp);
      return { sheet, fileName: fileName(question.family.id, question.corner, "travel") };
    }
  }
}

function makeHold({ family, corner, held, test }: Extract<SheetQuestion, { kind: "hold" }>, stamp: SheetStamp): Made {
  const hold = computeHold(family, corner);
  if ("findings" in hold) return hold;
  const hand = test === null ? null : computeHandTest(family, test);
  if (hand !== null && "findings" in hand) return hand;
  const state = held.kind === "under" ? `under/${held.part}` : held.kind;
  const facts = { family, hold: hold.hold, state, test: hand === null ? null : hand.test, ...stamp };
  return { sheet: holdSheet(facts), fileName: fileName(family.id, corner, "hold") };
}

function makeLayout(asked: BodiesAsked, stamp: SheetStamp): Made {
  const answer = computeBodies(asked);
  if ("findings" in answer) return answer;
  const hold = asked.file.held === null ? null : computeBodiesHold(asked.file, asked.fault);
  if (hold !== null && "findings" in hold) return hold;
  const name = asked.file.layout.name.toLowerCase().replaceAll(/[^a-z0-9]+/g, "-");
  return {
    sheet: layoutSheet(asked, answer.sheet, hold === null ? null : hold.hold, stamp),
    fileName: fileName(name.replaceAll(/^-|-$/g, "") || "layout", asked.fault?.kind ?? "sound"),
  };
}
