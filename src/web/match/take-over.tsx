import { Link } from "@tanstack/react-router";
import { useId, useState } from "react";
import { type CornerMatch, takeOverMatch } from "#casework";
import { type Finding, formatFamily } from "#contract";
import type { Family } from "../car.ts";
import { copyId } from "../editor/copy-id.ts";
import { distinctName } from "../families/distinct-name.ts";
import { saveFamily } from "../server/families.ts";
import { FindingsList } from "../shell/findings-list.tsx";

interface TakeOverProps {
  readonly family: Family;
  readonly match: CornerMatch;
  /** Ids and names that are taken. */
  readonly ids: readonly string[];
  readonly names: readonly string[];
}

type Taking =
  | { readonly kind: "none" | "busy" | "silent" | "taken" }
  | { readonly kind: "kept"; readonly id: string; readonly name: string }
  | { readonly kind: "refused"; readonly findings: readonly Finding[] };

const WORDS: Readonly<Record<"none" | "busy" | "silent" | "taken", string>> = {
  none: "",
  busy: "Being kept.",
  silent: "No answer came; nothing was kept. See that the program is still running.",
  taken: "Somebody has just used this name; nothing was kept. Choose another one.",
};

/** Makes a car line of one's own with the matched points; the one it began from stays as it is. */
export const TakeOver = ({ family, match, ids, names }: TakeOverProps) => {
  const field = useId();
  const note = useId();
  const [name, setName] = useState(() => distinctName(`${family.name}, matched`, names));
  const [taking, setTaking] = useState<Taking>({ kind: "none" });
  const id = copyId(name, ids);
  const take = async () => {
    if (id === null) return;
    setTaking({ kind: "busy" });
    const copy = takeOverMatch(family, match, { id, name: name.trim() });
    const saved = await saveFamily(id, `${JSON.stringify(formatFamily(copy), null, 2)}\n`, null);
    if (saved.kind === "kept") setTaking({ kind: "kept", id, name: copy.name });
    else if (saved.kind === "superseded") setTaking({ kind: "taken" });
    else setTaking(saved);
  };
  return (
    <form
      className="take-over"
      onSubmit={(event) => {
        event.preventDefault();
        if (taking.kind !== "busy") void take();
      }}
    >
      <label htmlFor={field} className="label">
        Name of the copy
      </label>
      <input
        id={field}
        type="text"
        autoComplete="off"
        value={name}
        aria-describedby={note}
        onChange={(event) => setName(event.target.value)}
      />
      <span id={note} className="note">
        {id === null ? "A name with letters or figures is needed." : `Kept as ${id}; ${family.name} stays as it is.`}
      </span>
      <p>
        <button type="submit" className="press" disabled={id === null}>
          Take the points over into a copy
        </button>
      </p>
      <div role="status">
        {taking.kind === "kept" ? (
          <p>
            Kept.{" "}
            <Link to="/families/$familyId" params={{ familyId: taking.id }}>
              Open {taking.name}
            </Link>
          </p>
        ) : taking.kind === "refused" ? (
          <FindingsList findings={taking.findings} outcome="nothing was kept" />
        ) : (
          <p>{WORDS[taking.kind]}</p>
        )}
      </div>
    </form>
  );
};
