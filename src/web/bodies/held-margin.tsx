import { type BodiesHeld, type BodiesHold, formatForce, partWords } from "#casework";
import { StateForces } from "../hold/state-forces.tsx";
import { Cautions } from "../shell/cautions.tsx";
import { MarginSection } from "../shell/margin-section.tsx";
import { SourceLink } from "../shell/source-link.tsx";
import { LayoutLinks } from "./bodies-margin.tsx";
import { FaultAmount } from "./fault-amount.tsx";
import type { BodiesView } from "./use-bodies-view.ts";

interface HeldMarginProps {
  readonly view: BodiesView;
  readonly hold: BodiesHold;
  readonly state: BodiesHeld;
}

/** How to hold the car so that the play of each joint shows, and what both hands move; cautions first. */
export const HeldMargin = ({ view, hold, state }: HeldMarginProps) => {
  const { place, read } = view;
  const part = place?.place.part;
  const way = hold.best.find((one) => one.part === part);
  const words = "file" in read ? (name: string) => partWords(read.file.layout, name) : (name: string) => name;
  return (
    <>
      <h2 className="heading">{place === null ? "Where does play show?" : place.words}</h2>
      {view.stranger === null ? null : <p className="margin-notice">{view.stranger} is not in this layout.</p>}
      {way === undefined ? null : <p className="margin-lead">{way.words}</p>}
      <FaultAmount view={view} />
      <Cautions cautions={hold.cautions} />
      <MarginSection title={state.title}>{state.how}</MarginSection>
      <MarginSection title="By hand">
        {state.rocks.length === 0
          ? "A wheel on the ground is not moved by hand."
          : state.rocks.map((rock) => rock.words).join(" ")}
      </MarginSection>
      <StateForces state={state} />
      <details className="opens">
        <summary>Best way for each joint</summary>
        <ul>
          {hold.best.map((one) => (
            <li key={one.part}>
              {words(one.part)}: {one.words}
            </li>
          ))}
        </ul>
      </details>
      <details className="opens">
        <summary>Each load in this state, 95 %</summary>
        <ul>
          {state.parts.map(({ part: name, load, low, high }) => (
            <li key={name}>
              {words(name)}: {formatForce(load)} ({formatForce(low)} to {formatForce(high)})
            </li>
          ))}
        </ul>
      </details>
      <MarginSection title="How sure">{hold.howSure}</MarginSection>
      <MarginSection title="Computed so">
        {hold.computedSo} Source: <SourceLink source="hand-means" />, <SourceLink source="jacking-rules" />.
      </MarginSection>
      {hold.leftOut.map((one) => (
        <p key={one} className="margin-notice">
          {one}
        </p>
      ))}
      <LayoutLinks view={view} />
    </>
  );
};
