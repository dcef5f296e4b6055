import { gradeWords } from "#drawing";
import { metresFromMm, mmFromMetres } from "#quantity";
import { GradeMark } from "../scene/grade-mark.tsx";
import { AmountEntry } from "./amount-entry.tsx";
import { Choice } from "./choice.tsx";
import { FIRMER_FACTOR, PLAY_MM, type PositionMark } from "./position-mark.ts";
import type { PossibleFaults } from "./rubber-at.ts";

interface MarkEntryProps {
  readonly possible: PossibleFaults;
  readonly mark: PositionMark | null;
  /** null takes the mark off: not looked at. */
  readonly onMark: (mark: PositionMark | null) => void;
}

const sameKind = (a: PositionMark | null, b: PositionMark): boolean =>
  a?.kind === b.kind && (a.kind !== "torn" || b.kind !== "torn" || a.grade === b.grade);

/** The amount of what is marked, where the mark has one. */
const MarkAmount = ({ mark, onMark }: Omit<MarkEntryProps, "possible">) => {
  if (mark?.kind === "loose") {
    return (
      <AmountEntry
        label="Play, end to end"
        unit="mm"
        range={PLAY_MM}
        value={Number(mmFromMetres(mark.play).toFixed(3))}
        onEnter={(value) => onMark({ kind: "loose", play: metresFromMm(value) })}
      />
    );
  }
  if (mark?.kind === "firmer") {
    return (
      <AmountEntry
        label="Firmer by"
        unit="times"
        range={FIRMER_FACTOR}
        value={mark.factor}
        onEnter={(factor) => onMark({ kind: "firmer", factor })}
      />
    );
  }
  return null;
};

/** What can be marked at a position; a second tap on the same takes the mark off. */
export const MarkEntry = ({ possible, mark, onMark }: MarkEntryProps) => {
  const choice = (next: PositionMark) => ({
    chosen: sameKind(mark, next),
    onChoose: () => onMark(sameKind(mark, next) ? null : next),
  });
  return (
    <fieldset className="mark-entry">
      <legend className="margin-title">What do you find here</legend>
      <div className="choices">
        <Choice {...choice({ kind: "sound" })}>
          <GradeMark grade={0} /> Sound
        </Choice>
        {possible.tornGrades.map((grade) => (
          <Choice key={grade} {...choice({ kind: "torn", grade })}>
            <GradeMark grade={grade} /> Torn: {gradeWords[grade].toLowerCase()}
          </Choice>
        ))}
        {possible.loose ? (
          <Choice {...choice({ kind: "loose", play: metresFromMm(PLAY_MM.usual) })}>Loose</Choice>
        ) : null}
        {possible.firmer ? (
          <Choice {...choice({ kind: "firmer", factor: FIRMER_FACTOR.usual })}>Firmer one fitted</Choice>
        ) : null}
      </div>
      <MarkAmount mark={mark} onMark={onMark} />
    </fieldset>
  );
};
