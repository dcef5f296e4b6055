import { useId, useState } from "react";
import { readJson } from "#contract";
import { FindingNote } from "../fields/finding-note.tsx";
import { formatSheetText } from "../model/sheet-text.ts";
import { isSameValue } from "../model/sheet-value.ts";
import type { Editing } from "../use-editing.ts";

/** The sheet as its file: everything in it can be changed here; text that is no JSON yet changes nothing. */
export const WholeFile = ({ editing }: { readonly editing: Editing }) => {
  const id = useId();
  const [text, setText] = useState(() => formatSheetText(editing.sheet));
  const reading = readJson(text);
  const isSheet = reading.readable && reading.findings.length === 0;
  const shown = !isSheet || isSameValue(reading.value, editing.sheet) ? text : formatSheetText(editing.sheet);
  const type = (typed: string) => {
    setText(typed);
    const next = readJson(typed);
    if (next.readable && next.findings.length === 0) editing.change(next.value, "the whole file");
  };
  return (
    <div className="whole-file">
      <label htmlFor={id}>The file of this car line</label>
      <p className="note">
        {isSheet
          ? "What is changed here stands in all sections at once."
          : "This is no whole file yet, so the sheet still stands as it was before; leaving this section drops it."}
      </p>
      <FindingNote findings={isSheet ? [] : reading.findings} />
      <textarea
        id={id}
        className="piece"
        spellCheck={false}
        value={shown}
        aria-invalid={!isSheet}
        onChange={(event) => type(event.target.value)}
      />
    </div>
  );
};
