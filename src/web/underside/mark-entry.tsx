import { formatNumber, type SignName, signWords } from "#casework";
import { gradeWords } from "#drawing";
import { metresFromMm, mmFromMetres } from "#quantity";
import type { Position } from "../car.ts";
import { GradeMark } from "../scene/grade-mark.tsx";
import { AmountEntry } from "./amount-entry.tsx";
import { Choice } from "./choice.tsx";
import { FirmerEntry } from "./firmer-entry.tsx";
import { ASSUMED_PLAY, FIRMER_FACTOR, gradeOfMark, PLAY_MM, type PositionMark, withSign } from "./position-mark.ts";
import type { PossibleFaults } from "./rubber-at.ts";
import { signsAt } from "./signs-at.ts";
import { FLUID_GONE_LOOKS, TORN_LOOKS } from "./torn-looks.ts";

interface MarkEntryProps {
  readonly position: Position;
  readonly possible: PossibleFaults;
  readonly mark: PositionMark | null;
  /** null takes the mark off: not looked at. */
  readonly onMark: (mark: PositionMark | null) => void;
  /** Told what keeps the amount in its field from being the one that is marked; null where nothing does. */
  readonly onOpen: (why: string | null) => void;
}

const sameKind = (a: PositionMark | null, b: PositionMark): boolean =>
  a?.kind === b.kind && (a.kind !== "torn" || b.kind !== "torn" || a.grade === b.grade);

/** The amount of what is marked, where the mark has one. */
const MarkAmount = ({ mark, possible, onMark, onOpen }: Omit<MarkEntryProps, "position">) => {
  if (mark?.kind === "loose") {
    return (
      <AmountEntry
        label="Play, end to end"
        unit="mm"
        range={PLAY_MM}
        value={Number(mmFromMetres(mark.play).toFixed(3))}
        assumed={mark.assumed === true}
        onOpen={onOpen}
        onEnter={(value) => onMark({ kind: "loose", play: metresFromMm(value) })}
      />
    );
  }
  if (mark?.kind === "firmer") {
    return <FirmerEntry firmer={mark} rubber={possible.rubber} onEnter={onMark} onOpen={onOpen} />;
  }
  return null;
};

const percent = (share: number): string => formatNumber(100 * share, 0);

/** What a torn grade stands for, after its name: the share of the rate that is left, and how that is known. */
const shareWords = ({ tornShare }: PossibleFaults, grade: 1 | 2 | 3): string => {
  const share = tornShare[grade];
  return share === undefined
    ? ""
    : `, ${percent(share.low)} to ${percent(share.high)} % of its rate left (${share.origin})`;
};

const gradeNote = (kind: Position["kind"], sign: SignName): string => {
  const grade = gradeOfMark({ kind: "seen", signs: [sign] }, kind);
  return grade === null ? "not looked at" : gradeWords[grade].toLowerCase();
};

/** What can be marked at a position; a second tap on the same takes the mark off. Signs add up, the worst counts. */
export const MarkEntry = ({ position, possible, mark, onMark, onOpen }: MarkEntryProps) => {
  const { kind } = position;
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
        {possible.firmer ? (
          <Choice {...choice({ kind: "firmer", factor: FIRMER_FACTOR.usual })}>Firmer one fitted</Choice>
        ) : null}
        {possible.loose ? (
          <Choice {...choice(ASSUMED_PLAY)}>
            <GradeMark grade={gradeOfMark(ASSUMED_PLAY, kind)} /> Loose
          </Choice>
        ) : null}
        <MarkAmount mark={mark} possible={possible} onMark={onMark} onOpen={onOpen} />
        {possible.fluidGone ? (
          <Choice wide note={FLUID_GONE_LOOKS} {...choice({ kind: "fluid-gone" })}>
            <GradeMark grade={gradeOfMark({ kind: "fluid-gone" }, kind)} /> Fluid gone
          </Choice>
        ) : null}
        {possible.tornGrades.map((grade) => (
          <Choice
            key={grade}
            wide
            note={`${TORN_LOOKS[grade]}${shareWords(possible, grade)}`}
            {...choice({ kind: "torn", grade })}
          >
            <GradeMark grade={grade} /> Torn: {gradeWords[grade].toLowerCase()}
          </Choice>
        ))}
        {signsAt(position, possible).map((sign) => (
          <Choice
            key={sign}
            note={gradeNote(kind, sign)}
            chosen={mark?.kind === "seen" && mark.signs.includes(sign)}
            onChoose={() => onMark(withSign(mark, sign))}
          >
            <GradeMark grade={gradeOfMark({ kind: "seen", signs: [sign] }, kind)} /> {capital(signWords[sign])}
          </Choice>
        ))}
      </div>
    </fieldset>
  );
};

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
