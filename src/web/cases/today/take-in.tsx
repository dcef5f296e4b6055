import { useNavigate } from "@tanstack/react-router";
import { useId, useState } from "react";
import { type BegunCase, beginNewCase, beginNextVisit, carsMeant } from "./begin-case.ts";
import { readFirstEntry } from "./first-entry.ts";
import type { CarLine } from "./load-today.ts";

interface TakeInProps {
  readonly cars: readonly CarLine[];
  /** True in the invented workshop: its cars are invented too. */
  readonly invented: boolean;
}

/** One entry that begins a case: a plate, a name, or what the owner says. */
export const TakeIn = ({ cars, invented }: TakeInProps) => {
  const id = useId();
  const navigate = useNavigate();
  const [text, setText] = useState("");
  const [busy, setBusy] = useState(false);
  const [waits, setWaits] = useState(false);
  const known = carsMeant(text, cars);
  const open = async (begin: () => Promise<BegunCase>) => {
    setBusy(true);
    const begun = await begin();
    setBusy(false);
    setWaits(!begun.stored);
    if (begun.stored) await navigate({ to: "/cases/$visit/enquiry", params: { visit: begun.visit } });
    else setText("");
  };
  return (
    <form
      className="take-in"
      onSubmit={(event) => {
        event.preventDefault();
        if (text.trim() !== "" && !busy) void open(() => beginNewCase(readFirstEntry(text), invented));
      }}
    >
      <label htmlFor={id}>Plate, name, or what the owner says</label>
      <div className="take-in-row">
        <input id={id} type="text" autoComplete="off" value={text} onChange={(event) => setText(event.target.value)} />
        <button type="submit" className="press" disabled={busy || text.trim() === ""}>
          Take in a car
        </button>
      </div>
      {known.map(({ id: car, car: { name, registration }, latest }) => (
        <p key={car} className="take-in-known">
          <span className="label">
            {[registration, name].filter((part) => part !== "").join(", ")} is on file
            {latest === null ? "" : latest.body.closed ? `, last here ${latest.body.date}` : ", in work now"}.
          </span>
          {latest !== null && !latest.body.closed ? (
            <button
              type="button"
              className="link"
              onClick={() => void navigate({ to: "/cases/$visit", params: { visit: latest.id } })}
            >
              Open it
            </button>
          ) : (
            <button type="button" className="link" disabled={busy} onClick={() => void open(() => beginNextVisit(car))}>
              Begin its next visit
            </button>
          )}
        </p>
      ))}
      <div role="status">
        {waits ? (
          <p className="margin-notice">
            The case is kept here, not yet at the workshop's store; it appears below as soon as the store answers.
          </p>
        ) : null}
      </div>
    </form>
  );
};
