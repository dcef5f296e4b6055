import { hasGrade } from "#casework";
import { fullName, gradeWords, groupOf, NOT_KNOWN, NOT_LOOKED_AT, TOO_CLOSE } from "#drawing";
import type { Position } from "../../car.ts";
import { GradeMark } from "../../scene/grade-mark.tsx";
import { MarginSection } from "../../shell/margin-section.tsx";
import { StageDone } from "../case/stage-done.tsx";
import { KeptField } from "../fields/kept-field.tsx";
import { useReadings } from "../readings/use-readings.ts";
import { PhotoEntry } from "./photo-entry.tsx";
import { LoadStateEntry, PlaceEntry } from "./place-entry.tsx";
import { PlaceReadings } from "./place-readings.tsx";
import { PlaceRecords } from "./place-records.tsx";
import { placesOf } from "./places-of.ts";
import type { Looks } from "./use-looks.ts";

interface LooksMarginProps {
  readonly looks: Looks;
  /** What to do while nothing is selected. */
  readonly how: string;
}

const Count = ({ looks }: { readonly looks: Looks }) => (
  <span className="label">
    {looks.seen} of {looks.positions.length} looked at
  </span>
);

const NothingSelected = ({ looks, how }: LooksMarginProps) => (
  <>
    <div className="margin-top">
      <span className="margin-grade">
        <GradeMark grade={null} /> {looks.seen === 0 ? NOT_LOOKED_AT : "Nothing selected"}
      </span>
      <Count looks={looks} />
    </div>
    <h2 className="heading">Where do you look?</h2>
    <StageDone stage="underside" />
    <p className="margin-lead">{how}</p>
  </>
);

/** The next place of the same corner nobody has looked at; null where all are. */
const nextOpen = (looks: Looks, position: Position): Position | null => {
  const places = placesOf(looks.loaded.family, groupOf(position));
  const from = places.findIndex(({ id }) => id === position.id) + 1;
  const isOpen = ({ id }: Position) => looks.states[id] === undefined && id !== position.id;
  return [...places.slice(from), ...places.slice(0, from)].find(isOpen) ?? null;
};

const Limit = ({ looks, place }: { readonly looks: Looks; readonly place: string }) => {
  const finding = looks.findingAt(place);
  if (finding === null || (finding.grade === null && !finding.notKnown)) return null;
  return (
    <>
      {finding.reasons.length === 0 ? null : (
        <MarginSection title="What speaks for it">
          {finding.reasons.map((reason) => (
            <span key={reason.text} className="today-found">
              {reason.text}
              {finding.notKnown || !hasGrade(reason)
                ? null
                : `: ${reason.closeToCall ? TOO_CLOSE.toLowerCase() : gradeWords[reason.grade].toLowerCase()}`}
            </span>
          ))}
        </MarginSection>
      )}
      <MarginSection title="How sure">{finding.howSure}</MarginSection>
    </>
  );
};

const Selected = ({ looks, position }: { readonly looks: Looks; readonly position: Position }) => {
  const readings = useReadings();
  const finding = looks.findingAt(position.id);
  const grade = finding?.grade ?? null;
  const here = looks.looksAt(position.id);
  const photos = [...new Set(here?.looks.flatMap(({ photo }) => photo ?? []) ?? [])];
  const next = nextOpen(looks, position);
  return (
    <>
      <div className="margin-top">
        <span className="margin-grade">
          <GradeMark grade={grade} read={finding?.notKnown === true} />{" "}
          {finding?.notKnown
            ? NOT_KNOWN
            : grade === null
              ? NOT_LOOKED_AT
              : finding?.closeToCall
                ? TOO_CLOSE
                : gradeWords[grade]}
        </span>
        <Count looks={looks} />
      </div>
      <h2 className="heading">
        {fullName(position)}
        {finding === null || grade === null || grade === 0 ? "" : `: ${finding.found}`}
      </h2>
      <PlaceEntry position={position} looks={looks} />
      <PlaceReadings
        key={`readings ${position.id}`}
        position={position}
        family={looks.loaded.family}
        readings={readings}
        grade={grade}
      />
      <LoadStateEntry position={position} looks={looks} />
      <Limit looks={looks} place={position.id} />
      <PhotoEntry
        key={`photo ${position.id}`}
        photos={photos}
        onKept={(photo) => looks.attach(position.id, { photo })}
      />
      <KeptField
        key={`note ${position.id}`}
        label="A note"
        className="field-wide"
        value=""
        onlyWhenLeft
        onKeep={(text) => {
          if (text.trim() !== "") looks.attach(position.id, { note: text.trim() });
        }}
      />
      <PlaceRecords looks={looks} place={position.id} />
      <p className="margin-links">
        {next === null ? null : (
          <button type="button" className="press" onClick={() => looks.select(next.id)}>
            Next: {next.label}
          </button>
        )}
        <button type="button" className="link" onClick={() => looks.select(null)}>
          Close this place
        </button>
      </p>
    </>
  );
};

/** Explains the selected place and takes what is seen and read there. */
export const LooksMargin = (props: LooksMarginProps) =>
  props.looks.selected === null ? (
    <NothingSelected {...props} />
  ) : (
    <Selected looks={props.looks} position={props.looks.selected} />
  );
