import { metresFromMm, mmFromMetres } from "#quantity";
import type { Position } from "#vehicle";
import { GradeMark } from "../scene/grade-mark.tsx";
import { AmountEntry } from "./amount-entry.tsx";
import { Choice } from "./choice.tsx";
import { FIRMER_FACTOR, PLAY_MM, type PositionMark, TORN_GRADES } from "./position-mark.ts";

interface MarkEntryProps {
  readonly position: Position;
  readonly mark: PositionMark | null;
  /** null takes the mark off: not looked at. */
  readonly onMark: (mark: PositionMark | null) => void;
}

const sameKind = (a: PositionMark | null, b: PositionMark): boolean =>
  a?.kind === b.kind && (a.kind !== "torn" || b.kind !== "torn" || a.grade === b.grade);

const RubberChoices = ({ mark, onMark }: Omit<MarkEntryProps, "position">) => {
  const choose = (next: PositionMark) => () => onMark(sameKind(mark, next) ? null : next);
  return (
    <>
      {TORN_GRADES.map(({ grade, word }) => {
        const torn = { kind: "torn", grade } as const;
        return (
          <Choice key={grade} chosen={sameKind(mark, torn)} onChoose={choose(torn)}>
            <GradeMark grade={grade} /> Torn: {word.toLowerCase()}
          </Choice>
        );
      })}
      <Choice chosen={mark?.kind === "loose"} onChoose={choose({ kind: "loose", play: metresFromMm(PLAY_MM.usual) })}>
        Loose
      </Choice>
      <Choice chosen={mark?.kind === "firmer"} onChoose={choose({ kind: "firmer", factor: FIRMER_FACTOR.usual })}>
        Firmer one fitted
      </Choice>
    </>
  );
};

/** What can be marked at a position; a second tap on the same takes the mark off. */
export const MarkEntry = ({ position, mark, onMark }: MarkEntryProps) => (
  <fieldset className="mark-entry">
    <legend className="margin-title">What do you find here</legend>
    <div className="choices">
      <Choice
        chosen={mark?.kind === "sound"}
        onChoose={() => onMark(mark?.kind === "sound" ? null : { kind: "sound" })}
      >
        <GradeMark grade={0} /> Sound
      </Choice>
      {position.joint === null ? null : <RubberChoices mark={mark} onMark={onMark} />}
    </div>
    {mark?.kind === "loose" ? (
      <AmountEntry
        label="Play, end to end"
        unit="mm"
        range={PLAY_MM}
        value={Number(mmFromMetres(mark.play).toFixed(3))}
        onEnter={(value) => onMark({ kind: "loose", play: metresFromMm(value) })}
      />
    ) : null}
    {mark?.kind === "firmer" ? (
      <AmountEntry
        label="Firmer by"
        unit="times"
        range={FIRMER_FACTOR}
        value={mark.factor}
        onEnter={(factor) => onMark({ kind: "firmer", factor })}
      />
    ) : null}
  </fieldset>
);
