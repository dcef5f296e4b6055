import { gradeOfSign, loadStateSays, type SignName, signsFor, signWords } from "#casework";
import { gradeWords } from "#drawing";
import type { Position } from "../../car.ts";
import { GradeMark } from "../../scene/grade-mark.tsx";
import { Choice } from "../../underside/choice.tsx";
import { Segments } from "../fields/segments.tsx";
import { LOAD_STATES, useLoadState } from "./load-state.ts";
import type { Looks } from "./use-looks.ts";

interface PlaceEntryProps {
  readonly position: Position;
  readonly looks: Looks;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const gradeNote = (position: Position, sign: SignName): string => {
  const grade = gradeOfSign(position.kind, sign);
  return grade === null ? "stays not looked at" : gradeWords[grade].toLowerCase();
};

/** What an eye or hand finds at a place: nothing, or signs; they add up, the worst counts. */
export const PlaceEntry = ({ position, looks }: PlaceEntryProps) => {
  const here = looks.looksAt(position.id);
  const signs = here?.signs ?? [];
  const nothing =
    here?.seen === true && signs.length === 0 && here.looks.some(({ content }) => content.kind === "nothing-seen");
  return (
    <fieldset className="mark-entry">
      <legend className="margin-title">What do you find here</legend>
      <div className="choices">
        <Choice chosen={nothing} onChoose={() => looks.toggleNothing(position.id)}>
          <GradeMark grade={0} /> Nothing seen
        </Choice>
        {signsFor(position.kind).map((sign) => (
          <Choice key={sign} chosen={signs.includes(sign)} onChoose={() => looks.toggleSign(position.id, sign)}>
            <GradeMark grade={gradeOfSign(position.kind, sign)} /> {capital(signWords[sign])}
            <span className="unseen">: {gradeNote(position, sign)}</span>
          </Choice>
        ))}
      </div>
    </fieldset>
  );
};

/** In which state of load it is looked at, and what that state lets one find. */
export const LoadStateEntry = ({ position, looks }: PlaceEntryProps) => {
  const [state, setState] = useLoadState();
  const says = loadStateSays(position, looks.loaded.family[position.axle], state);
  return (
    <div className="load-state">
      <Segments
        label="Wheel"
        options={LOAD_STATES}
        value={state}
        onChange={(next) => {
          if (next !== null) setState(next);
        }}
      />
      <p className="label">{says ?? "In this state everything here can be seen and read."}</p>
    </div>
  );
};
