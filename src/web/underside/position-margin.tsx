import { Link } from "@tanstack/react-router";
import type { FaultQuestion } from "#casework";
import { fullName, gradeWords, NOT_LOOKED_AT } from "#drawing";
import type { EffectState } from "../effect/use-fault-effect.ts";
import { GradeMark } from "../scene/grade-mark.tsx";
import { MarginSection } from "../shell/margin-section.tsx";
import { FaultInWords } from "./fault-in-words.tsx";
import { MarkEntry } from "./mark-entry.tsx";
import { gradeOfMark, wordsOfMark } from "./position-mark.ts";
import { isComputed, possibleFaultsAt } from "./rubber-at.ts";
import type { Underside } from "./use-underside.ts";

const LookedAt = ({ underside }: { readonly underside: Underside }) => (
  <span className="label">
    {underside.marks.size} of {underside.positions.length} looked at
  </span>
);

const Unread = ({ entries }: { readonly entries: readonly string[] }) =>
  entries.length === 0 ? null : (
    <p className="margin-notice">
      Left out of this address, since they name no place or no mark of this car line: {entries.join(", ")}
    </p>
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
      <Link to="/families/$familyId/geometry" params={{ familyId: underside.loaded.family.id }}>
        Geometry
      </Link>
      <Link to="/families/$familyId" params={{ familyId: underside.loaded.family.id }}>
        Family sheet
      </Link>
    </p>
  </>
);

interface PositionMarginProps {
  readonly underside: Underside;
  readonly question: FaultQuestion | null;
  readonly effect: EffectState;
  /** What to do while nothing is selected. */
  readonly how: string;
}

/** Explains the selected position: what it is, what is marked there, what that does to the car. */
export const PositionMargin = ({ underside, question, effect, how }: PositionMarginProps) => {
  const { selected, loaded, marks } = underside;
  if (selected === null) return <NothingSelected underside={underside} how={how} />;
  const mark = marks.get(selected.id) ?? null;
  const grade = mark === null ? null : gradeOfMark(mark);
  const words = mark === null ? null : wordsOfMark(mark);
  const possible = possibleFaultsAt(loaded.family, selected);
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
      <MarkEntry possible={possible} mark={mark} onMark={underside.mark} />
      {question === null ? (
        <MarginSection title="What it does">
          {isComputed(possible)
            ? "Mark it torn, loose or firmer, and the linkage is computed with it."
            : "The linkage holds no rubber here, so nothing is computed for this place."}
        </MarginSection>
      ) : (
        <FaultInWords familyId={loaded.family.id} question={question} effect={effect} />
      )}
    </>
  );
};
