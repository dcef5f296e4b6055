import { useNavigate } from "@tanstack/react-router";
import { useId, useState } from "react";
import type { Finding } from "#contract";
import { distinctName } from "../families/distinct-name.ts";
import { saveFamily } from "../server/families.ts";
import { FindingsList } from "../shell/findings-list.tsx";
import { copyId } from "./copy-id.ts";
import type { EditedFamily } from "./load-edit.ts";
import { formatSheetText } from "./model/sheet-text.ts";
import { isKeyed, sheetValueAt } from "./model/sheet-value.ts";
import { formatTyped } from "./model/typed-number.ts";

type Copying =
  | { readonly kind: "none" | "busy" | "silent" | "taken" }
  | { readonly kind: "refused"; readonly findings: readonly Finding[] };

const WORDS: Readonly<Record<Copying["kind"], string>> = {
  none: "",
  busy: "Being copied.",
  silent: "No answer came; nothing was kept. See that the program is still running.",
  taken: "Somebody has just used this name; nothing was kept. Choose another one.",
  refused: "",
};

/** Makes a copy of a car line under a name of one's own, and opens it. */
export const CopyForm = ({ edited }: { readonly edited: EditedFamily }) => {
  const field = useId();
  const note = useId();
  const navigate = useNavigate();
  const { sheet } = edited.kept;
  const [name, setName] = useState(() =>
    distinctName(`${formatTyped(sheetValueAt(sheet, ["name"]))}, our copy`, edited.names),
  );
  const [copying, setCopying] = useState<Copying>({ kind: "none" });
  const id = copyId(name, edited.ids);
  const copy = async () => {
    if (id === null || !isKeyed(sheet)) return;
    setCopying({ kind: "busy" });
    const outcome = await saveFamily(id, formatSheetText({ ...sheet, id, name: name.trim() }), null);
    if (outcome.kind === "kept") await navigate({ to: "/families/$familyId/edit", params: { familyId: id } });
    else if (outcome.kind === "superseded") setCopying({ kind: "taken" });
    else setCopying(outcome);
  };
  return (
    <form
      className="page copy-first"
      onSubmit={(event) => {
        event.preventDefault();
        void copy();
      }}
    >
      <h2 className="heading">Make a copy of your own</h2>
      <div className="field sheet-field">
        <label htmlFor={field}>What the workshop calls it</label>
        <span className="field-entry">
          <input
            id={field}
            type="text"
            className="text-input"
            autoComplete="off"
            value={name}
            aria-describedby={note}
            onChange={(event) => setName(event.target.value)}
          />
        </span>
        <span id={note} className="note">
          {id === null ? "A name with letters or figures is needed." : `Kept as ${id}.`}
        </span>
      </div>
      <p>
        <button type="submit" className="press" disabled={id === null || copying.kind === "busy"}>
          Make this copy
        </button>
      </p>
      <p role="status">{WORDS[copying.kind]}</p>
      {copying.kind === "refused" ? <FindingsList findings={copying.findings} outcome="nothing was kept" /> : null}
    </form>
  );
};
