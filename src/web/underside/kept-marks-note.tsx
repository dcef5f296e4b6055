import { useState } from "react";
import { loadSetAside, type SetAside, setMarksAside } from "./kept-marks.ts";
import { parseMarks } from "./marks-in-address.ts";

interface KeptMarksNoteProps {
  readonly familyId: string;
  /** Marks in force, as they stand in the address; "" for none. */
  readonly marks: string;
  readonly onMarks: (marks: string) => void;
}

const countWords = (marks: string): string => {
  const { size } = parseMarks(marks).marks;
  return size === 1 ? "one mark" : `${size} marks`;
};

const asideWords = ({ why, marks }: SetAside): string =>
  why === "taken-off"
    ? `Taken off: ${countWords(marks)}.`
    : `This address came with marks of its own; ${countWords(marks)} kept here before stand aside.`;

/** Says where marks are kept; takes all of them off and puts them back. */
export const KeptMarksNote = ({ familyId, marks, onMarks }: KeptMarksNoteProps) => {
  const [aside, setAside] = useState(() => loadSetAside(familyId));
  const change = (next: SetAside | null) => {
    setMarksAside(familyId, next);
    setAside(next);
  };
  return (
    <section className="kept-marks">
      <p className="note">
        This browser keeps the marks of this car line until they are taken off. The address carries them too: send it,
        and somebody else sees them.
      </p>
      {aside === null ? null : (
        <div role="status">
          <p className="margin-notice">{asideWords(aside)}</p>
        </div>
      )}
      <p className="margin-links">
        {marks === "" ? null : (
          <button
            type="button"
            className="link"
            onClick={() => {
              change({ why: "taken-off", marks });
              onMarks("");
            }}
          >
            Take all marks off
          </button>
        )}
        {aside === null ? null : (
          <>
            <button
              type="button"
              className="link"
              onClick={() => {
                change(null);
                onMarks(aside.marks);
              }}
            >
              Undo: put them back
            </button>
            <button type="button" className="link" onClick={() => change(null)}>
              Forget them
            </button>
          </>
        )}
      </p>
    </section>
  );
};
