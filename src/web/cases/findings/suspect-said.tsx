import { Link } from "@tanstack/react-router";
import { type Appraisal, type CarSuspect, formatChance, isAtPlacesOf, type SuspectWord } from "#casework";
import { MarginSection } from "../../shell/margin-section.tsx";
import { timeWords } from "../appraisal/time-words.ts";
import { momentNow, useCase } from "../case/case-context.tsx";
import { recorderWords } from "../case/recorder.ts";
import { KeptField } from "../fields/kept-field.tsx";
import { saidOf, sayOfSuspect, WORDS } from "./suspect-word.ts";

interface SuspectSaidProps {
  readonly suspect: CarSuspect;
  readonly appraisal: Appraisal;
}

/** Records a word on a suspect, with who said it and when. */
const useSay = (cause: string) => {
  const { change, who } = useCase();
  return (word: SuspectWord["word"], reason: string | null = null): void =>
    change("enquiry", (body) => sayOfSuspect(body, { cause, word, reason, by: who, at: momentNow() }));
};

const byWords = ({ by, at }: SuspectWord): string => `${recorderWords(by)}, ${timeWords(at)}`;

/** What the word on a suspect does to the chances and to the plan. */
const Effect = ({ suspect, appraisal, word }: SuspectSaidProps & { readonly word: SuspectWord }) => {
  const { visitId } = useCase();
  const missing = appraisal.unplanned.find(({ cause }) => cause === suspect.cause);
  const own = suspect.moves.find((move) => move.about === suspect.cause && move.said);
  const cured = appraisal.plan.remedies.filter(({ remedy }) => isAtPlacesOf(remedy, suspect));
  const names = cured.map(
    ({ remedy, visit }) =>
      `${remedy.label}: ${visit === null ? "not within this plan" : (appraisal.plan.visits[visit]?.label ?? "a visit").toLowerCase()}`,
  );
  return (
    <>
      <MarginSection title="What this word does to the list">
        {own === undefined
          ? "Every chance is reckoned with it."
          : `Without it the chance would be ${formatChance(own.without)}; every other chance is reckoned with it too.`}
      </MarginSection>
      <MarginSection title="What it does to the plan">
        {word.word === "accepted" && cured.length > 0
          ? `What cures it is done now, unless it is set by hand or declined. ${names.join("; ")}.`
          : null}
        {word.word === "accepted" && missing !== undefined ? `Nothing is planned for it: ${missing.why}.` : null}
        {word.word === "ruled-out" && cured.length > 0
          ? `What was found at its places stays found, and its remedy stays. ${names.join("; ")}.`
          : null}
        {word.word === "ruled-out" && cured.length === 0 ? "Nothing of the plan hangs on it." : null}{" "}
        {word.word === "ruled-out" && cured.length === 0 ? null : (
          <Link
            to={cured.length === 0 ? "/cases/$visit/underside" : "/cases/$visit/plan"}
            params={{ visit: visitId }}
            className="source-link"
          >
            {cured.length === 0 ? "Underside" : "See the plan"}
          </Link>
        )}
      </MarginSection>
    </>
  );
};

/** The word of the workshop on a suspect: accepted as the cause, ruled out, or neither; each word stays on record. */
export const SuspectSaid = ({ suspect, appraisal }: SuspectSaidProps) => {
  const { enquiry } = useCase();
  const say = useSay(suspect.cause);
  const said = saidOf(enquiry, suspect.cause);
  const last = said[0];
  const word = last === undefined || last.word === "open" ? null : last;
  return (
    <section className="suspect-said" aria-label="Your word on it">
      {word === null ? (
        <p className="margin-links">
          <button type="button" className="press" onClick={() => say("accepted")}>
            Accept as the cause
          </button>
          <button type="button" className="link" onClick={() => say("ruled-out")}>
            Rule out
          </button>
        </p>
      ) : (
        <>
          <p role="status" className="suspect-verdict">
            <strong>{WORDS[word.word]}</strong> <span className="label">by {byWords(word)}</span>
            {word.reason === null ? null : <span className="label"> “{word.reason}”</span>}
          </p>
          <p className="margin-links">
            <button type="button" className="link" onClick={() => say("open")}>
              Take it back
            </button>
            <button
              type="button"
              className="link"
              onClick={() => say(word.word === "accepted" ? "ruled-out" : "accepted")}
            >
              {word.word === "accepted" ? "Rule it out instead" : "Accept it instead"}
            </button>
          </p>
          <KeptField
            key={`why ${suspect.cause}`}
            label="Why"
            className="field-wide"
            value=""
            onlyWhenLeft
            onKeep={(text) => {
              if (text.trim() !== "") say(word.word, text.trim());
            }}
          />
          <Effect suspect={suspect} appraisal={appraisal} word={word} />
        </>
      )}
      {said.length < 2 ? null : (
        <details className="opens">
          <summary>On record, {said.length} words</summary>
          <ul className="suspect-record label">
            {said.map((one) => (
              <li key={`${one.at} ${one.word} ${one.reason ?? ""}`}>
                {WORDS[one.word]}
                {one.reason === null ? "" : `: “${one.reason}”`} <span className="note">{byWords(one)}</span>
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
};
