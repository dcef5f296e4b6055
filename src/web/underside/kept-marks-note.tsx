import { useState } from "react";
import { keepSetAside, loadSetAside, type SetAside, withAside } from "./kept-marks.ts";
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

/**
 * Says where marks are kept; takes all of them off and puts them back. Whatever was taken off or set aside stays listed
 * until it is put back or forgotten; what stands on the drawing meanwhile is set aside in its turn.
 */
export const KeptMarksNote = ({ familyId, marks, onMarks }: KeptMarksNoteProps) => {
  const [aside, setAside] = useState(() => loadSetAside(familyId));
  const change = (next: readonly SetAside[]) => {
    keepSetAside(familyId, next);
    setAside(next);
  };
  const without = (one: SetAside): readonly SetAside[] => aside.filter((other) => other !== one);
  const takeOff = (rest: readonly SetAside[]): readonly SetAside[] =>
    marks === "" ? rest : withAside(rest, { why: "taken-off", marks });
  return (
    <section className="kept-marks">
      <p className="note">
        This browser keeps the marks of this car line until they are taken off. The address carries them too: send it,
        and somebody else sees them.
      </p>
      {marks === "" ? null : (
        <p className="margin-links">
          <button
            type="button"
            className="link"
            onClick={() => {
              change(takeOff(aside));
              onMarks("");
            }}
          >
            Take all marks off
          </button>
        </p>
      )}
      <div role="status">
        {aside.map((one) => (
          <div key={one.marks}>
            <p className="margin-notice">{asideWords(one)}</p>
            <p className="margin-links">
              <button
                type="button"
                className="link"
                onClick={() => {
                  change(takeOff(without(one)));
                  onMarks(one.marks);
                }}
              >
                Undo: put them back
              </button>
              <button type="button" className="link" onClick={() => change(without(one))}>
                Forget them
              </button>
            </p>
          </div>
        ))}
      </div>
    </section>
  );
};
