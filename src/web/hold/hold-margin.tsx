import { Link } from "@tanstack/react-router";
import { formatForce, type HandTest, type HeldState, type Hold, seenInWords } from "#casework";
import { byQuery } from "../cases/case/recorder.ts";
import { FigureLine } from "../effect/figure-line.tsx";
import { rungWords } from "../effect/rung-words.ts";
import { PrintButton } from "../printing/print-button.tsx";
import { printAskedSheet } from "../server/print-asked-sheet.ts";
import { Cautions } from "../shell/cautions.tsx";
import { FindingsList } from "../shell/findings-list.tsx";
import { MarginSection } from "../shell/margin-section.tsx";
import { SourceLink } from "../shell/source-link.tsx";
import { holdPathWords } from "./hold-path-words.ts";
import type { HandAnswer } from "./hold-worker.ts";
import { OtherWays } from "./other-ways.tsx";
import { StateForces } from "./state-forces.tsx";
import type { HoldView } from "./use-hold-view.ts";

interface HoldMarginProps {
  readonly view: HoldView;
  readonly hold: Hold;
  readonly state: HeldState;
  readonly hand: HandAnswer | null;
  /** The other ways of the hand, null while they are computed; null where the chosen one tells it. */
  readonly ways: { readonly answers: readonly HandAnswer[] | null } | null;
}

const tellsWords: Readonly<Record<HandTest["tells"], string>> = {
  yes: "A person tells it",
  no: "No person tells it",
  "too-close": "Too close to call",
};

/** What a hand does at the joint, in words, or why it cannot be said. */
const ByHand = ({ hand }: { readonly hand: HandAnswer | null }) => {
  if (hand === null) return null;
  if ("findings" in hand)
    return (
      <MarginSection title="By hand">
        <FindingsList findings={hand.findings} nameOf={holdPathWords} />
      </MarginSection>
    );
  const { tells, sentence } = hand.test;
  return <MarginSection title={`By hand: ${tellsWords[tells].toLowerCase()}`}>{sentence}</MarginSection>;
};

/** The figures of a hand test; each opens. */
const HandFigures = ({ hand }: { readonly hand: HandAnswer | null }) =>
  hand === null || "findings" in hand ? null : (
    <>
      <h3 className="margin-title">What the hand moves; each opens</h3>
      {hand.test.figures.map((figure) => (
        <FigureLine key={figure.key} figure={figure} effect={hand.test} />
      ))}
      <MarginSection title="How sure of the hand">{hand.test.howSure}</MarginSection>
    </>
  );

/** Says how to hold the car, where play shows, and what a hand tells; cautions first. */
export const HoldMargin = ({ view, hold, state, hand, ways }: HoldMarginProps) => {
  const { selected, family } = view;
  const best = hold.best.find(({ position }) => position === selected?.id);
  const joint = state.joints.find(({ position }) => position === selected?.id);
  const test = hand !== null && "test" in hand ? hand.test.question : null;
  return (
    <>
      <h2 className="heading">{selected === null ? "Where does play show?" : selected.label}</h2>
      {view.stranger === null ? null : <p className="margin-notice">{view.stranger} is no joint of this corner.</p>}
      {best ? <p className="margin-lead">{best.words}</p> : null}
      <ByHand hand={hand} />
      {ways === null ? null : <OtherWays ways={ways.answers} onChoose={(way) => view.change({ way, by: undefined })} />}
      <Cautions cautions={hold.cautions} />
      <MarginSection title={state.title}>
        {state.how}
        {joint === undefined
          ? ""
          : ` Then ${formatForce(joint.load)} press this joint together (${formatForce(joint.low)} to ${formatForce(joint.high)}, 95 %): ${seenInWords(joint)}.`}
      </MarginSection>
      <HandFigures hand={hand} />
      <StateForces state={state} />
      <MarginSection title="How sure">
        {hold.howSure} Geometry {rungWords(hold.rung, hold.invented)}.
      </MarginSection>
      <MarginSection title="Computed so">
        {hold.computedSo} Source: <SourceLink source="hand-means" />, <SourceLink source="jacking-rules" />.
      </MarginSection>
      {hold.leftOut.map((words) => (
        <p key={words} className="margin-notice">
          {words}
        </p>
      ))}
      <p className="margin-links">
        <PrintButton
          print={() =>
            printAskedSheet({ kind: "hold", family, corner: view.corner, held: state.held, test }, byQuery())
          }
          nameOf={holdPathWords}
        />
        <Link
          to="/families/$familyId/underside/$group"
          params={{ familyId: family.id, group: view.corner }}
          search={selected === null ? {} : { at: selected.id }}
        >
          Underside
        </Link>
        <Link to="/families/$familyId" params={{ familyId: family.id }}>
          Family sheet
        </Link>
      </p>
    </>
  );
};
