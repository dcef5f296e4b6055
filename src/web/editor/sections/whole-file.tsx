import { useId, useState } from "react";
import { readJson } from "#contract";
import { FindingNote } from "../fields/finding-note.tsx";
import { formatSheetText } from "../model/sheet-text.ts";
import { isSameValue } from "../model/sheet-value.ts";
import { keepUnfinishedText, loadUnfinishedText, type UnfinishedText } from "../saving/kept-file-text.ts";
import type { Editing } from "../use-editing.ts";

interface SaidProps {
  readonly unfinished: UnfinishedText | null;
  /** The file as the sheet stands now. */
  readonly present: string;
  readonly onDrop: () => void;
}

const Said = ({ unfinished, present, onDrop }: SaidProps) => {
  if (unfinished === null) return <p className="note">What is changed here stands in all sections at once.</p>;
  return (
    <>
      <p className="note">
        This is no whole file yet, so the sheet still stands as it was before. The text is kept in this browser, section
        or not, until it is whole or dropped.
        {unfinished.over === present
          ? ""
          : " The sheet has been changed in other sections since; once this text is whole it takes their place."}
      </p>
      <p>
        <button type="button" className="link" onClick={onDrop}>
          Drop this text and show the sheet
        </button>
      </p>
    </>
  );
};

/** The sheet as its file: everything in it can be changed here; text that is no JSON yet changes nothing and is kept. */
export const WholeFile = ({ editing }: { readonly editing: Editing }) => {
  const id = useId();
  const present = formatSheetText(editing.sheet);
  const [unfinished, setUnfinished] = useState(() => loadUnfinishedText(editing.id));
  const [whole, setWhole] = useState(present);
  const reading = readJson(whole);
  const isPresent = reading.readable && isSameValue(reading.value, editing.sheet);
  const leave = (next: UnfinishedText | null) => {
    setUnfinished(next);
    keepUnfinishedText(editing.id, next);
  };
  const type = (typed: string) => {
    const next = readJson(typed);
    if (next.readable && next.findings.length === 0) {
      setWhole(typed);
      leave(null);
      editing.change(next.value, "the whole file");
    } else leave({ text: typed, over: unfinished?.over ?? present });
  };
  return (
    <div className="whole-file">
      <label htmlFor={id}>The file of this car line</label>
      <Said unfinished={unfinished} present={present} onDrop={() => leave(null)} />
      <FindingNote findings={unfinished === null ? [] : readJson(unfinished.text).findings} />
      <textarea
        id={id}
        className="piece"
        spellCheck={false}
        value={unfinished?.text ?? (isPresent ? whole : present)}
        aria-invalid={unfinished !== null}
        onChange={(event) => type(event.target.value)}
      />
    </div>
  );
};
