import { Link, useNavigate } from "@tanstack/react-router";
import { useMemo, useState } from "react";
import { silhouetteOfFamily } from "#contract";
import { currentRecorder } from "../cases/case/recorder.ts";
import { saveOffList } from "../server/car-line.ts";
import type { LoadedFamily } from "../server/families.ts";
import { RenameLine } from "./rename-line.tsx";

interface LineChangesProps {
  readonly loaded: LoadedFamily;
  /** Names of the other car lines. */
  readonly taken: readonly string[];
}

/** True where a family is a template of its layout, whatever was edited in it since. */
const isScaled = ({ family: { front, rear } }: LoadedFamily): boolean =>
  [front.rung, rear.rung].every((rung) => rung === "scaled" || rung === "layout");

/** What can be changed about a car line of one's own: its entries, its name, whether it stands on the list. */
export const LineChanges = ({ loaded, taken }: LineChangesProps) => {
  const { family } = loaded;
  const navigate = useNavigate();
  const [renaming, setRenaming] = useState(false);
  const [silent, setSilent] = useState(false);
  const entries = useMemo(() => silhouetteOfFamily(family), [family]);
  const takeOff = async () => {
    const answer = await saveOffList(family.id, true, currentRecorder());
    setSilent(answer.kind !== "answer");
    if (answer.kind === "answer") await navigate({ to: "/families", search: { off: family.id } });
  };
  return (
    <section className="line-changes">
      {entries === null && isScaled(loaded) ? (
        <p className="note">
          Its sheet was edited since it was begun: its entries alone no longer make it. Its data are corrected in the{" "}
          <Link to="/families/$familyId/edit" params={{ familyId: family.id }}>
            editor
          </Link>
          .
        </p>
      ) : null}
      {renaming ? (
        <RenameLine loaded={loaded} taken={taken} onDone={() => setRenaming(false)} />
      ) : (
        <p className="margin-links">
          {entries === null ? null : (
            <Link to="/families/begin" search={{ correct: family.id }}>
              Correct its entries
            </Link>
          )}
          <button type="button" className="link" onClick={() => setRenaming(true)}>
            Rename
          </button>
          <button type="button" className="link" onClick={() => void takeOff()}>
            Take off the list
          </button>
        </p>
      )}
      <div role="status">
        {silent ? <p className="margin-notice">No answer came; it stands on the list as before.</p> : null}
      </div>
    </section>
  );
};
