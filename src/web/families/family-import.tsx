import { Link } from "@tanstack/react-router";
import { FileInput } from "../shell/file-input.tsx";
import type { FamilyImport, FamilyImporting } from "./use-family-import.ts";

/** Chooses a family file to read in. */
export const FamilyFileInput = ({ importing }: { readonly importing: FamilyImporting }) => (
  <FileInput label="Read a family file in" onFile={(file) => void importing.read(file)} />
);

const wordsOf = (state: FamilyImport): string | null => {
  switch (state.kind) {
    case "busy":
      return "Being read.";
    case "silent":
      return "No answer came; nothing was kept. See that the program is still running.";
    case "superseded":
      return "Somebody has saved another version since; nothing was kept. Read the file in again to decide anew.";
    default:
      return null;
  }
};

/** How far reading a file in has come, in the margin; the findings of a refused file stand on the sheet. */
export const ImportProgress = ({ importing }: { readonly importing: FamilyImporting }) => {
  const { state, replace, leave } = importing;
  return (
    <div role="status">
      {wordsOf(state) === null ? null : <p className="margin-notice">{wordsOf(state)}</p>}
      {state.kind === "replaces" ? (
        <>
          <p className="margin-notice">
            {state.family.name} is there already under the id {state.family.id}.
          </p>
          <p className="margin-links">
            <button type="button" className="link" onClick={() => void replace()}>
              Put this file in its place
            </button>
            <button type="button" className="link" onClick={leave}>
              Leave it
            </button>
          </p>
        </>
      ) : null}
      {state.kind === "kept" ? (
        <p className="margin-notice">
          Kept:{" "}
          <Link to="/families/$familyId" params={{ familyId: state.family.id }}>
            {state.family.name}
          </Link>
        </p>
      ) : null}
    </div>
  );
};
