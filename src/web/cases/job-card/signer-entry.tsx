import { useId, useState } from "react";
import { nameRecorder } from "../case/recorder.ts";

/** Asks who signs: a step that nobody has put a name to is signed by nobody. */
export const SignerEntry = () => {
  const id = useId();
  const [name, setName] = useState("");
  const isSaid = name.trim() !== "";
  return (
    <form
      className="height-entry field field-wide"
      onSubmit={(event) => {
        event.preventDefault();
        if (isSaid) nameRecorder(name);
      }}
    >
      <label htmlFor={id}>Who signs?</label>
      <span className="field-entry">
        <input id={id} type="text" autoComplete="off" value={name} onChange={(event) => setName(event.target.value)} />
      </span>
      <span className="note">a step is signed with a name; it then stands on every record made on this device</span>
      <button type="submit" className="press" disabled={!isSaid}>
        Sign with this name from now on
      </button>
    </form>
  );
};
