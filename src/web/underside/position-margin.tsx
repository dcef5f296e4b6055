import { Link } from "@tanstack/react-router";
import { useState } from "react";
import { conditionWords, type FaultQuestion } from "#casework";
import { fullName, gradeWords, NOT_LOOKED_AT } from "#drawing";
import type { Position } from "../car.ts";
import { stanceWords } from "../effect/condition-on-axle.ts";
import type { EffectState } from "../effect/use-fault-effect.ts";
import { GradeMark } from "../scene/grade-mark.tsx";
import { ShakeDetails, ShakeSentence } from "../shake/shake-in-words.tsx";
import { useShake } from "../shake/use-shake.ts";
import { MarginSection } from "../shell/margin-section.tsx";
import { SourceLink } from "../shell/source-link.tsx";
import { FaultDetails, FaultSentence, FaultSettled } from "./fault-in-words.tsx";
import { KeptMarksNote } from "./kept-marks-note.tsx";
import { MarkEntry } from "./mark-entry.tsx";
import { formatMarks } from "./marks-in-address.ts";
import { gradeOfMark, type PositionMark, wordsOfMark } from "./position-mark.ts";
import { isComputed, type PossibleFaults, possibleFaultsAt, possibleWords } from "./rubber-at.ts";
import type { Underside } from "./use-underside.ts";

const FLUID_GONE = { kind: "fluid-gone" } as const;

const LookedAt = ({ underside }: { readonly underside: Underside }) => (
  <span className="label">
    {underside.seen} of {underside.positions.length} looked at
  </span>
);

const Unread = ({ entries }: { readonly entries: readonly string[] }) =>
  entries.length === 0 ? null : (
    <p className="margin-notice">
      Left out of this address, since they name no place or no mark of this car line: {entries.join(", ")}
    </p>
  );

const Kept = ({ underside }: { readonly underside: Underside }) => (
  <KeptMarksNote
    familyId={underside.loaded.family.id}
    marks={formatMarks(underside.marks)}
    onMarks={underside.setMarks}
  />
);

/** What the margin says before a position is selected. */
const NothingSelected = ({ underside, how }: { readonly underside: Underside; readonly how: string }) => (
  <>
    <div className="margin-top">
      <span className="margin-grade">
        <GradeMark grade={null} /> {underside.marks.size === 0 ? NOT_LOOKED_AT : "Nothing selected"}
      </span>
      <LookedAt underside={underside} />
    </div>
    <h2 className="heading">Where do you look?</h2>
    <p className="margin-lead">{how}</p>
    <Unread entries={underside.unread} />
    <p className="margin-links">
      <Link to="/families/$familyId/geometry" params={{ familyId: underside.loaded.family.id }} search={(last) => last}>
        Geometry
      </Link>
      <Link to="/families/$familyId" params={{ familyId: underside.loaded.family.id }}>
        Family sheet
      </Link>
    </p>
    <Kept underside={underside} />
  </>
);

interface PositionMarginProps {
  readonly underside: Underside;
  readonly question: FaultQuestion | null;
  readonly effect: EffectState;
  /** What to do while nothing is selected. */
  readonly how: string;
}

/** Said where nothing is computed from what is marked, or nothing is marked. */
const notComputedWords = (possible: PossibleFaults, mark: PositionMark | null): string => {
  if (mark?.kind === "seen") {
    return `The linkage computes nothing from ${mark.signs.length === 1 ? "this sign" : "these signs"}; the grade stands on what was seen.`;
  }
  if (!isComputed(possible)) return "The linkage holds no rubber here, so nothing is computed for this place.";
  const why = possible.loose ? "" : " Play is told along a link, so a mount has none that is computed.";
  return `Mark it ${possibleWords(possible)}, and the linkage is computed with it.${why}`;
};

/** Whose scale the grade of a mark is read from; null where the mark has no grade to explain. */
const ScaleOf = ({ mark }: { readonly mark: PositionMark }) =>
  mark.kind === "sound" || mark.kind === "firmer" ? null : (
    <MarginSection title="Whose scale">
      The workshop's own (<SourceLink source="workshop-scale" />
      ), from memory; a maker's or legal figure counts before it.
    </MarginSection>
  );

interface SelectedProps extends Omit<PositionMarginProps, "how"> {
  readonly selected: Position;
}

/** What it does stands right under the heading, so that nobody has to look for it; the entry and the rest follow. */
const Selected = ({ underside, question, effect, selected }: SelectedProps) => {
  const { loaded, marks, condition } = underside;
  const [open, setOpen] = useState<string | null>(null);
  const mark = marks.get(selected.id) ?? null;
  const grade = mark === null ? null : gradeOfMark(mark, selected.kind);
  const words = mark === null ? null : wordsOfMark(mark);
  const possible = possibleFaultsAt(loaded.family, selected);
  const leaked = mark?.kind === "fluid-gone";
  const shake = useShake(loaded.family, selected, leaked ? FLUID_GONE : null);
  const openAmount = mark === null || question === null ? null : open;
  return (
    <>
      <div className="margin-top">
        <span className="margin-grade">
          <GradeMark grade={grade} /> {grade === null ? NOT_LOOKED_AT : gradeWords[grade]}
        </span>
        <LookedAt underside={underside} />
      </div>
      <h2 className="heading">
        {fullName(selected)}
        {words === null ? "" : `: ${words}`}
      </h2>
      <Unread entries={underside.unread} />
      <div className="what-it-does">
        <MarginSection title="What it does">
          {leaked ? (
            <ShakeSentence state={shake} />
          ) : question === null ? (
            notComputedWords(possible, mark)
          ) : openAmount === null ? (
            <FaultSentence effect={effect} />
          ) : (
            `${openAmount} Nothing is said of it yet; the drawing still stands for ${words}.`
          )}
        </MarginSection>
        {leaked || question === null || openAmount !== null ? null : <FaultSettled effect={effect} />}
      </div>
      <MarkEntry position={selected} possible={possible} mark={mark} onMark={underside.mark} onOpen={setOpen} />
      {selected.joint === null ? null : (
        <p className="margin-links">
          <Link to="/families/$familyId/hold" params={{ familyId: loaded.family.id }} search={{ at: selected.id }}>
            How to hold the car for it
          </Link>
        </p>
      )}
      {leaked ? <ShakeDetails familyId={loaded.family.id} state={shake} /> : null}
      {question === null || openAmount !== null ? null : (
        <>
          <MarginSection title="Asked under">
            {conditionWords(condition)}, {stanceWords(condition)}; set in Geometry.
          </MarginSection>
          <FaultDetails family={loaded.family} question={question} effect={effect} />
        </>
      )}
      {mark === null ? null : <ScaleOf mark={mark} />}
      <Kept underside={underside} />
    </>
  );
};

/** Explains the selected position: what it is, what is marked there, what that does to the car. */
export const PositionMargin = ({ underside, question, effect, how }: PositionMarginProps) => {
  const { selected } = underside;
  return selected === null ? (
    <NothingSelected underside={underside} how={how} />
  ) : (
    <Selected key={selected.id} underside={underside} question={question} effect={effect} selected={selected} />
  );
};
