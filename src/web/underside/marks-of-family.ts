import type { PositionStates } from "#drawing";
import type { Family, Position } from "../car.ts";
import { parseMarks } from "./marks-in-address.ts";
import { gradeOfMark, type PositionMark, type PositionMarks, wordsOfMark } from "./position-mark.ts";
import { possibleFaultsAt } from "./rubber-at.ts";
import { canStandAt } from "./signs-at.ts";

/** On the drawing there is room for the hardness of the new part alone. */
const drawnMark = (mark: PositionMark): PositionMark =>
  mark.kind === "firmer" && "hardness" in mark ? { kind: "firmer", hardness: { ...mark.hardness, from: null } } : mark;

export interface FamilyMarks {
  readonly marks: PositionMarks;
  /** Entries that name no place of this family, or no mark that can stand there, as they came. */
  readonly unread: readonly string[];
}

/** The marks of an address as this family can have them. */
export const readFamilyMarks = (family: Family, positions: readonly Position[], text: string): FamilyMarks => {
  const { marks, unread } = parseMarks(text);
  const byId = new Map(positions.map((position) => [position.id, position]));
  const kept = new Map<string, PositionMark>();
  const strangers: string[] = [];
  for (const [id, mark] of marks) {
    const position = byId.get(id);
    if (position !== undefined && canStandAt(position, possibleFaultsAt(family, position), mark)) kept.set(id, mark);
    else strangers.push(id);
  }
  return { marks: kept, unread: [...unread, ...strangers] };
};

/** What the drawing shows of marks; a place nobody could reach stays hatched. */
export const statesOf = (positions: readonly Position[], marks: PositionMarks): PositionStates =>
  Object.fromEntries(
    positions.flatMap(({ id, kind }) => {
      const mark = marks.get(id);
      const grade = mark === undefined ? null : gradeOfMark(mark, kind);
      if (mark === undefined || grade === null) return [];
      const sign = wordsOfMark(drawnMark(mark));
      return [[id, { grade, ...(sign === null ? {} : { sign }) }] as const];
    }),
  );
