import type { Editing } from "../use-editing.ts";

const stateWords = ({ changed, saving, isKeptHere, findings }: Editing): string => {
  switch (saving.kind) {
    case "busy":
      return "Being saved.";
    case "silent":
      return "No answer came; nothing was saved. What you typed is kept here.";
    case "refused":
      return "Nothing was saved; what is to put right stands below.";
    case "wrong":
      return `Nothing was saved: ${findings.length === 1 ? "one thing" : `${findings.length} things`} to put right first.`;
    case "saved":
      return changed ? "Changed since it was saved." : "Saved.";
    default:
      if (!changed) return "Nothing changed.";
      return isKeptHere ? "Changed; kept in this browser until saved." : "Changed; this browser does not keep it.";
  }
};

/** How saving stands, and what can be done: save, one step back, one step forward. */
export const SaveStrip = ({ editing }: { readonly editing: Editing }) => {
  const { draft, changed, saving } = editing;
  return (
    <div className="save-strip">
      <p role="status" className="save-state" data-saving={saving.kind}>
        {stateWords(editing)}
      </p>
      <p className="save-buttons">
        <button type="button" className="press" disabled={!changed} onClick={() => void editing.save()}>
          Save
        </button>
        <button type="button" className="link" disabled={draft.past.length === 0} onClick={editing.undo}>
          Undo
        </button>
        <button type="button" className="link" disabled={draft.future.length === 0} onClick={editing.redo}>
          Redo
        </button>
      </p>
    </div>
  );
};
