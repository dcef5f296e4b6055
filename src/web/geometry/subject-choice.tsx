import { useId } from "react";
import { fullName, gradeWords } from "#drawing";
import { metresFromMm } from "#quantity";
import type { Family, Position } from "../car.ts";
import { FIRMER_FACTOR, PLAY_MM, type PositionMark, wordsOfMark } from "../underside/position-mark.ts";
import { type PossibleFaults, possibleFaultsAt } from "../underside/rubber-at.ts";

interface SubjectChoiceProps {
  readonly family: Family;
  readonly positions: readonly Position[];
  readonly position: Position;
  readonly mark: PositionMark;
  readonly onPosition: (id: string) => void;
  readonly onMark: (mark: PositionMark) => void;
}

interface Option {
  readonly key: string;
  readonly words: string;
  readonly mark: PositionMark;
}

const keyOf = (mark: PositionMark): string => (mark.kind === "torn" ? `torn-${mark.grade}` : mark.kind);

/** What the place can be looked at as; the mark it has keeps its own amount. */
const optionsOf = (possible: PossibleFaults, current: PositionMark): readonly Option[] => {
  const usual: readonly PositionMark[] = [
    ...possible.tornGrades.map((grade) => ({ kind: "torn", grade }) as const),
    ...(possible.loose ? [{ kind: "loose", play: metresFromMm(PLAY_MM.usual) } as const] : []),
    ...(possible.firmer ? [{ kind: "firmer", factor: FIRMER_FACTOR.usual } as const] : []),
  ];
  return usual.map((one) => {
    const mark = one.kind === current.kind && one.kind !== "torn" ? current : one;
    const words =
      mark.kind === "torn" ? `torn, ${gradeWords[mark.grade].toLowerCase()}` : (wordsOfMark(mark) ?? "sound");
    return { key: keyOf(one), words, mark };
  });
};

/** Which rubber is looked at, and as what. */
export const SubjectChoice = ({ family, positions, position, mark, onPosition, onMark }: SubjectChoiceProps) => {
  const place = useId();
  const state = useId();
  const options = optionsOf(possibleFaultsAt(family, position), mark);
  return (
    <div className="subject">
      <label htmlFor={place}>Place</label>
      <select id={place} value={position.id} onChange={(event) => onPosition(event.target.value)}>
        {positions.map((entry) => (
          <option key={entry.id} value={entry.id}>
            {fullName(entry)}
          </option>
        ))}
      </select>
      <label htmlFor={state}>looked at as</label>
      <select
        id={state}
        value={keyOf(mark)}
        onChange={(event) => {
          const chosen = options.find(({ key }) => key === event.target.value);
          if (chosen !== undefined) onMark(chosen.mark);
        }}
      >
        {options.map(({ key, words }) => (
          <option key={key} value={key}>
            {words}
          </option>
        ))}
      </select>
    </div>
  );
};
