import type { ReactNode } from "react";
import { FindingsList } from "../../shell/findings-list.tsx";
import { BothVersions } from "./both-versions.tsx";
import { canBeConfirmed } from "./can-be-confirmed.ts";
import { kindWords } from "./document-words.ts";
import type { UnsentEntry } from "./entry.ts";
import { fieldWords, placeWords, plainHint } from "./plain-words.ts";
import { outbox, useOutbox } from "./workshop-outbox.ts";

const countWords = (count: number): string => (count === 1 ? "One entry is" : `${count} entries are`);

/** What waits, and why; said only while the store takes nothing. */
const Waiting = ({
  count,
  trouble,
  keeps,
}: {
  readonly count: number;
  readonly trouble: string;
  readonly keeps: boolean;
}) => (
  <div className="notice-line" role="status">
    <p className="notice-words">
      <strong>{countWords(count)} kept here, not yet at the workshop's store.</strong> {trouble}
      {keeps
        ? " Nothing is lost; it is sent as soon as the store answers."
        : " This browser keeps nothing beyond this page: leave it open."}
    </p>
    <button type="button" className="link" onClick={() => void outbox.send()}>
      Send now
    </button>
  </div>
);

interface RefusedProps {
  readonly entryKey: string;
  readonly entry: UnsentEntry;
}

/** What the store has not taken; bytes of a photo may be gone, the rest is always here. */
const notTaken = (entry: UnsentEntry): string => {
  if (entry.what === "photo") return `The store has not taken the photo ${entry.name}.`;
  const subject =
    entry.what === "look" ? `A look at ${placeWords(entry.look.place)}` : `A change of ${kindWords(entry.kind)}`;
  return `${subject} is kept here; the store has not taken it.`;
};

/** One entry the store did not take: what it was, why, and what can be done with it. */
const Refused = ({ entryKey, entry }: RefusedProps) => {
  if (entry.state.kind !== "refused") return null;
  const { findings } = entry.state;
  return (
    <div className="notice-refused">
      <p className="notice-words">
        <strong>{notTaken(entry)}</strong>
      </p>
      <FindingsList
        findings={findings.map((finding) => ({ ...finding, hint: plainHint(finding.hint) }))}
        nameOf={fieldWords}
        outcome={entry.what === "photo" ? "it has not been stored" : "what you typed is still here"}
      />
      <p className="notice-links">
        {canBeConfirmed(findings) ? (
          <button type="button" className="link" onClick={() => outbox.confirm(entryKey)}>
            It stands, save it
          </button>
        ) : null}
        <button type="button" className="link" onClick={() => outbox.drop(entryKey)}>
          Withdraw it
        </button>
      </p>
    </div>
  );
};

interface UnsentNoticeProps {
  /** Entries the page itself shows where they were typed; they are not said twice. */
  readonly shownOnPage?: (entry: UnsentEntry) => boolean;
  /** What else has to be said under the head. */
  readonly children?: ReactNode;
}

const nobody = () => false;

/** What has to be said under the head, first of all what has not reached the store; nothing where all is well. */
export const UnsentNotice = ({ shownOnPage = nobody, children }: UnsentNoticeProps) => {
  const { entries, trouble, keeps, remarks } = useOutbox();
  const waiting = [...entries.values()].filter(({ state }) => state.kind === "waiting").length;
  const refused = [...entries].filter(([, entry]) => entry.state.kind === "refused" && !shownOnPage(entry));
  const clock = remarks.find(({ code }) => code === "clock-off");
  return (
    <div className="notice">
      {waiting > 0 && trouble !== null ? (
        <Waiting
          count={waiting}
          trouble={
            trouble[0] === undefined
              ? "The store does not answer."
              : `The store takes nothing: ${trouble[0].got}. ${trouble[0].hint}`
          }
          keeps={keeps}
        />
      ) : null}
      {[...entries].map(([key, entry]) =>
        entry.what === "document" && entry.state.kind === "overtaken" ? (
          <BothVersions key={key} entryKey={key} entry={entry} latest={entry.state.latest} />
        ) : null,
      )}
      {refused.map(([key, entry]) => (
        <Refused key={key} entryKey={key} entry={entry} />
      ))}
      {clock === undefined ? null : (
        <p className="notice-line notice-words" role="status">
          The clock of this device is off: it says {clock.got}. The looks are kept, marked as of an unsure time. Set the
          clock.
        </p>
      )}
      {children}
    </div>
  );
};
