import { useId, useState } from "react";
import { NOBODY } from "#casework";
import { nameRecorder, useRecorder } from "./recorder.ts";

/** Says who records on this device, and lets that be changed. */
export const RecorderNote = () => {
  const who = useRecorder();
  const id = useId();
  const [open, setOpen] = useState(false);
  const [name, setName] = useState("");
  if (!open)
    return (
      <p className="recorder note">
        {who === NOBODY ? "Nobody is named as recording here." : `Recorded by ${who}.`}{" "}
        <button
          type="button"
          className="link"
          onClick={() => {
            setName(who === NOBODY ? "" : who);
            setOpen(true);
          }}
        >
          {who === NOBODY ? "Name them" : "Somebody else"}
        </button>
      </p>
    );
  return (
    <form
      className="recorder field"
      onSubmit={(event) => {
        event.preventDefault();
        nameRecorder(name);
        setOpen(false);
      }}
    >
      <label htmlFor={id}>Who records here</label>
      <span className="field-entry">
        <input id={id} type="text" autoComplete="off" value={name} onChange={(event) => setName(event.target.value)} />
        <button type="submit" className="link">
          Keep
        </button>
      </span>
      <span className="note">initials or a name; it stands on every record made on this device</span>
    </form>
  );
};
