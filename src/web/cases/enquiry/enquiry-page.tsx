import { useNavigate, useSearch } from "@tanstack/react-router";
import { useMemo, useState } from "react";
import { type EnquiryDocument, findSymptoms, hearRemarks, type SymptomEntry, symptoms } from "#casework";
import { MarginSection } from "../../shell/margin-section.tsx";
import { useCase } from "../case/case-context.tsx";
import { CaseSheet } from "../case/case-sheet.tsx";
import { StageDone } from "../case/stage-done.tsx";
import { KeptField } from "../fields/kept-field.tsx";
import { NotTakenUp } from "./not-taken-up.tsx";
import { OfferedSymptoms, SymptomRows } from "./symptom-rows.tsx";

/** More complaints than this at once are not worked through (the bound of the exact inference). */
const MOST_SYMPTOMS = 14;

const EMPTY: EnquiryDocument = { words: "", symptoms: [], use: null };

const LABELS = new Map(symptoms.map(({ id, label }) => [id, label]));
const labelOf = (id: string): string => LABELS.get(id) ?? id;

const newEntry = (symptom: string): SymptomEntry => ({
  symptom,
  side: "unknown",
  axle: "unknown",
  conditions: { speedKmh: null, temperature: null, load: null, steering: null, braking: null },
  since: null,
});

const USES = "daily, long distance, towing, track";

const NothingHeard = () => (
  <>
    <h2 className="heading">What does the owner say?</h2>
    <StageDone stage="enquiry" />
    <p className="margin-lead">
      Write it down as it was said, in their words. Complaints that fit the words are offered below; tap those that are
      meant.
    </p>
  </>
);

interface HeardMarginProps {
  readonly open: string | null;
  readonly count: number;
}

const HeardMargin = ({ open, count }: HeardMarginProps) => {
  const symptom = symptoms.find(({ id }) => id === open);
  if (symptom === undefined)
    return (
      <>
        <h2 className="heading">
          {count === 0 ? "No complaint chosen" : count === 1 ? "One complaint heard" : `${count} complaints heard`}
        </h2>
        <StageDone stage="enquiry" />
        <p className="margin-lead">
          Tap one to say when and where it is felt. What stands behind it comes in Findings.
        </p>
      </>
    );
  return (
    <>
      <h2 className="heading">{symptom.label}</h2>
      <StageDone stage="enquiry" />
      <MarginSection title="First look">{symptom.firstLook}</MarginSection>
      <MarginSection title="Behind it">
        {symptom.causes.length} causes are known for it; their shares are invented start values. Findings weighs them
        against what is seen on this car.
      </MarginSection>
    </>
  );
};

/** Enquiry: the owner's words as they were said, and the complaints they mean with when and where they are felt. */
export const EnquiryPage = () => {
  const { enquiry, change } = useCase();
  const { words, symptoms: chosen, use } = enquiry ?? EMPTY;
  const open = useSearch({ from: "/cases/$visit/enquiry" }).at ?? null;
  const navigate = useNavigate({ from: "/cases/$visit/enquiry" });
  const setOpen = (at: string | null) =>
    void navigate({ search: at === null ? {} : { at }, replace: true, resetScroll: false });
  const [typed, setTyped] = useState("");
  const [listed, setListed] = useState(false);
  const save = (part: (body: EnquiryDocument) => Partial<EnquiryDocument>) =>
    change("enquiry", (body) => ({ ...(body ?? EMPTY), ...part(body ?? EMPTY) }));
  const isNew = ({ id }: { readonly id: string }) => !chosen.some(({ symptom }) => symptom === id);
  const remarks = useMemo(
    () =>
      hearRemarks(
        words,
        symptoms,
        chosen.map(({ symptom }) => symptom),
      ),
    [words, chosen],
  );
  const full = chosen.length >= MOST_SYMPTOMS;
  const add = (id: string) => {
    save((body) => ({ symptoms: [...body.symptoms.filter(({ symptom }) => symptom !== id), newEntry(id)] }));
    setOpen(id);
  };
  return (
    <CaseSheet
      stage="enquiry"
      subject={null}
      marginLow={132}
      margin={
        words === "" && chosen.length === 0 ? <NothingHeard /> : <HeardMargin open={open} count={chosen.length} />
      }
    >
      <div className="case-page enquiry">
        <section>
          <KeptField
            label="The owner's words, as they were said"
            long
            className="owner-words"
            value={words}
            onKeep={(text) => save(() => ({ words: text }))}
          />
          <KeptField
            label="What the car is used for"
            className="field-wide"
            value={use ?? ""}
            note={USES}
            onKeep={(text) => save(() => ({ use: text.trim() === "" ? null : text.trim() }))}
          />
        </section>
        <section>
          <div className="today-work-head">
            <h2>Heard as</h2>
            <span className="note">{full ? `${MOST_SYMPTOMS}, as many as are worked through at once` : ""}</span>
          </div>
          {chosen.length === 0 ? <p className="label enquiry-none">Nothing chosen yet.</p> : null}
          <SymptomRows
            entries={chosen}
            labelOf={labelOf}
            open={open}
            onOpen={setOpen}
            onChange={(entry) =>
              save((body) => ({
                symptoms: body.symptoms.map((one) => (one.symptom === entry.symptom ? entry : one)),
              }))
            }
            onTakeOff={(id) => save((body) => ({ symptoms: body.symptoms.filter(({ symptom }) => symptom !== id) }))}
          />
        </section>
        <NotTakenUp remarks={remarks} full={full} onAdd={add} />
        <section>
          {listed ? (
            <>
              <h2>All complaints</h2>
              <div className="field field-wide">
                <label htmlFor="symptom-search">Part of its name</label>
                <span className="field-entry">
                  <input
                    id="symptom-search"
                    type="text"
                    autoComplete="off"
                    value={typed}
                    onChange={(event) => setTyped(event.target.value)}
                  />
                </span>
              </div>
              <OfferedSymptoms offered={findSymptoms(typed, symptoms).filter(isNew)} full={full} onAdd={add} />
            </>
          ) : (
            <button type="button" className="link" onClick={() => setListed(true)}>
              Another complaint from the whole list
            </button>
          )}
        </section>
      </div>
    </CaseSheet>
  );
};
