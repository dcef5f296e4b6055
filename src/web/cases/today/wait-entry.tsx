import { useRouter } from "@tanstack/react-router";
import { useId, useState } from "react";
import type { DocumentBodies, Wait } from "#casework";
import { formatBody, readBody, type WireBody } from "#contract";
import { Choice } from "../../underside/choice.tsx";
import { momentNow } from "../case/case-context.tsx";
import { loadDocument } from "../case/load-case.ts";
import { currentRecorder } from "../case/recorder.ts";
import { documentKey } from "../unsent/entry.ts";
import { outbox } from "../unsent/workshop-outbox.ts";
import { WAIT_WORDS } from "./wait-words.ts";

interface WaitEntryProps {
  readonly visit: string;
  readonly waits: readonly Wait[];
}

const KINDS = Object.keys(WAIT_WORDS) as readonly Wait["what"][];

/** What of the visit was typed here and is still on its way to the store. */
const typedVisit = (id: string): WireBody<"visit"> | null => {
  const entry = outbox.state().entries.get(documentKey("visit", id));
  return entry?.what === "document" ? (entry.body as WireBody<"visit">) : null;
};

/**
 * Changes the visit as it was typed here, else as it stands in the store now; nothing is changed where the store does
 * not answer.
 */
const changeVisit = async (
  id: string,
  change: (visit: DocumentBodies["visit"]) => DocumentBodies["visit"],
): Promise<boolean> => {
  const answer = await loadDocument("visit", id);
  if (answer.kind !== "answer") return false;
  const { version, document } = answer.body;
  outbox.putDocument({
    kind: "visit",
    id,
    body: formatBody("visit", change(readBody("visit", typedVisit(id) ?? document))),
    by: currentRecorder(),
    over: { version, document },
  });
  await outbox.send();
  return true;
};

/** Says what a case begins to wait for, or that it no longer does. */
export const WaitEntry = ({ visit, waits }: WaitEntryProps) => {
  const id = useId();
  const router = useRouter();
  const [what, setWhat] = useState<Wait["what"] | null>(null);
  const [label, setLabel] = useState("");
  const [silent, setSilent] = useState(false);
  const run = async (change: (visit: DocumentBodies["visit"]) => DocumentBodies["visit"]) => {
    const done = await changeVisit(visit, change);
    setSilent(!done);
    if (!done) return;
    setWhat(null);
    setLabel("");
    await router.invalidate();
  };
  return (
    <div className="wait-entry">
      {waits.map((wait) => (
        <p key={`${wait.what} ${wait.label} ${wait.since}`} className="margin-links">
          <button
            type="button"
            className="link"
            onClick={() =>
              void run((body) => ({
                ...body,
                waits: body.waits.filter(({ label: one, since }) => one !== wait.label || since !== wait.since),
              }))
            }
          >
            {wait.label} has come
          </button>
        </p>
      ))}
      <fieldset className="mark-entry">
        <legend className="margin-title">It waits for</legend>
        <div className="choices">
          {KINDS.map((kind) => (
            <Choice key={kind} chosen={what === kind} onChoose={() => setWhat(what === kind ? null : kind)}>
              {WAIT_WORDS[kind]}
            </Choice>
          ))}
        </div>
      </fieldset>
      {what === null ? null : (
        <form
          className="field"
          onSubmit={(event) => {
            event.preventDefault();
            const words = label.trim() === "" ? WAIT_WORDS[what].toLowerCase() : label.trim();
            void run((body) => ({
              ...body,
              waits: [...body.waits, { what, label: words, since: momentNow(), due: null }],
            }));
          }}
        >
          <label htmlFor={id}>Which</label>
          <span className="field-entry field-words">
            <input
              id={id}
              type="text"
              autoComplete="off"
              value={label}
              onChange={(event) => setLabel(event.target.value)}
            />
            <button type="submit" className="link">
              It waits
            </button>
          </span>
        </form>
      )}
      <div role="status">
        {silent ? <p className="margin-notice">The store does not answer; what you typed still stands here.</p> : null}
      </div>
    </div>
  );
};
