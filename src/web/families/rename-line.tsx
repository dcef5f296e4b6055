import { useRouter } from "@tanstack/react-router";
import { useId, useState } from "react";
import type { Finding } from "#contract";
import { type LoadedFamily, saveFamily } from "../server/families.ts";
import { FindingsList } from "../shell/findings-list.tsx";
import { distinctName, isTaken } from "./distinct-name.ts";
import { renamedText } from "./renamed-text.ts";

interface RenameLineProps {
  readonly loaded: LoadedFamily;
  /** Names of the other car lines. */
  readonly taken: readonly string[];
  readonly onDone: () => void;
}

type Renaming =
  | { readonly kind: "none" | "busy" | "silent" | "superseded" | "nameless" }
  | { readonly kind: "refused"; readonly findings: readonly Finding[] };

const WORDS = {
  busy: "Being kept.",
  silent: "No answer came; nothing was kept. See that the program is still running.",
  superseded: "Somebody has saved another version since; nothing was kept. Load the page again.",
  nameless: "Its file has no name that could be replaced.",
} as const;

/** Gives a car line another name; everything else in its file stays to the letter, and so does its id. */
export const RenameLine = ({ loaded, taken, onDone }: RenameLineProps) => {
  const id = useId();
  const note = useId();
  const router = useRouter();
  const [name, setName] = useState(loaded.family.name);
  const [state, setState] = useState<Renaming>({ kind: "none" });
  const wanted = name.trim();
  const double = isTaken(wanted, taken);
  const keep = async () => {
    const text = renamedText(loaded.text, wanted);
    if (text === null) return setState({ kind: "nameless" });
    setState({ kind: "busy" });
    const saved = await saveFamily(loaded.family.id, text, loaded.version);
    if (saved.kind !== "kept") return setState(saved);
    await router.invalidate();
    onDone();
  };
  return (
    <form
      className="field rename"
      data-wrong={double || wanted === ""}
      onSubmit={(event) => {
        event.preventDefault();
        if (!double && wanted !== "") void keep();
      }}
    >
      <label htmlFor={id}>Name</label>
      <input
        id={id}
        type="text"
        autoComplete="off"
        // biome-ignore lint/a11y/noAutofocus: the field has just been asked for by its button
        autoFocus
        value={name}
        aria-describedby={note}
        aria-invalid={double || wanted === ""}
        onChange={(event) => setName(event.target.value)}
      />
      <span id={note} className="note">
        {wanted === ""
          ? "give a name"
          : double
            ? `there is one of this name; “${distinctName(wanted, taken)}” is free`
            : ""}
      </span>
      <p className="margin-links">
        <button type="submit" className="link" disabled={double || wanted === "" || state.kind === "busy"}>
          Keep this name
        </button>
        <button type="button" className="link" onClick={onDone}>
          Leave it
        </button>
      </p>
      <div role="status">
        {state.kind in WORDS ? <p className="margin-notice">{WORDS[state.kind as keyof typeof WORDS]}</p> : null}
      </div>
      {state.kind === "refused" ? <FindingsList findings={state.findings} /> : null}
    </form>
  );
};
