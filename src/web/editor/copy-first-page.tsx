import { Link, useNavigate } from "@tanstack/react-router";
import { useCallback, useId, useMemo, useState } from "react";
import type { Finding } from "#contract";
import { drawUnderside } from "#drawing";
import { FittedScene, type SceneRoom } from "../scene/fitted-scene.tsx";
import { saveFamily } from "../server/families.ts";
import { FindingsList } from "../shell/findings-list.tsx";
import { Sheet } from "../shell/sheet.tsx";
import { copyId } from "./copy-id.ts";
import type { EditedFamily } from "./load-edit.ts";
import { drawnFamilyOf } from "./model/findings-of-sheet.ts";
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

const leastHeight = () => 360;

/** A family that comes with the program stays as it is: a copy of one's own is made first. */
export const CopyFirstPage = ({ edited }: { readonly edited: EditedFamily }) => {
  const field = useId();
  const note = useId();
  const navigate = useNavigate();
  const { sheet } = edited.kept;
  const original = formatTyped(sheetValueAt(sheet, ["name"]));
  const [name, setName] = useState(`${original}, our copy`);
  const [copying, setCopying] = useState<Copying>({ kind: "none" });
  const id = copyId(name, edited.ids);
  const family = useMemo(() => drawnFamilyOf(sheet), [sheet]);
  const draw = useCallback(
    (room: SceneRoom) =>
      family === null
        ? { ...room, title: original, description: "", marks: [], targets: [] }
        : drawUnderside(family, { ...room, states: null, legend: false }),
    [family, original],
  );
  const copy = async () => {
    if (id === null || !isKeyed(sheet)) return;
    setCopying({ kind: "busy" });
    const outcome = await saveFamily(id, formatSheetText({ ...sheet, id, name: name.trim() }), null);
    if (outcome.kind === "kept") await navigate({ to: "/families/$familyId/edit", params: { familyId: id } });
    else if (outcome.kind === "superseded") setCopying({ kind: "taken" });
    else setCopying(outcome);
  };
  return (
    <Sheet
      name={original}
      sub="comes with the program"
      place="Families"
      titleBlock={{
        title: "Copy of a car line",
        note: "nothing is changed here",
        rows: [[{ label: "Family", value: original }]],
      }}
      margin={
        <>
          <h2 className="heading">It stays as it is</h2>
          <p className="margin-lead">
            {original} comes with the program and cannot be changed. A copy can, in everything; what is invented in it
            keeps saying so until you put your own figures there.
          </p>
          <p className="margin-links">
            <Link to="/families/$familyId" params={{ familyId: edited.id }}>
              Family sheet
            </Link>
          </p>
        </>
      }
    >
      <div className="copy-sheet">
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
        <FittedScene draw={draw} leastHeight={leastHeight} />
      </div>
    </Sheet>
  );
};
